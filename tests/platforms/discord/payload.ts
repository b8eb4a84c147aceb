import { readFileSync } from 'node:fs'
import type { Json } from './wire.ts'

/** A payload of tests/payloads/discord, each with its source beside it. A fresh copy each time. */
export const payload = (name: string): Json =>
  (
    JSON.parse(readFileSync(new URL(`../../payloads/discord/${name}.json`, import.meta.url), 'utf8')) as {
      event: Json
    }
  ).event
