import { z } from 'zod'
import { OPENINGS } from '../core/checks/cautionFacts.ts'
import { nanometres } from '../core/measure/length.ts'
import { REGIONS } from '../core/stock/stock.ts'
import { BRACES, CORNERS } from './settings.ts'

/** What may close the box, lift the lid and lie in the bottom, and which panel lets a cord through. */
export const LIDS = ['none', 'inset', 'overlapping'] as const
export const HANDLES = ['none', 'strip', 'notch'] as const
export const BOTTOMS = ['none', 'cleats', 'feet'] as const
export const CORD_PANELS = ['none', 'end', 'side', 'front'] as const

const stored = z.int().nonnegative().transform(nanometres)

/**
 * What has been chosen for a surround, as the channel keeps it: values already read, so that a later change of units or
 * region never changes their meaning. Everything may be left open; completePlan.ts fills the rest from the config.
 */
export const planChoicesSchema = z.strictObject({
  object: z
    .union([
      z.strictObject({ shape: z.literal('rectangle'), length: stored, width: stored }),
      z.strictObject({ shape: z.literal('round'), diameter: stored }),
    ])
    .optional(),
  /** Plain words typed with the object: `pot`, `generator`. */
  objectWords: z.array(z.string()).optional(),
  height: stored.optional(),
  clearance: stored.optional(),
  sheet: z
    .strictObject({
      thickness: stored,
      measured: z.boolean(),
      label: stored.optional(),
      material: z.string().optional(),
    })
    .optional(),
  strip: stored.optional(),
  /** Face width of the strips: the dressed thickness of the board they are ripped from. */
  width: stored.optional(),
  board: z.string().optional(),
  corner: z.enum(CORNERS).optional(),
  braces: z.enum(BRACES).optional(),
  grooves: z.int().min(0).max(40).optional(),
  fit: stored.optional(),
  open: z.enum(OPENINGS).optional(),
  /** Height of a front that is not as high as the box. */
  front: stored.optional(),
  frontBrace: z.boolean().optional(),
  frontGrooves: z.int().min(0).max(40).optional(),
  lid: z.enum(LIDS).optional(),
  handle: z.enum(HANDLES).optional(),
  bottom: z.enum(BOTTOMS).optional(),
  /** Diameter of the drain holes; 0 for none. */
  drain: stored.optional(),
  spacing: stored.optional(),
  cord: z.strictObject({ width: stored, height: stored }).optional(),
  cordIn: z.enum(CORD_PANELS).optional(),
  /** Room round lid and bottom. */
  gap: stored.optional(),
  /** Where the wood is bought, as it was when the plan was kept: what is left open is filled from there, whoever asks. */
  region: z.enum(REGIONS).optional(),
})

/** The output side: lengths as lengths. */
export type PlanChoices = z.output<typeof planChoicesSchema>

/** `changes` laid over `base`; what is left open keeps its place. */
export const overlay = (base: PlanChoices, changes: PlanChoices): PlanChoices => ({
  ...base,
  ...Object.fromEntries(Object.entries(changes).filter(([, value]) => value !== undefined)),
})
