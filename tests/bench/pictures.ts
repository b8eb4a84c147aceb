import { cpuUsage, stdout } from 'node:process'
import { parseArgs } from 'node:util'
import type { Picture } from '../../src/bot/reply.ts'
import { sceneOf } from '../../src/drawing/drawing.ts'
import { paint } from '../../src/painting/paint.ts'
import { cutPictures, EXTREMES, INCHES, planOf, planPictures, USUAL } from '../drawing/corpus.ts'
import type { Bench } from './bench.ts'
import { layTable, median } from './table.ts'

/** A picture that is larger, or takes longer, is too much for a phone and its reader. */
const MOST_BYTES = 200_000
const MOST_MILLISECONDS = 100

/** Middle of several times of one thing: milliseconds of a processor, whatever else the machine does. */
function timed(times: number, run: () => unknown): number {
  const taken = Array.from({ length: times }, () => {
    const from = cpuUsage()
    run()
    const { user, system } = cpuUsage(from)
    return (user + system) / 1000
  })
  return median(taken)
}

interface Measured {
  readonly name: string
  readonly painting: number
  readonly bytes: number
}

function measure(pictures: readonly Picture[], times: number): readonly Measured[] {
  return pictures.map(({ name, scene: drawing }) => {
    const scene = sceneOf(drawing)
    const png = paint(scene)
    return { name, painting: timed(times, () => paint(scene)), bytes: png.length }
  })
}

/** Every picture drawn and painted: how long it takes, and how large it is. Sizes over the limit are wrong answers. */
export const bench: Bench = {
  summary: 'drawing and painting, both off the thread that answers, and the size of the file',
  run: async (words) => {
    const { values } = parseArgs({ args: [...words], options: { times: { type: 'string', default: '7' } } })
    const times = Number(values.times)
    const plans = [USUAL, ...EXTREMES].map(planOf)
    const drawing = timed(times, () => planPictures(planOf(USUAL), INCHES).map(({ scene }) => sceneOf(scene)))
    const pictures = [...plans.flatMap((plan) => planPictures(plan, INCHES)), ...cutPictures(INCHES)]
    const measured = measure(pictures, times)
    const names = [...new Set(measured.map(({ name }) => name))]
    const rows = names.map((name) => {
      const own = measured.filter((each) => each.name === name)
      return [
        name,
        String(own.length),
        `${median(own.map(({ painting }) => painting)).toFixed(0)} ms`,
        `${Math.max(...own.map(({ painting }) => painting)).toFixed(0)} ms`,
        `${Math.round(Math.max(...own.map(({ bytes }) => bytes)) / 1000)} kB`,
      ]
    })
    stdout.write(
      `${layTable(['picture', 'of', 'painted in', 'at most (aim 100 ms)', 'largest (aim 200 kB)'], rows)}\n`,
    )
    const slow = measured.filter(({ painting }) => painting > MOST_MILLISECONDS).length
    stdout.write(
      `all ${planPictures(planOf(USUAL), INCHES).length} of one plan drawn in ${drawing.toFixed(1)} ms\n`,
    )
    stdout.write(`${slow} over ${MOST_MILLISECONDS} ms\n`)
    return measured.filter(({ bytes }) => bytes > MOST_BYTES).length
  },
}
