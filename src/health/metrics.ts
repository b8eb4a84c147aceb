import { collectDefaultMetrics, Counter, Histogram, Registry } from 'prom-client'
import type { Answer } from '../bot/request.ts'

/** Counts and times of what is answered, in the text format that Prometheus reads. */
export interface Metrics {
  /** Answers as `answer` does, and counts it. Nothing of who asked, or what, is counted. */
  readonly counted: (answer: Answer) => Answer
  readonly text: () => Promise<string>
  readonly type: string
}

export function createMetrics(): Metrics {
  const registry = new Registry()
  collectDefaultMetrics({ register: registry })
  const answers = new Counter({
    name: 'battenbot_answers_total',
    help: 'Requests answered, by platform and what became of them',
    labelNames: ['platform', 'outcome'] as const,
    registers: [registry],
  })
  const seconds = new Histogram({
    name: 'battenbot_answer_seconds',
    help: 'Seconds from a request to its answer',
    labelNames: ['platform'] as const,
    buckets: [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10],
    registers: [registry],
  })
  return {
    counted: (answer) => async (request) => {
      const { platform } = request.place
      const stop = seconds.startTimer({ platform })
      const response = await answer(request)
      stop()
      answers.inc({ platform, outcome: response.ok ? 'answered' : response.kind })
      return response
    },
    text: () => registry.metrics(),
    type: registry.contentType,
  }
}
