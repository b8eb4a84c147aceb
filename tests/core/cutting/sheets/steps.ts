import type { ShouldStop } from '../../../../src/core/cutting/problem.ts'

/** Stops a search at its call number `steps` + 1: the same work on any machine. */
export const afterSteps = (steps: number): ShouldStop => {
  let calls = 0
  return () => ++calls > steps
}
