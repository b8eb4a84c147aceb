import type { Length } from '../core/measure/length.ts'
import type { Cutout } from '../core/plan/part.ts'
import type { Part, Plan } from '../core/plan.ts'
import { linesOf, placesWords } from '../drawing/flatLines.ts'
import { pair } from './pair.ts'
import { pictureOf } from './picture.ts'
import { describe } from './pictures.ts'
import { purposeOf } from './planReply.ts'
import type { Picture } from './reply.ts'
import type { Show } from './show.ts'
import { stockSize } from './stockSize.ts'

/** The panels of a plan that lie. */
export type FlatName = 'lid' | 'bottom'

/** The lid and the bottom of a plan from above, as far as it has them. */
export const flatPictures = (plan: Plan, show: Show): readonly Picture[] =>
  (['lid', 'bottom'] as const).flatMap((name) => {
    const panel = plan.parts.find((part) => part.carriedBy === name && part.name.endsWith('panel'))
    return panel ? [flatPicture(plan, name, panel, show)] : []
  })

const flatPicture = (plan: Plan, name: FlatName, panel: Part, show: Show): Picture =>
  pictureOf(
    name,
    describe([
      `The ${name} from above, ${pair(panel.length, panel.width, show, purposeOf(panel))}`,
      ...(name === 'lid' ? lidSentences(plan, show) : bottomSentences(plan, show)),
      ...(panel.cutouts ?? []).map((cutout) => cutoutSentence(cutout, show)),
    ]),
    () => ({ draw: 'flat', asked: { plan, name }, numbers: show.settings }),
  )

function lidSentences({ lid, parts, spec }: Plan, show: Show): readonly string[] {
  const handle = parts.find(({ name }) => name === 'handle')
  const strip = stockSize(spec.strip, show)
  return [
    lid?.rim
      ? `a rim of strips ${strip} thick hangs ${stockSize(spec.width, show)} down under its edges, the long strips from end to end`
      : `it lies on ledgers ${strip} thick along the walls, which are dashed`,
    handle && lid
      ? `a handle ${show.length(handle.length, 'into')} long stands in the middle, ${show.length(half(lid.length, handle.length))} from either end and ${show.length(half(lid.width, handle.thickness))} from either edge`
      : '',
  ]
}

const half = (whole: Length, part: Length): Length => ((whole - part) / 2) as Length

function bottomSentences({ bottom, spec }: Plan, show: Show): readonly string[] {
  if (!bottom?.feet)
    return [`it lies on cleats ${stockSize(spec.strip, show)} thick along the walls, which are dashed`]
  const { starts } = bottom.feet
  const width = stockSize(spec.width, show)
  return [
    `${starts.length} feet ${width} wide run across under it; from the left end they begin at ${marks(starts, show)}`,
  ]
}

/** Places from an end, the unit once. */
const marks = (places: readonly Length[], show: Show): string =>
  `${placesWords(places, (length) => show.mark(length))} ${show.unit}`

function cutoutSentence(cutout: Cutout, show: Show): string {
  const { kind, size, round, at } = cutout
  const [first] = at
  if (!round)
    return `a ${kind} ${show.mark(size.along, 'cover', true)} x ${show.length(size.across, 'cover', true)} deep in the front edge${first ? `, ${show.length(first.along)} from the left end` : ''}`
  const { along, across } = linesOf(cutout)
  return `${at.length} ${at.length === 1 ? kind : `${kind}s`} ${show.length(size.along, 'cover', true)} across, their middles from the left end at ${marks(along, show)} and from the front edge at ${marks(across, show)}`
}
