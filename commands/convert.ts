import { defineCommand } from '../src/bot/command.ts'
import { z } from 'zod'
import { choice, first, measure } from '../src/bot/option.ts'
import type { Figure, Reply } from '../src/bot/reply.ts'
import { type Length, toInches, toMillimetres } from '../src/core/measure/length.ts'
import { showLength, type Tape } from '../src/core/measure/show.ts'
import { showAngle } from '../src/core/measure/showAmounts.ts'
import { showDecimal } from '../src/core/measure/showDecimal.ts'

const TAPES = { '1/16': 16, '1/32': 32, '1/64': 64 } as const

export default defineCommand({
  name: 'convert',
  summary: 'Read any measure and say it in inches and in millimetres',
  examples: [
    'convert 23 7/8 in',
    "convert 2' 6 x 3' 4 1/2",
    'convert 606.4mm tape=1/32',
    'convert 2x6x8 to=feet',
  ],
  options: z.strictObject({
    value: first(measure('a length, a size, a board, a sheet or an angle', '23 7/8 in')),
    to: choice('only one of the two, or feet and inches', ['inch', 'metric', 'feet']).optional(),
    tape: choice('the finest mark on your tape', ['1/16', '1/32', '1/64']).optional(),
  }),
  run: ({ value, to, tape }, { settled }): Reply => {
    if (value.kind === 'angle') {
      const { degrees } = value
      return {
        answer: `${showAngle(degrees)} on the saw scale (${showAngle(90 - degrees)} between edge and cut)`,
        figures: { kind: 'angle', millimetres: null, inches: null, degrees },
      }
    }
    const marks: Tape = tape ? TAPES[tape] : settled.tape
    const inch = (length: Length) =>
      showLength(length, { units: 'inch', tape: marks, millimetreStep: 1, feet: to === 'feet' })
    const metric = (length: Length) => `${showDecimal(toMillimetres(length), 3)} mm`
    const sides = { inch: [inch], feet: [inch], metric: [metric] }[to ?? 'metric']
    const shown = (to ? sides : [inch, metric]).map((show) => value.lengths.map(show).join(' x '))
    return {
      answer: shown.join(' = '),
      figures: {
        kind: value.kind,
        millimetres: oneOrList(value.lengths.map(toMillimetres)),
        inches: oneOrList(value.lengths.map(toInches)),
        degrees: null,
      },
    }
  },
})

const oneOrList = (numbers: readonly number[]): Figure =>
  numbers.length === 1 ? (numbers[0] ?? null) : numbers
