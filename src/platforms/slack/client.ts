import { AuthorizationError, type CodedError } from '@slack/bolt'
import type { PlatformParts } from '../../bot/platform.ts'
import type { Platform } from '../../bot/request.ts'
import { createNotices } from '../notices.ts'
import { createApp, type SlackApp } from './app.ts'
import { createBoltLog } from './boltLog.ts'
import { type Connection, createHttpConnection, createSocketConnection } from './connection.ts'
import type { Desk } from './desk.ts'
import { UNREADABLE } from './installations.ts'
import { limits } from './limits.ts'
import { listen, listenForDoubt, listenForLeaving, type Run } from './listen.ts'
import type { SlackOptions } from './options.ts'
import { pause } from './patientFetch.ts'
import { createPeople } from './people.ts'
import { createRecent } from './recent.ts'
import { redactor } from './redact.ts'
import { isTakenBack } from './refusal.ts'
import { createResponseUrl } from './responseUrl.ts'
import { slackError } from './slackError.ts'
import { watchToken } from './tokenWatch.ts'
import { createUnderWay } from './underWay.ts'

/** Slack: one slash command with a typed line, mentions in threads, direct messages, buttons, forms, a home page. */
export function createSlack(parts: PlatformParts, options: SlackOptions): Platform {
  const redact = redactor(secretsOf(options))
  const slack = createApp(options, createBoltLog(parts.log, redact))
  const underWay = createUnderWay()
  const wait = options.pause ?? pause
  const connection = watchToken(
    connectionOf(slack, options, parts),
    tokenTest(slack, options),
    parts.log,
    options.lookEvery,
  )
  const desk: Desk = {
    parts,
    command: options.command,
    people: createPeople(parts.now),
    recent: createRecent(),
    notices: createNotices({ ...parts, pause: wait }),
    pause: wait,
    doubt: () => connection.doubt(),
  }
  const run: Run = async (name, work) => {
    try {
      await underWay.add(work())
    } catch (error) {
      const { message, stack = '' } = error as Error
      const why = slackError(error)
      if (isTakenBack(why)) desk.doubt()
      parts.log.error({ name, why, error: redact(message), stack: redact(stack) }, 'Slack was not answered')
    }
  }
  listen(slack.app, desk, run)
  if (slack.mode === 'http' && slack.installations)
    listenForLeaving(slack.app, desk, slack.installations, run)
  else listenForDoubt(slack.app, desk)
  answerStrangers(slack, desk, options, run)
  return {
    name: 'slack',
    limits,
    start: connection.start,
    stop: async () => {
      await connection.stop()
      await underWay.settled()
    },
    health: connection.health,
  }
}

/** Asks Slack whether the one token counts; undefined where every workspace has its own. */
function tokenTest({ app }: SlackApp, { connection }: SlackOptions): (() => Promise<unknown>) | undefined {
  const only = connection.mode === 'socket' ? connection : connection.workspaces
  if (!('botToken' in only)) return undefined
  return () => app.client.auth.test({ token: only.botToken })
}

const connectionOf = (slack: SlackApp, options: SlackOptions, { log }: PlatformParts): Connection => {
  const parts = { app: slack.app, log, pause: options.pause }
  return slack.mode === 'socket'
    ? createSocketConnection(parts, slack.receiver)
    : createHttpConnection(parts, slack.connection, options.listening)
}

/**
 * A person in a workspace that has not installed the app, or not any more, would get no answer at all: Bolt calls no
 * listener. Everything else that Bolt cannot do is logged.
 */
function answerStrangers({ app }: SlackApp, desk: Desk, options: SlackOptions, run: Run): void {
  const { parts } = desk
  app.error(async ({ error, body }: { error: CodedError; body: object }) => {
    const why = slackError(error)
    const url = (body as { response_url?: unknown }).response_url
    if (!(error instanceof AuthorizationError))
      return parts.log.error({ why }, 'Slack sent what could not be answered')
    parts.log.warn({ why, cause: error.original?.message }, 'a Slack workspace without an installation asked')
    if (typeof url === 'string')
      await run('stranger', async () => {
        await createResponseUrl(url, parts.now, desk.pause).post({
          response_type: 'ephemeral',
          text: error.original?.message.includes(UNREADABLE) ? UNSURE : strangerWords(options),
        })
      })
  })
}

const UNSURE = 'I cannot look up just now whether I am installed in this workspace; ask again in a minute.'

const strangerWords = ({ connection }: SlackOptions): string => {
  const address =
    connection.mode === 'http' && 'clientId' in connection.workspaces && connection.workspaces.address
  const where = address ? ` here: ${address}/slack/install` : ', by whoever set me up'
  return `I am not installed in this workspace, or not any more, so I cannot answer yet. I can be installed${where}`
}

function secretsOf({ connection }: SlackOptions): readonly string[] {
  if (connection.mode === 'socket') return [connection.appToken, connection.botToken]
  const { signingSecret, workspaces } = connection
  if ('botToken' in workspaces) return [signingSecret, workspaces.botToken]
  const { clientSecret, stateSecret, key } = workspaces
  return [signingSecret, clientSecret, stateSecret, key.toString('hex'), key.toString('base64')]
}
