import type { Reply } from '../../src/bot/reply.ts'
import type { Response } from '../../src/bot/request.ts'
import type { Show } from '../../src/bot/show.ts'

/** What one platform makes of a response, and what is wrong with it by that platform's limits: nothing, it is hoped. */
export interface Renderer {
  readonly render: (response: Response) => unknown
  readonly faults: (message: unknown) => readonly string[]
  /** All that a person reads of the message, as one text. */
  readonly read: (message: unknown) => string
}

/** A renderer of every platform; one that is added is demanded of every test at once. */
export interface Renderers {
  readonly discord: Renderer
  readonly slack: Renderer
  readonly room: Renderer
}

/** A response that one platform rendered. */
export interface Rendered {
  readonly platform: keyof Renderers
  readonly faults: readonly string[]
  readonly text: string
}

/** A renderer, and the type of its messages kept from whoever does not care. */
export const renderer = <Message>(parts: {
  readonly render: (response: Response) => Message
  readonly faults: (message: Message) => readonly string[]
  readonly read: (message: Message) => string
}): Renderer => ({
  render: parts.render,
  faults: (message) => parts.faults(message as Message),
  read: (message) => parts.read(message as Message),
})

/** What every platform makes of a response. */
export const rendersResponse = (response: Response, renderers: Renderers): readonly Rendered[] =>
  (Object.entries(renderers) as [keyof Renderers, Renderer][]).map(([platform, { render, faults, read }]) => {
    const message = render(response)
    return { platform, faults: faults(message), text: read(message) }
  })

/** What every platform makes of a reply. */
export const renders = (reply: Reply, show: Show, renderers: Renderers): readonly Rendered[] =>
  rendersResponse({ ok: true, reply, show }, renderers)
