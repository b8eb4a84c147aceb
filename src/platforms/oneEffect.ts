import type { PlatformParts, TapName } from '../bot/platform.ts'

/** What became of it: done just now or before, begun by another tap that is not done yet, or failed and to be tried again. */
export type Effect = 'done' | 'done before' | 'under way' | 'failed'

/** What of a platform this needs. */
export type EffectParts = Pick<PlatformParts, 'keeping' | 'now' | 'log'>

/** What is remembered: that it is done, or until when (ms) somebody is about it. */
interface Progress {
  readonly isDone?: boolean
  readonly until?: number
}

/** Who has not finished by then is taken to have died, in ms. */
const LONGEST = 60_000

/**
 * Does `work` once under a name, for all processes: whoever taps twice has it once. What failed, by a rejection or by giving
 * false, may be tapped again. When the store cannot say whether it was done, it is done: twice is better than not at all.
 */
export async function oneEffect(
  name: string,
  work: () => Promise<boolean>,
  parts: EffectParts,
): Promise<Effect> {
  const { keeping, log } = parts
  const tap: TapName = `tap ${name}`
  const claim = await claimOf(tap, parts).catch((err: unknown) => {
    log.error({ err }, 'the store cannot say whether a tap had its effect before')
    return undefined
  })
  if (typeof claim === 'string') return claim
  let isDone = false
  try {
    isDone = await work()
    return isDone ? 'done' : 'failed'
  } finally {
    const progress = JSON.stringify({ isDone } satisfies Progress)
    if (claim !== undefined)
      await keeping.remember(tap, progress, claim).catch((err: unknown) => {
        log.error({ err }, 'the store did not note what a tap did')
      })
  }
}

/** The revision that what comes of it is written over; or why nothing is to be done. */
async function claimOf(name: string, { keeping, now }: EffectParts): Promise<number | Effect> {
  const { revision, text } = await keeping.recall(name)
  const { isDone = false, until = 0 } = (text === undefined ? {} : JSON.parse(text)) as Progress
  if (isDone) return 'done before'
  const at = now().getTime()
  if (until > at) return 'under way'
  const busy = JSON.stringify({ until: at + LONGEST } satisfies Progress)
  return (await keeping.remember(name, busy, revision)) ? revision + 1 : 'under way'
}
