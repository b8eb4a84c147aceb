import { z } from 'zod'
import { STAGES } from '../core/steps/step.ts'
import type { Times } from '../core/steps/times.ts'

const minutes = z.number().min(0).max(240)
const stageTime = z.strictObject({ set: minutes, each: minutes })

/** The shape of config/times.yaml: minutes for each stage of a build. */
export const timesFile = z
  .strictObject({
    source: z.string().min(1),
    steps: z.record(z.enum(STAGES), stageTime),
  })
  .transform(({ steps }): { times: Times } => ({ times: steps }))
