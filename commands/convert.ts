import { defineCommand } from '../src/bot/command.ts'
import { z } from 'zod'
import { choice, first, measure } from '../src/bot/option.ts'
import type { Figure, Reply } from '../src/bot/reply.ts'
import { INCH, type Length, toInches, toMillimetres } from '../src/core/measure/length.ts'
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
    to: choice('only one of the two, or feet and inches', [
      'inch',
      'metric',
      'feet',
      'in',
      'mm',
      'cm',
      'ft',
    ]).optional(),
    tape: choice('the finest mark on your tape', ['1/16', '1/32', '1/64']).optional(),
  }),
  run: ({ value, to, tape }, { settled }): Reply => {
    if (value.kind === 'angle') {
      const { degrees } = value
      return {
        answer: angleWords(degrees),
        figures: { kind: 'angle', millimetres: null, inches: null, degrees },
      }
    }
    const inch = (length: Length) =>
      showLength(length, {
        units: 'inch',
        tape: tape ? TAPES[tape] : exactTape(length, settled.tape),
        millimetreStep: 1,
        feet: to === 'feet' || to === 'ft',
      })
    const metric = (length: Length) => `${showDecimal(toMillimetres(length), 3)} mm`
    const centimetres = (length: Length) => `${showDecimal(toMillimetres(length) / 10, 4)} cm`
    const one = { inch, in: inch, feet: inch, ft: inch, metric, mm: metric, cm: centimetres }
    const shown = (to ? [one[to]] : [inch, metric]).map((show) => value.lengths.map(show).join(' x '))
    return {
      answer: shown.join(' = '),
      notes:
        value.count === undefined || value.count === 1
          ? []
          : [`the size of one; you wrote ${value.count} of them`],
      figures: {
        kind: value.kind,
        millimetres: oneOrList(value.lengths.map(toMillimetres)),
        inches: oneOrList(value.lengths.map(toInches)),
        degrees: null,
      },
    }
  },
})

/** The saw's scale first; it starts at a square cut, and a cut past square is made from the other side. */
function angleWords(degrees: number): string {
  if (degrees === 0 || degrees === 90)
    return `${showAngle(degrees)} is square on ${degrees === 0 ? 'the saw scale' : 'the wood'}: set the saw to 0°`
  return degrees < 90
    ? `${showAngle(degrees)} on the saw scale (${showAngle(90 - degrees)} between edge and cut)`
    : `${showAngle(degrees - 90)} on the saw scale, for ${showAngle(degrees)} between edge and cut`
}

/** The finest mark that shows a length exactly, where one does: 15/32 in is never said as 1/2. */
const exactTape = (length: Length, tape: Tape): Tape =>
  ([tape, 32, 64] as const).find((marks) => marks >= tape && (length * marks) % INCH === 0) ?? tape

const oneOrList = (numbers: readonly number[]): Figure =>
  numbers.length === 1 ? (numbers[0] ?? null) : numbers
