import { isIP } from 'node:net'

/** Why a request is turned away, or nothing when it may come in. */
export type Turned = 'host' | 'origin' | undefined

/** What of a request says where it comes from. */
export interface Came {
  readonly method: string
  readonly host: string | undefined
  readonly origin: string | undefined
  /** The browser's own word on it, `Sec-Fetch-Site`. */
  readonly site: string | undefined
}

const LOOPBACK = ['localhost', '127.0.0.1', '[::1]']

/**
 * Lets in only pages of the room itself. A foreign page can name any host that leads here, so the host has to be one of
 * `names` or, where the room is open to a network, an address in digits; and only the room's own pages may send anything.
 */
export function guard(names: readonly string[], isOpenToNetwork: boolean): (came: Came) => Turned {
  const known = new Set([...LOOPBACK, ...names.map((name) => name.toLowerCase())])
  const isKnown = (host: string): boolean =>
    known.has(host) || (isOpenToNetwork && isIP(host.replace(/^\[|\]$/gu, '')) !== 0)
  return ({ method, host, origin, site }) => {
    if (!isKnown(nameIn(host))) return 'host'
    if (site !== undefined && site !== 'same-origin' && site !== 'none') return 'origin'
    if (method !== 'GET' && method !== 'HEAD' && origin === undefined) return 'origin'
    return origin === undefined || isFrom(origin, host) ? undefined : 'origin'
  }
}

/** A page that leads on to the room is no attack, so a link may come from anywhere. */
export const isLink = (method: string, mode: string | undefined): boolean =>
  method === 'GET' && mode === 'navigate'

/** The host without its port. */
const nameIn = (host = ''): string => host.toLowerCase().replace(/:\d+$/u, '')

const isFrom = (origin: string, host = ''): boolean =>
  [`http://${host.toLowerCase()}`, `https://${host.toLowerCase()}`].includes(origin.toLowerCase())
