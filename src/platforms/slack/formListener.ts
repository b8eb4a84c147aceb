import { createHash } from 'node:crypto'
import type { ViewResponseAction, ViewSubmitAction } from '@slack/bolt'
import type { WebClient } from '@slack/web-api'
import type { Response } from '../../bot/request.ts'
import { answerInView } from './answerInView.ts'
import { answerView, workingView } from './answerView.ts'
import { deliver } from './deliver.ts'
import { ask, type Desk, isFirst } from './desk.ts'
import { putUpNotice } from './notice.ts'
import { fieldAt, filledForm, filledLine, type FormTicket } from './form.ts'
import { createResponseUrl } from './responseUrl.ts'

/** How long the form stays open for the answer, so that a slip is said beside its field: Slack waits three seconds. */
const PATIENCE = 1500

/** Acknowledges the form: closes it, shows an error in it, or puts another view in its place. */
export type AckForm = (response?: ViewResponseAction) => Promise<unknown>

/**
 * Answers a form that was filled in. A slip is said beside the field it is about, and what was typed stays; an answer goes
 * where the form was opened from, or takes the place of the form where that was the home page.
 */
export async function answerForm(
  desk: Desk,
  { body, client, team, ack }: { body: ViewSubmitAction; client: WebClient; team: string; ack: AckForm },
  patience = PATIENCE,
): Promise<void> {
  const { view, user } = body
  const ticket = JSON.parse(view.private_metadata) as FormTicket
  const { channel, thread, responseUrl } = ticket
  const invocation = filledForm(ticket, view.state.values)
  const where = { client, team, channel, user: user.id, name: user.name }
  const { answered, isAgain } = answerOnce(desk, deliveryOf(body), () => ask(desk, where, invocation))
  const early = await within(answered, patience)
  if (early?.value && !early.value.ok && early.value.kind !== 'fault') {
    const errors = { [fieldAt(early.value.error, Object.keys(view.state.values))]: early.value.error }
    await ack({ response_action: 'errors', errors })
    return
  }
  const isHome = responseUrl === undefined
  await ack(isHome ? { response_action: 'update', view: shownNow(early, channel, desk) } : undefined)
  const response = await answered
  if (!response || isAgain) return
  if (!isHome)
    return deliver(
      desk,
      { ...where, thread, response: createResponseUrl(responseUrl, desk.parts.now, desk.pause) },
      { response, line: filledLine(invocation), audience: 'asker' },
    )
  if (early) await putUpNotice(desk, where, response)
  else await answerInView(desk, where, { view: view.id, response, line: filledLine(invocation) })
}

/** Forms carry a trigger of their own in practice, though it is documented for presses only. */
const deliveryOf = ({ view, trigger_id: trigger }: ViewSubmitAction): string =>
  `form ${trigger || `${view.id} ${view.hash} ${digest(JSON.stringify(view.state.values))}`}`

const digest = (text: string): string => createHash('sha256').update(text).digest('base64url')

/** What a form is answered with, or undefined where another process answers it; and whether it came here before. */
interface Answering {
  readonly answered: Promise<Response | undefined>
  readonly isAgain: boolean
}

/** The last forms of each desk, by their delivery: one that comes again is shown the answer that it had. */
const recent = new WeakMap<Desk, Map<string, Promise<Response | undefined>>>()
const MOST = 200

function answerOnce(desk: Desk, delivery: string, work: () => Promise<Response>): Answering {
  const forms = recent.get(desk) ?? new Map<string, Promise<Response | undefined>>()
  recent.set(desk, forms)
  const before = forms.get(delivery)
  if (before) return { answered: before, isAgain: true }
  const answered = isFirst(desk, delivery).then((first) => (first ? work() : undefined))
  forms.set(delivery, answered)
  const [oldest] = forms.keys()
  if (forms.size > MOST && oldest !== undefined) forms.delete(oldest)
  return { answered, isAgain: false }
}

const ELSEWHERE: Response = {
  ok: false,
  kind: 'invalid',
  error: 'this form was answered already; where you do not see the answer, ask again',
}

const shownNow = (
  early: { readonly value: Response | undefined } | undefined,
  channel: string,
  desk: Desk,
) => (early ? answerView(early.value ?? ELSEWHERE, channel, desk) : workingView(channel))

/** What was promised, when it comes within so many milliseconds. */
async function within<Value>(
  promise: Promise<Value>,
  patience: number,
): Promise<{ value: Value } | undefined> {
  let timer: NodeJS.Timeout | undefined
  const late = new Promise<undefined>((resolve) => {
    timer = setTimeout(() => resolve(undefined), patience)
  })
  try {
    return await Promise.race([promise.then((value) => ({ value })), late])
  } finally {
    clearTimeout(timer)
  }
}
