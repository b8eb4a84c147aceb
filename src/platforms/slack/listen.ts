import type { App, BlockAction, InstallationStore, ViewSubmitAction } from '@slack/bolt'
import type { WebClient } from '@slack/web-api'
import { answerCommand } from './commandListener.ts'
import { type Desk, isFirst } from './desk.ts'
import { answerForm } from './formListener.ts'
import { publishHome } from './home.ts'
import { answerDirect, answerMention, type HeardMessage } from './messageListener.ts'
import { channelOf, readPress } from './press.ts'
import { answerPress } from './pressListener.ts'
import { forgetTeam, type LeavingEvent } from './teamListener.ts'

/** Runs work that was acknowledged: counted while it lasts, its failure logged. */
export type Run = (name: string, work: () => Promise<void>) => Promise<void>

/** Hears everything that Slack sends; each is acknowledged before anything is done about it. */
export function listen(app: App, desk: Desk, run: Run): void {
  app.command(desk.command, async ({ ack, command, client }) => {
    await acknowledged(desk, ack)
    await run('command', () => answerCommand(desk, command, client))
  })
  app.action({ type: 'block_actions' }, async ({ ack, body, client, context }) => {
    await acknowledged(desk, ack)
    await run('press', () => heardPress(desk, body, client, context.teamId ?? body.team?.id ?? ''))
  })
  app.view<ViewSubmitAction>(
    { callback_id: 'form', type: 'view_submission' },
    async ({ ack, body, client, context }) => {
      const team = context.teamId ?? body.team?.id ?? ''
      // The answer may belong in the acknowledgement, which is sent in half of the time that Slack waits.
      await run('form', () => answerForm(desk, { body, client, team, ack }))
    },
  )
  app.event('app_mention', async ({ event, body, client, context }) => {
    const heard = heardOf(event, body, context)
    if (heard) await run('mention', () => answerMention(desk, heard, client))
  })
  app.event('message', async ({ event, body, client, context }) => {
    const heard = heardOf(event, body, context)
    if (heard && isFromPerson(event)) await run('direct message', () => answerDirect(desk, heard, client))
  })
  app.event('app_home_opened', async ({ event, body, client, context }) => {
    if (event.tab !== 'home') return
    const channel = channelOf(event.view?.private_metadata) ?? event.channel
    const where = { client, team: context.teamId ?? body.team_id, channel, user: event.user }
    await run('home', async () => {
      if (await isFirst(desk, `event ${body.event_id}`)) await publishHome(desk, where)
    })
  })
}

/** Hears of workspaces that take the app away. */
export function listenForLeaving(app: App, desk: Desk, installations: InstallationStore, run: Run): void {
  const leave = (body: object) => run('leaving', () => forgetTeam(desk, installations, body as LeavingEvent))
  app.event('app_uninstalled', ({ body }) => leave(body))
  app.event('tokens_revoked', async ({ body, event }) => {
    if ((event.tokens.bot ?? []).length > 0) await leave(body)
  })
}

/** Hears that the only workspace may have taken the token back. */
export function listenForDoubt(app: App, desk: Desk): void {
  app.event('app_uninstalled', async () => desk.doubt())
  app.event('tokens_revoked', async () => desk.doubt())
}

/** A lost acknowledgement is Slack's to mind: the answer still arrives. */
async function acknowledged({ parts }: Desk, ack: () => Promise<void>): Promise<void> {
  await ack().catch((error: Error) => parts.log.warn({ error: error.message }, 'Slack was not acknowledged'))
}

async function heardPress(desk: Desk, body: BlockAction, client: WebClient, team: string): Promise<void> {
  const name = body.actions[0]?.action_id.split(':')[0] ?? ''
  if (await isFirst(desk, `press ${team} ${body.trigger_id}`))
    await answerPress(name, readPress(desk, body, client, team))
}

/** Something said to the bot; undefined for what has no words or no person. */
function heardOf(
  event: object,
  body: { event_id: string; team_id: string },
  { teamId, botUserId }: { teamId?: string; botUserId?: string },
): HeardMessage | undefined {
  const { channel, user, text, ts, thread_ts } = event as Readonly<Record<string, unknown>>
  if (typeof user !== 'string' || typeof channel !== 'string' || typeof text !== 'string') return undefined
  const heard = {
    eventId: body.event_id,
    team: teamId ?? body.team_id,
    bot: botUserId,
    channel,
    user,
    text,
    at: String(ts),
  }
  return typeof thread_ts === 'string' ? { ...heard, thread: thread_ts } : heard
}

/** Written just now in the conversation with the bot: not by a bot, not an edit, not a notice of Slack's. */
function isFromPerson(event: object): boolean {
  const { channel_type, subtype, bot_id } = event as Readonly<Record<string, unknown>>
  return channel_type === 'im' && (subtype === undefined || subtype === 'file_share') && bot_id === undefined
}
