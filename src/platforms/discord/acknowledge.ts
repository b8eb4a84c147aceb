import { MessageFlags } from 'discord-api-types/v10'
import { type Asking, isPrivate } from './asker.ts'
import type { Desk } from './desk.ts'
import { limits } from './limits.ts'
import { loggable, troubleOf } from './trouble.ts'

/** What came of saying at once that the event was heard: it is ours to answer, somebody else's, or the time for it is over. */
export type Acknowledged = 'ours' | 'taken' | 'late'

/** From here on an acknowledgement came close to its deadline, in ms. */
const SLOW = (limits.acknowledgeSeconds - 1) * 1000

/** Says at once that the answer is being worked out. */
export async function acknowledge(interaction: Asking, { parts }: Desk): Promise<Acknowledged> {
  try {
    await interaction.deferReply(isPrivate(interaction) ? { flags: MessageFlags.Ephemeral } : {})
    const after = parts.now().getTime() - interaction.createdTimestamp
    if (after > SLOW) parts.log.warn({ interaction: interaction.id, after }, 'an acknowledgement was slow')
    return 'ours'
  } catch (error) {
    const isTaken = troubleOf(error) === 'taken'
    if (!isTaken)
      parts.log.warn(
        { ...loggable(error), interaction: interaction.id },
        'an event was acknowledged too late',
      )
    return isTaken ? 'taken' : 'late'
  }
}
