import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { render } from '../../src/platforms/room/render.ts'
import { openSqlite } from '../../src/store/sqlite.ts'
import { openRoom } from '../room.ts'
import type { Step } from './conversation.ts'

/** A step, with what was answered: nothing to a restart. */
export type Held = Step & { readonly actual: readonly string[] }

/** Says every line in turn, in a fresh place with a store of its own; a restart comes with the next evening. */
export async function holdConversation(steps: readonly Step[]): Promise<readonly Held[]> {
  const folder = mkdtempSync(join(tmpdir(), 'battenbot-conversation-'))
  const open = async (evening: number) =>
    openRoom({ evening, store: await openSqlite(join(folder, 'store.sqlite')) })
  const held: Held[] = []
  let evening = 0
  let room = await open(evening)
  for (const step of steps) {
    if (step.kind === 'said')
      held.push({ ...step, actual: render(await room.ask(step.line, step)).split('\n') })
    else {
      held.push({ ...step, actual: [] })
      await room.close()
      evening += 1
      room = await open(evening)
    }
  }
  await room.close()
  rmSync(folder, { recursive: true })
  return held
}
