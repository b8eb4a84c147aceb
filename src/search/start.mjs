// A worker thread does not take over the loader of the process that starts it, so it must be told how to read TypeScript.
import { constants, setPriority } from 'node:os'
import { platform } from 'node:process'
import { register } from 'tsx/esm/api'

register()

// An answer is more urgent than a search. Only Linux takes this for the thread alone; elsewhere it would be the process.
if (platform === 'linux') setPriority(constants.priority.PRIORITY_BELOW_NORMAL)

/** Runs one search; see worker.ts. */
export const work = async (task) => (await import('./worker.ts')).work(task)

/** Orders the cuts of a job; see worker.ts. */
export const order = async (job) => (await import('./worker.ts')).order(job)
