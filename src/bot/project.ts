import { z } from 'zod'
import { planChoicesSchema } from './planChoices.ts'

/** What a channel keeps of its build. */
export const projectSchema = z.strictObject({
  /** The unit system it was described in. */
  units: z.enum(['inch', 'metric']).optional(),
  choices: planChoicesSchema,
})
export type Project = z.output<typeof projectSchema>
