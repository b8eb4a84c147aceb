// A worker thread does not take over the loader of the process that starts it, so it must be told how to read TypeScript.
import { register } from 'tsx/esm/api'

register()

/** Paints one picture; see worker.ts. */
export const work = async (picture) => (await import('./worker.ts')).work(picture)
