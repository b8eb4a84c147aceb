import { z } from 'zod'
import { type Action, defineAction } from './command.ts'
import type { Context } from './context.ts'
import type { Document, Moved } from './document.ts'
import { quoted, Refusal } from './refusal.ts'
import type { Reply } from './reply.ts'

/** What undo and redo need to know of something that is kept. */
interface Undoable<Body> {
  /** What it is called in a sentence: `cut list`. */
  readonly name: string
  readonly open: (context: Context) => Document<Body>
  /** The reply to what holds now; `said` begins its first line. */
  readonly reply: (body: Moved<Body>['body'], context: Context, said: string) => Reply | Promise<Reply>
}

const SAID = { undo: 'Undone', redo: 'Done again' } as const

/** The verbs `undo` and `redo` of a list that is kept for the channel. */
export function undoVerbs<Body>(kept: Undoable<Body>): { readonly undo: Action; readonly redo: Action } {
  const verb = (way: 'undo' | 'redo', summary: string) =>
    defineAction({
      summary,
      options: z.strictObject({}),
      run: async (_input, context) => {
        const moved = await kept.open(context)[way]()
        if (!moved) throw new Refusal('invalid', `there is nothing to ${way} in this ${kept.name}`)
        return kept.reply(moved.body, context, `${SAID[way]}: ${quoted(moved.revision.command)}`)
      },
    })
  return {
    undo: verb('undo', 'Take the last change of the list back'),
    redo: verb('redo', 'Bring back what was undone last'),
  }
}
