import { readFileSync } from 'node:fs'

/** A payload as Slack documents it, with the fields that a test sets itself. */
export type Payload = Record<string, unknown>

/** Reads `tests/payloads/slack/<name>.json`: where it is from, and the payload. */
export function payload(name: string, changes: Payload = {}): Payload {
  const file = new URL(`../../payloads/slack/${name}.json`, import.meta.url)
  const { source, payload: read } = JSON.parse(readFileSync(file, 'utf8')) as {
    source: string
    payload: Payload
  }
  if (!source) throw new Error(`${name} does not say where it is from`)
  return { ...read, ...changes }
}

/** The same with fields of its inner event set. */
export const eventPayload = (name: string, event: Payload, changes: Payload = {}): Payload => {
  const read = payload(name, changes)
  return { ...read, event: { ...(read.event as Payload), ...event } }
}
