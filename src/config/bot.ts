import { z } from 'zod'
import { BRACES, type BotSettings, CORNERS, LOG_LEVELS, type Usual } from '../bot/settings.ts'
import { listed } from '../bot/suggest.ts'
import type { UnitSystem } from '../core/measure/reading.ts'
import { MILLIMETRE_STEPS, type MillimetreStep, TAPES, type Tape } from '../core/measure/show.ts'
import { REGIONS } from '../core/stock/stock.ts'
import { lengthOrZero, lengthText, written } from './amounts.ts'

const tape = written(
  listed(
    TAPES.map((part) => `1/${part}in`),
    'or',
  ),
  (text): Tape | undefined => TAPES.find((part) => text === `1/${part}in`),
)

const millimetreStep = written(
  listed(
    MILLIMETRE_STEPS.map((step) => `${step}mm`),
    'or',
  ),
  (text): MillimetreStep | undefined => MILLIMETRE_STEPS.find((step) => text === `${step}mm`),
)

/** `ask` leaves the units to whoever speaks first. */
const units = z
  .enum(['ask', 'inch', 'metric'])
  .transform((word): UnitSystem | undefined => (word === 'ask' ? undefined : word))

const name = z.string().trim().min(1)

const usual = z.strictObject({
  kerf: lengthText,
  clearance: lengthOrZero,
  strip: lengthText,
  board: name,
  sheet: name,
  fit: lengthOrZero,
}) satisfies z.ZodType<Usual>

/** The shape of config/bot.yaml. */
export const botFile = z.strictObject({
  region: z.enum(REGIONS),
  units,
  tape,
  jointTape: tape,
  millimetreStep,
  fineMillimetreStep: millimetreStep,
  usual: z.strictObject({ US: usual, UK: usual, AU: usual, EU: usual }),
  corner: z.enum(CORNERS),
  braces: z.enum(BRACES),
  grooves: z.int().min(0).max(40),
  safeRip: lengthText,
  mitreMax: z.number().min(45).max(89),
  commandSeconds: z.number().min(1).max(600),
  lineLength: z.int().min(100).max(100_000),
  revisionsKept: z.int().min(2).max(100_000),
  dataFolder: name,
  logLevel: z.enum(LOG_LEVELS),
  room: z.strictObject({ host: name, port: z.int().min(1).max(65_535) }),
  search: z.strictObject({ seconds: z.number().min(0.1).max(60), queue: z.int().min(1).max(1000) }),
}) satisfies z.ZodType<BotSettings>
