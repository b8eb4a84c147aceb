import type { ShouldStop } from '../../../src/core/cutting/problem.ts'

/** Stops a search once the time is up, counted from now. */
export function stopAfter(seconds: number): ShouldStop {
  const end = performance.now() + 1000 * seconds
  return () => performance.now() >= end
}

/** What `work` gives, and the milliseconds it took. */
export async function timed<Answer>(
  work: () => Answer | Promise<Answer>,
): Promise<{ answer: Answer; milliseconds: number }> {
  const start = performance.now()
  const answer = await work()
  return { answer, milliseconds: performance.now() - start }
}
