import {
  App,
  HTTPReceiver,
  type InstallationStore,
  type Logger as BoltLogger,
  SocketModeReceiver,
} from '@slack/bolt'
import type { WebClientOptions } from '@slack/web-api'
import { createInstallations } from './installations.ts'
import type { HttpOptions, OAuthOptions, SlackOptions, SocketOptions } from './options.ts'
import { OPTIONAL_SCOPES, SCOPES } from './scopes.ts'
import { createSeal } from './seal.ts'

/** Bolt, set up for one way of hearing Slack. */
export type SlackApp =
  | { readonly mode: 'socket'; readonly app: App; readonly receiver: SocketModeReceiver }
  | {
      readonly mode: 'http'
      readonly app: App
      readonly connection: HttpOptions
      readonly installations: InstallationStore | undefined
    }

const HOST = 'https://slack.com'

/** Makes the app; nothing is sent or heard before its connection is started. */
export function createApp(options: SlackOptions, log: BoltLogger): SlackApp {
  const { connection, apiUrl } = options
  return connection.mode === 'socket' ? socketApp(connection, log, apiUrl) : httpApp(connection, log, apiUrl)
}

/**
 * Slack's 429 is waited out, as long as `Retry-After` asks; a call that is not answered is tried again twice. A fresh
 * object each time: Socket Mode writes into the one it is given.
 */
const clientOptions = (log: BoltLogger, apiUrl: string | undefined, retries: number): WebClientOptions => ({
  logger: log,
  retryConfig: { retries, factor: 2, minTimeout: 500, maxTimeout: 4000 },
  timeout: 10_000,
  ...(apiUrl !== undefined && { slackApiUrl: apiUrl }),
})

/** `deferInitialization`, so that a token that Slack refuses is an error here and not the end of the process. */
const common = (log: BoltLogger, apiUrl: string | undefined) => ({
  logger: log,
  convoStore: false as const,
  deferInitialization: true,
  extendedErrorHandler: true,
  attachFunctionToken: false,
  clientOptions: clientOptions(log, apiUrl, 3),
})

function socketApp({ appToken, botToken }: SocketOptions, log: BoltLogger, apiUrl?: string): SlackApp {
  const receiver = new SocketModeReceiver({
    appToken,
    logger: log,
    // connection.ts opens the next socket.
    autoReconnectEnabled: false,
    clientPingTimeout: 3000,
    installerOptions: { clientOptions: clientOptions(log, apiUrl, 0) },
  })
  return { mode: 'socket', receiver, app: new App({ ...common(log, apiUrl), receiver, token: botToken }) }
}

function httpApp(connection: HttpOptions, log: BoltLogger, apiUrl?: string): SlackApp {
  const { signingSecret, workspaces } = connection
  const receive = { signingSecret, logger: log }
  if ('botToken' in workspaces) {
    const receiver = new HTTPReceiver(receive)
    const app = new App({ ...common(log, apiUrl), receiver, token: workspaces.botToken })
    return { mode: 'http', app, connection, installations: undefined }
  }
  const installations = createInstallations(workspaces.vault, createSeal(workspaces.key))
  const receiver = new HTTPReceiver({ ...receive, ...installing(workspaces, installations, log, apiUrl) })
  return { mode: 'http', app: new App({ ...common(log, apiUrl), receiver }), connection, installations }
}

const REDIRECT = '/slack/oauth_redirect'

const installing = (
  { clientId, clientSecret, stateSecret, address }: OAuthOptions,
  installationStore: InstallationStore,
  log: BoltLogger,
  apiUrl: string | undefined,
) => ({
  clientId,
  clientSecret,
  stateSecret,
  installationStore,
  scopes: [...SCOPES, ...OPTIONAL_SCOPES],
  ...(address !== undefined && { redirectUri: `${address}${REDIRECT}` }),
  installerOptions: {
    directInstall: true,
    redirectUriPath: REDIRECT,
    clientOptions: clientOptions(log, apiUrl, 2),
    authorizationUrl: `${HOST}/oauth/v2/authorize`,
  },
})
