/** What the bot cannot work without: its command, answers, mentions and direct messages to it, drawings. */
export const SCOPES = ['commands', 'chat:write', 'app_mentions:read', 'im:history', 'files:write'] as const

/** What it does without: a person's language, who may manage a channel, and pinning what it puts up for all. */
export const OPTIONAL_SCOPES = ['users:read', 'channels:read', 'groups:read', 'pins:write'] as const

/** What it wants to hear of. */
export const EVENTS = [
  'app_mention',
  'message.im',
  'app_home_opened',
  'app_uninstalled',
  'tokens_revoked',
] as const
