// A worker thread does not take over the loader of the process that starts it, so it must be told how to read TypeScript.
import { register } from 'tsx/esm/api'

register()

/** Prints one document; see worker.ts. */
export const work = async (handout) => (await import('./worker.ts')).work(handout)
