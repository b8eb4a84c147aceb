import { checkForm } from './checkForm.ts'
import { checkMessage } from './checkMessage.ts'
import { type Answered, type Json, refusal, timeOf, type WireFile } from './wire.ts'

/** What is known of an interaction that was sent out. */
interface Open {
  readonly event: Json
  readonly issued: number
  acknowledged: number | undefined
  ephemeral: boolean
  original: Json | undefined
  followUps: number
  isOver: boolean
}

export interface Interactions {
  readonly add: (event: Json) => void
  /** Ends the quarter of an hour in which it can be answered. */
  readonly end: (id: string) => void
  readonly callback: (id: string, token: string, body: Json, files: readonly WireFile[]) => Answered
  readonly edit: (token: string, body: Json, files: readonly WireFile[]) => Answered
  readonly followUp: (token: string, body: Json, files: readonly WireFile[]) => Answered
  /** Every fault that a call was refused for. */
  readonly faults: readonly string[]
}

const COMMAND = 2
const COMPONENT = 3
const AUTOCOMPLETE = 4
const FORM = 5
const EPHEMERAL = 64
const EDITABLE = (1 << 15) | (1 << 2)

/** Which answers each kind of interaction takes (Receiving and Responding, Interaction callback type). */
const TAKES: Readonly<Record<number, readonly number[]>> = {
  [COMMAND]: [4, 5, 9],
  [COMPONENT]: [4, 5, 6, 7, 9],
  [AUTOCOMPLETE]: [8],
  [FORM]: [4, 5, 6, 7],
}

const invalid = (faults: readonly string[]): Answered =>
  refusal(400, 50035, `Invalid Form Body: ${faults.join('; ')}`, { _errors: faults })

const sized = (files: readonly WireFile[]) => files.map(({ name, bytes }) => ({ name, bytes: bytes.length }))

/** Interactions as Discord keeps them: `deadline` ms from the time in their id to acknowledge, once; a quarter of an hour to answer. */
export function createInteractions(
  publish: (body: Json, files: readonly WireFile[], flags: number, channel: unknown) => Json,
  deadline: number,
): Interactions {
  const byToken = new Map<string, Open>()
  const faults: string[] = []
  const checked = (found: readonly string[], answer: () => Answered): Answered => {
    faults.push(...found)
    return found.length > 0 ? invalid(found) : answer()
  }
  const message = (open: Open, body: Json, files: readonly WireFile[], isEphemeral: boolean): Json =>
    publish(body, files, Number(body.flags ?? 0) | (isEphemeral ? EPHEMERAL : 0), open.event.channel_id)

  const acknowledge = (open: Open, body: Json, files: readonly WireFile[]): Answered => {
    const data = (body.data ?? {}) as Json
    const flags = Number(data.flags ?? 0)
    const found = callbackFaults(open, body, files)
    return checked(found, () => {
      open.acknowledged = Number(body.type)
      open.ephemeral = (flags & EPHEMERAL) !== 0
      if (body.type === 4) open.original = message(open, data, files, open.ephemeral)
      return { status: 204 }
    })
  }
  return {
    faults,
    add: (event) => {
      byToken.set(String(event.token), {
        event,
        issued: timeOf(String(event.id)),
        acknowledged: undefined,
        ephemeral: false,
        original: undefined,
        followUps: 0,
        isOver: false,
      })
    },
    end: (id) => {
      for (const open of byToken.values()) if (open.event.id === id) open.isOver = true
    },
    callback: (id, token, body, files) => {
      const open = byToken.get(token)
      if (!open || open.event.id !== id) return refusal(404, 10062, 'Unknown interaction')
      if (open.acknowledged !== undefined)
        return refusal(400, 40060, 'Interaction has already been acknowledged.')
      if (Date.now() - open.issued > deadline) return refusal(404, 10062, 'Unknown interaction')
      return acknowledge(open, body, files)
    },
    edit: (token, body, files) => {
      const open = byToken.get(token)
      if (open?.isOver) return refusal(401, 50027, 'Invalid Webhook Token')
      if (!open?.acknowledged) return refusal(404, 10015, 'Unknown Webhook')
      const flags = Number(body.flags ?? 0)
      const found = [
        ...((flags & ~EDITABLE) === 0 ? [] : [`flags ${flags} may not be set by an edit`]),
        ...checkMessage({ payload: body, files: sized(files) }),
      ]
      return checked(found, () => {
        open.original = message(open, body, files, open.ephemeral)
        return { status: 200, body: open.original }
      })
    },
    followUp: (token, body, files) => {
      const open = byToken.get(token)
      if (open?.isOver) return refusal(401, 50027, 'Invalid Webhook Token')
      if (!open?.acknowledged) return refusal(404, 10015, 'Unknown Webhook')
      const isTheirs = !Object.hasOwn((open.event.authorizing_integration_owners ?? {}) as Json, '0')
      if (isTheirs && open.followUps >= 5)
        return refusal(400, 40094, 'This interaction has reached the maximum number of follow up messages.')
      return checked(checkMessage({ payload: body, files: sized(files) }), () => {
        open.followUps += 1
        const isForced = isTheirs && (BigInt(String(open.event.app_permissions ?? 0)) & (1n << 50n)) === 0n
        const isEphemeral = (Number(body.flags ?? 0) & EPHEMERAL) !== 0 || isForced
        return { status: 200, body: message(open, body, files, isEphemeral) }
      })
    },
  }
}

function callbackFaults(open: Open, body: Json, files: readonly WireFile[]): readonly string[] {
  const data = (body.data ?? {}) as Json
  const type = Number(body.type)
  if (!(TAKES[Number(open.event.type)] ?? []).includes(type))
    return [`type ${type} does not answer an interaction of type ${open.event.type}`]
  if (type === 5 || type === 6)
    return [0, EPHEMERAL].includes(Number(data.flags ?? 0))
      ? []
      : ['only the ephemeral flag goes with a deferral']
  if (type === 8) return suggestionFaults(data.choices)
  return type === 9 ? checkForm(data) : checkMessage({ payload: data, files: sized(files) })
}

function suggestionFaults(choices: unknown): readonly string[] {
  if (!Array.isArray(choices) || choices.length > 25) return ['up to 25 suggestions']
  return choices.flatMap(({ name, value }: { name: unknown; value: unknown }) =>
    [name, value].every((each) => String(each).length >= 1 && String(each).length <= 100)
      ? []
      : ['a suggestion of 1 to 100 characters'],
  )
}
