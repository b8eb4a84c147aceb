// A worker thread does not take over the loader of the process that starts it, so it must be told how to read TypeScript.
import { register } from 'tsx/esm/api'

register()

/** Runs one search; see worker.ts. */
export const work = async (task) => (await import('./worker.ts')).work(task)

/** Orders the cuts of a job; see worker.ts. */
export const order = async (job) => (await import('./worker.ts')).order(job)
