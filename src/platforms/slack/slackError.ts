/** What Slack says went wrong, such as `not_in_channel`, or the kind of failure; never a token or an address. */
export function slackError(error: unknown): string {
  const { data, code, name } = error as { data?: { error?: unknown }; code?: unknown; name?: unknown }
  return [data?.error, code, name].find((each) => typeof each === 'string') ?? 'unknown'
}
