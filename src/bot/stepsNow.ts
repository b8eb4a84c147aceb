import type { Context } from './context.ts'
import type { Reply } from './reply.ts'
import { buildOf, openBuild, standingOf } from './stepsKept.ts'
import { currentReply, stepWords } from './stepsReply.ts'

/** Where the build of the channel's plan stands: what was ticked off last, by whom and when, and the step to do now. */
export async function stepsNow(context: Context): Promise<Reply> {
  const build = await openBuild(context)
  const standing = standingOf(build, await buildOf(context).read())
  const marked = standing.filter(({ mark }) => mark !== undefined)
  const latest = marked.reduce<(typeof marked)[number] | undefined>(
    (a, b) => (a && (a.mark?.at ?? '') > (b.mark?.at ?? '') ? a : b),
    undefined,
  )
  const reply = currentReply(standing, build, context)
  if (!latest?.mark) return { ...reply, notes: ['nothing is ticked off yet', ...(reply.notes ?? [])] }
  const { state, by, at } = latest.mark
  const when = `${at.slice(0, 16).replace('T', ' ')} UTC`
  const last = `last: ${latest.number}, ${stepWords(latest, context.show)}, ${state} by ${await context.nameOf(by)}, ${when}`
  return { ...reply, notes: [last, ...(reply.notes ?? [])] }
}
