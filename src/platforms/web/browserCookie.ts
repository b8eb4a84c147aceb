import { randomUUID } from 'node:crypto'

const NAME = 'battenbot_browser'
const SECONDS = 400 * 24 * 60 * 60
const COOKIE = new RegExp(`(?:^|;\\s*)${NAME}=([0-9a-f-]{36})(?:;|$)`, 'u')

/** The random number that stands for a browser; undefined for one that has none yet. */
export const browserIn = (cookies: string | undefined): string | undefined => COOKIE.exec(cookies ?? '')?.[1]

/** A number for a browser that has none, and the header that gives it one. No script can read it. */
export function newBrowser(): { readonly browser: string; readonly header: string } {
  const browser = randomUUID()
  return {
    browser,
    header: `${NAME}=${browser}; Path=/; Max-Age=${SECONDS}; HttpOnly; SameSite=Strict`,
  }
}
