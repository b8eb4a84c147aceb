import { examples } from './room.ts'

/** The plan that examples go on from. */
export const PLAN = 'project start 17in x 13in height=15in sheet=1/2 ply'

/** Examples that go on from a plan are run where there is one. */
const NEEDS_PLAN = /^(?:project(?! start)|layout|cutorder|shopping|steps|draw|handout|group)/u

/** What has to be said before an example: of a group all that comes before it, for the examples follow one another. */
export function before(line: string): readonly string[] {
  if (line.startsWith('where')) return [PLAN, 'group open Spring planters', 'group join']
  if (!line.startsWith('group')) return NEEDS_PLAN.test(line) ? [PLAN] : []
  const lines = examples.filter(([name]) => name === 'group').map(([, each]) => each)
  return [PLAN, ...lines.slice(0, lines.indexOf(line))]
}
