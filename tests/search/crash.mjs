// A thread that goes wrong on demand; what is asked for stands in the first part's name.
import { setTimeout } from 'node:timers/promises'

export const work = async ({ problem, stop }) => {
  const [{ id }] = problem.parts
  if (id === 'throw') throw new Error('the search broke')
  if (id === 'die') {
    globalThis.setTimeout(() => {
      throw new Error('the thread died')
    }, 0)
    await setTimeout(60_000)
  }
  if (id === 'memory') {
    const hoard = []
    for (;;) hoard.push(new Array(1e6).fill(hoard.length))
  }
  if (id === 'wait') {
    const flag = new Int32Array(stop)
    while (Atomics.load(flag, 0) === 0) await setTimeout(5)
  }
  return { outcome: { status: 'stopped', id }, milliseconds: 1 }
}

export const order = () => {
  for (;;);
}
