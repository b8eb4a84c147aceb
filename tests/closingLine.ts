import type { Reporter, TestModule } from 'vitest/node'

/** Prints the last line of a test run: how many tests passed and how many failed. */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: ReadonlyArray<TestModule>): void {
    let passed = 0
    let failed = 0
    for (const module of modules) {
      if (module.state() === 'failed' && [...module.children.allTests()].every((test) => test.ok()))
        failed += 1
      for (const test of module.children.allTests()) {
        if (test.result().state === 'passed') passed += 1
        if (test.result().state === 'failed') failed += 1
      }
    }
    process.stdout.write(`${passed} passed, ${failed} failed\n`)
  }
}
