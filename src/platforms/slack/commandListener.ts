import type { SlashCommand } from '@slack/bolt'
import type { WebClient } from '@slack/web-api'
import { deliver } from './deliver.ts'
import { ask, type Desk, isFirst } from './desk.ts'
import { typedText } from './escape.ts'
import { createResponseUrl } from './responseUrl.ts'

/** Answers a typed slash command, for the person who typed it alone unless the answer is for all. */
export async function answerCommand(desk: Desk, command: SlashCommand, client: WebClient): Promise<void> {
  const { parts, pause } = desk
  const response = createResponseUrl(command.response_url, parts.now, pause)
  if (!(await isFirst(desk, `command ${command.team_id} ${command.trigger_id}`))) return
  const where = {
    client,
    team: command.team_id,
    channel: command.channel_id,
    user: command.user_id,
    name: command.user_name,
  }
  const line = typedText(command.text) || 'help'
  await deliver(
    desk,
    { ...where, response },
    { response: await ask(desk, where, { line }), line, audience: 'asker' },
  )
}
