import { z } from 'zod'
import type { Length } from '../core/measure/length.ts'
import type { BoardRead } from '../core/measure/readBoard.ts'
import type { SheetRead } from '../core/measure/readSheet.ts'
import type { SizeRead } from '../core/measure/readSize.ts'
import type { PercentRead } from '../core/measure/readPercent.ts'
import type { TemperatureRead } from '../core/measure/readTemperature.ts'
import type { WeightRead } from '../core/measure/readWeight.ts'
import type { Money } from '../core/measure/money.ts'
import type { AreaRead } from '../core/measure/readArea.ts'
import type { AngleRead, LengthsRead } from '../core/measure/reading.ts'
import type { Species } from '../core/moisture/species.ts'
import type { Adhesive } from '../core/quantities/glueProduct.ts'
import type { FinishProduct } from '../core/quantities/product.ts'

/** What of an option stands in its JSON schema beside the standard keywords. */
export interface OptionMeta {
  /** The name of the kind that reads it (kind.ts); without it the JSON type decides. */
  readonly kind?: string
  /** May stand first in the line without its name. */
  readonly first?: boolean
  /** Zero is a sensible value (a clearance of 0). */
  readonly zero?: boolean
  /** What to type, for help and for messages. */
  readonly example?: string
}

/** One option as every reader of it sees it: registration, typed line, usage and help. */
export interface OptionRow extends OptionMeta {
  readonly name: string
  readonly description: string
  readonly required: boolean
  readonly type?: 'string' | 'integer' | 'number' | 'boolean'
  readonly choices?: readonly string[]
  readonly default?: unknown
  readonly minimum?: number
  readonly maximum?: number
}

export type OptionSchema = z.ZodObject<z.ZodRawShape>

/** Every table that has been asked for: a schema never changes, and each line that is typed needs its own. */
const tables = new WeakMap<OptionSchema, readonly OptionRow[]>()

/** The options of a command in the order they are declared, taken from its schema alone. */
export function optionTable(schema: OptionSchema): readonly OptionRow[] {
  const known = tables.get(schema)
  if (known) return known
  const table = readTable(schema)
  tables.set(schema, table)
  return table
}

function readTable(schema: OptionSchema): readonly OptionRow[] {
  const json = z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' })
  const required = new Set(json.required ?? [])
  return Object.entries(json.properties ?? {}).map(([name, property]) => {
    const { description = '', enum: choices, ...rest } = property as Record<string, unknown>
    return {
      ...rest,
      name,
      description,
      required: required.has(name),
      ...(choices ? { choices } : {}),
    } as OptionRow
  })
}

const measured = <Value>(kind: string, example: string, description: string, meta: OptionMeta = {}) =>
  z.custom<Value>((value) => value !== undefined).meta({ kind, example, ...meta, description })

/** A length in whole nanometres. With `zero` set, `0` and `none` are read as no length. */
export const length = (description: string, example = '15in', meta: OptionMeta = {}) =>
  measured<Length>('length', example, description, meta)

/** A length per side; `1in total` is halved. */
export const clearance = (description: string, example = '1/2in') =>
  measured<Length>('clearance', example, description, { zero: true })

/** One to three lengths, or a diameter: `17in x 13in`, `17in round`. */
export const size = (description: string, example = '17in x 13in') =>
  measured<SizeRead>('size', example, description)

/** A board by name or by its measured section: `2x6`, `2x6x8`, `38x140`. */
export const board = (description: string, example = '2x6') =>
  measured<BoardRead>('board', example, description)

/** Sheet stock by label, or by its measured thickness: `1/2 ply`, `12mm`. */
export const sheet = (description: string, example = '1/2 ply') =>
  measured<SheetRead>('sheet', example, description)

/** Anything that can be measured. */
export const measure = (description: string, example = '23 7/8 in') =>
  measured<LengthsRead | AngleRead>('measure', example, description)

/** An area: `40 sq ft`, `3.5 m2`, or two sides. */
export const area = (description: string, example = '40 sq ft') =>
  measured<AreaRead>('area', example, description)

/** A finish by its trade name, from config/finishes.yaml. */
export const product = (description: string, example: string) =>
  measured<FinishProduct>('product', example, description)

/** A wood by its name in config/species.yaml. */
export const species = (description: string, example = 'hem-fir') =>
  measured<Species>('species', example, description)

/** A glue by its trade name, from config/adhesives.yaml. */
export const adhesive = (description: string, example = 'yellow glue') =>
  measured<Adhesive>('adhesive', example, description)

/** Degrees: `10C`, `50F`. */
export const temperature = (description: string, example = '68F') =>
  measured<TemperatureRead>('temperature', example, description)

/** Percent, 0 to 100: `65%`. */
export const percent = (description: string, example = '65%') =>
  measured<PercentRead>('percent', example, description)

/** A weight: `20kg`, `45lb`. */
export const weight = (description: string, example = '20kg') =>
  measured<WeightRead>('weight', example, description)

/** A whole number from `least` to `most`. */
export const count = (description: string, least: number, most: number) =>
  z.int().min(least).max(most).meta({ description })

/** One of a few words. */
export const choice = <const Words extends readonly [string, ...string[]]>(
  description: string,
  words: Words,
) => z.enum(words).meta({ description })

/** A price. */
export const money = (description: string, example = '42.50') =>
  measured<Money>('money', example, description)

/** Yes or no. */
export const yes = (description: string) => z.boolean().meta({ description, example: 'yes' })

/** Words taken as they stand. */
export const words = (description: string, example: string) => z.string().meta({ description, example })

/** The option that may stand first in the line without its name. */
export const first = <Schema extends z.ZodType>(schema: Schema): Schema =>
  schema.meta({ ...z.globalRegistry.get(schema), first: true })
