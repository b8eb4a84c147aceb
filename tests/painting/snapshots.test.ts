import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { cornerPicture } from '../../src/bot/pictures.ts'
import { flatPictures } from '../../src/bot/picturesOfFlats.ts'
import type { Picture } from '../../src/bot/reply.ts'
import { inches } from '../../src/core/measure/length.ts'
import { sceneOf } from '../../src/drawing/drawing.ts'
import { writeSvg } from '../../src/painting/svg.ts'
import {
  cutPictures,
  EXTREMES,
  INCHES,
  METRIC,
  planOf,
  planPictures,
  screwOf,
  USUAL,
} from '../drawing/corpus.ts'

const folder = fileURLToPath(new URL('../snapshots/', import.meta.url))

/** Ids in the order in which they come, and no number longer than three decimals. */
function settled(svg: string): string {
  const ids = [...new Set([...svg.matchAll(/\bid="([^"]+)"/gu)].map((match) => match[1] ?? ''))]
  const renumbered = ids.reduce(
    (text, id, index) =>
      text.replaceAll(`id="${id}"`, `id="id${index + 1}"`).replaceAll(`url(#${id})`, `url(#id${index + 1})`),
    svg,
  )
  return renumbered.replace(/-?\d+\.\d{4,}/gu, (number) => String(Number(Number(number).toFixed(3))))
}

const snapped: readonly (readonly [string, Picture])[] = [
  ...planPictures(planOf({ ...USUAL, braces: 'ends' }), INCHES).map(
    (picture, index) => [`usual-${index + 1}-${picture.name}`, picture] as const,
  ),
  ...planPictures(planOf({ ...USUAL, corner: 'cleated', clearance: inches(2) }), METRIC)
    .slice(0, 4)
    .map((picture) => [`cleated-${picture.name}`, picture] as const),
  ...EXTREMES.slice(5, 9).flatMap((spec, index) =>
    planPictures(planOf(spec), INCHES)
      .slice(0, 1)
      .map((picture) => [`extras-${index + 1}-${picture.name}`, picture] as const),
  ),
  ...EXTREMES.slice(5).flatMap((spec, index) =>
    flatPictures(planOf(spec), INCHES).map(
      (picture) => [`flat-${index + 1}-${picture.name}`, picture] as const,
    ),
  ),
  ...(['bracketed', 'cleated'] as const).flatMap((corner) =>
    [USUAL.strip, inches(3, 4)].map((strip) => {
      const plan = planOf({ ...USUAL, strip, corner })
      const name = `${corner}-corner-${strip === USUAL.strip ? 'thin' : 'thick'}`
      return [name, cornerPicture(plan, INCHES, screwOf(plan))] as const
    }),
  ),
  ...cutPictures(METRIC).map((picture, index) => [`cut-${index + 1}-${picture.name}`, picture] as const),
]

describe('pictures as they were last looked at', () => {
  it.each(snapped)('%s', (name, { scene }) => {
    const kept = `${folder}${name}.svg`
    const changed = `${folder}${name}.new.svg`
    const svg = settled(writeSvg(sceneOf(scene)))
    rmSync(changed, { force: true })
    const before = existsSync(kept) ? readFileSync(kept, 'utf8') : undefined
    // Look at the new one; if it is right, it takes the place of the old one.
    if (svg !== before) writeFileSync(changed, svg)
    expect(svg === before, `${name} has changed: look at tests/snapshots/${name}.new.svg`).toBe(true)
  })
})
