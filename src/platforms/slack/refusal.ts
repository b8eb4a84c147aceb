/** What Slack says of a token that is wrong or was taken back: trying again does not help. */
const REFUSALS =
  /^(?:invalid_auth|not_authed|account_inactive|token_revoked|token_expired|not_allowed_token_type|missing_scope|no_permission|team_access_not_granted|app_uninstalled)$/u

/** Whether a connection was refused for good. */
export const isRefusal = (why: string): boolean => REFUSALS.test(why)

/** Whether the token itself counts no more; a scope that is missing for one call says nothing of it. */
export const isTakenBack = (why: string): boolean =>
  /\b(?:invalid_auth|not_authed|account_inactive|token_revoked|token_expired|app_uninstalled)$/u.test(why)

/** The sentence for the health and the log. */
export const refusalWords = (why: string): string =>
  `Slack refuses the token (${why}); set a valid one and start again`
