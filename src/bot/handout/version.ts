import type { Context } from '../context.ts'
import { cutListSchema } from '../cutList.ts'
import { projectSchema } from '../project.ts'
import { dateWords } from './dateWords.ts'

/** Which state of the channel's work is printed. */
export interface Version {
  /** The revision that the file is named by: that of the plan, or of the cut list where there is no plan. */
  readonly number: number
  /** `plan version 12, cut list version 3`. */
  readonly words: string
}

/** The revisions of the plan and of the channel's own cut list, as far as they are kept. */
export async function versionOf(context: Context): Promise<Version> {
  const [[plan], [list]] = await Promise.all([
    context.ofChannel('project', projectSchema).history(1),
    context.ofChannel('cutlist', cutListSchema).history(1),
  ])
  return {
    number: (context.project ? plan?.revision : list?.revision) ?? 0,
    words: [
      context.project && plan ? `plan version ${plan.revision}` : '',
      list ? `cut list version ${list.revision}` : '',
    ]
      .filter((part) => part !== '')
      .join(', '),
  }
}

/** `Plan version 12, 6 March 2026`. */
export const versionLine = (words: string, at: Date): string =>
  `${words.slice(0, 1).toUpperCase()}${words.slice(1)}, ${dateWords(at)}`
