import { cautionsFor, stopsFor } from '../core/checks/caution.ts'
import type { UnitSystem } from '../core/measure/reading.ts'
import type { ShowSettings } from '../core/measure/show.ts'
import type { z } from 'zod'
import type { Context } from './context.ts'
import { type Document, openDocument } from './document.ts'
import type { Print } from './handout/handout.ts'
import type { Input } from './input.ts'
import type { KindSettings } from './kind.ts'
import { heldBack, NO_ORGANISERS, organises, organisersSchema } from './organisers.ts'
import { preferencesSchema, type Settled, settle, shownIn, unitsOf } from './preferences.ts'
import { projectSchema } from './project.ts'
import type { Reference } from './reference.ts'
import { Refusal } from './refusal.ts'
import type { Request } from './request.ts'
import type { Search } from './search.ts'
import type { BotSettings } from './settings.ts'
import { type Show, showIn } from './show.ts'
import { type DocumentKey, isForgotten, type Store } from './state.ts'
import { shopStockSchema } from './stockKept.ts'
import type { Description } from './usage.ts'

/** What is the same for every request. */
export interface Surroundings {
  readonly store: Store
  readonly settings: BotSettings
  readonly reference: Reference
  readonly commands: readonly Description[]
  readonly search: Search
  readonly print: Print
}

/** A context that still waits for the input: `reading` says how to read it. */
export interface Prepared {
  readonly reading: KindSettings
  readonly withInput: (input: Input, deadline: AbortController) => Context
}

/** Reads what is kept for the person and the channel, and lays out what a command may know and do. */
export async function createContext(request: Request, line: string, parts: Surroundings): Promise<Prepared> {
  const { store, settings, reference } = parts
  const doing = { user: request.user, command: line, at: request.at }
  const person = openDocument(store, personKey(request), preferencesSchema, doing, 'anew')
  const channel = openDocument(store, channelKey(request, 'channel'), preferencesSchema, doing, 'anew')
  const kept = openDocument(store, channelKey(request, 'project'), projectSchema, doing)
  const shelf = openDocument(store, channelKey(request, 'stock'), shopStockSchema, doing)
  const [own, shared, project, stock] = await Promise.all([
    readUnless(person, SETS_UNITS, line),
    readUnless(channel, SETS_UNITS, line),
    readUnless(kept, MENDS_PROJECT, line),
    // A list that cannot be read is told of by the commands that need it.
    shelf.read().catch(() => undefined),
  ])
  const settled = settle(own ?? {}, shared ?? {}, settings)
  const organisers = openDocument(store, channelKey(request, 'organisers'), organisersSchema, doing)
  const organisersNow = async () => (await organisers.read()) ?? NO_ORGANISERS
  const keepName = async () => {
    const { name } = request
    if (name !== undefined && name !== own?.name) await person.change((kept) => ({ ...kept, name }))
  }
  const ofChannel = <Schema extends z.ZodType>(kind: string, schema: Schema) =>
    heldBack(
      named(openDocument(store, channelKey(request, kind), schema, doing), keepName),
      kind,
      request,
      organisersNow,
    )
  return {
    reading: { ...reference, ...settled, adhesives: reference.glue.adhesives },
    withInput: (input, deadline) => ({
      request,
      commands: parts.commands,
      search: parts.search,
      print: parts.print,
      settings,
      reference,
      settled,
      typed: input.units ?? input.otherUnits,
      show: showFor(
        settled,
        input.units ?? project?.units ?? input.otherUnits ?? unitsOf(request.locale),
        settings,
      ),
      project,
      stock,
      ofChannel,
      preferences: { person, channel: heldBack(channel, 'channel', request, organisersNow) },
      organisers: named(organisers, keepName),
      isOrganiser: async () => organises(request, await organisersNow()),
      forgetPerson: () => store.forgetPerson({ platform: request.place.platform, user: request.user }),
      nameOf: async (user) => {
        if (isForgotten(user)) return 'somebody'
        const kept = openDocument(store, personKey({ ...request, user }), preferencesSchema, doing)
        return (await kept.read().catch(() => undefined))?.name ?? user
      },
      cautions: (facts) => {
        const stop = stopsFor(facts, reference.cautions)
        if (stop) throw new Refusal('unsafe', stop.text)
        return cautionsFor(facts, reference.cautions)
      },
      // Made where it is first looked at: few commands have anything to stop.
      get signal() {
        return deadline.signal
      },
    }),
  }
}

/** The document, which keeps what its writer is called with each edit. */
const named = <Body>(document: Document<Body>, keepName: () => Promise<void>): Document<Body> => ({
  ...document,
  change: async (edit) => {
    const changed = await document.change(edit)
    await keepName()
    return changed
  },
})

/** The lines that mend what is kept must work even when it cannot be read. */
const MENDS_PROJECT = /^\/?\s*project\s+(?:undo|redo|history|forget)\b/iu
const SETS_UNITS = /^\/?\s*units\s+\S/iu

const readUnless = async <Body>(
  document: Document<Body>,
  mends: RegExp,
  line: string,
): Promise<Body | undefined> =>
  document.read().catch((error: unknown) => {
    if (mends.test(line)) return undefined
    throw error
  })

export function showFor(settled: Settled, typed: UnitSystem | undefined, settings: BotSettings): Show {
  const units = shownIn(settled, typed)
  const coarse: ShowSettings = { units, tape: settled.tape, millimetreStep: settings.millimetreStep }
  const finest = Math.max(settled.tape, settings.jointTape) as ShowSettings['tape']
  return showIn(coarse, { units, tape: finest, millimetreStep: settings.fineMillimetreStep })
}

const personKey = ({ place, user }: Request): DocumentKey => ({
  kind: 'person',
  platform: place.platform,
  workspace: place.workspace,
  id: user,
})

const channelKey = ({ place }: Request, kind: string): DocumentKey => ({
  kind,
  platform: place.platform,
  workspace: place.workspace,
  id: place.channel,
})
