import type { Length } from '../core/measure/length.ts'
import type { Face } from '../core/panelling/face.ts'
import type { Part, Plan } from '../core/plan.ts'
import type { Cutout } from '../core/plan/part.ts'
import { type CornerScrew, isScrewed } from '../drawing/cornerFixings.ts'
import { pair } from './pair.ts'
import { pictureOf } from './picture.ts'
import { panelGrooves } from './plannedGrooves.ts'
import { purposeOf } from './planReply.ts'
import type { Picture } from './reply.ts'
import type { Show } from './show.ts'
import { stockSize } from './stockSize.ts'

/** Longer descriptions are cut by chat services. */
const LONGEST_ALT = 900

/** Sentences as one description that every chat service takes whole. */
export function describe(sentences: readonly string[]): string {
  const whole = `${sentences
    .filter((sentence) => sentence !== '')
    .map((sentence) => `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}`)
    .join('. ')}.`
  return whole.length <= LONGEST_ALT ? whole : `${whole.slice(0, LONGEST_ALT - 4).trimEnd()} ...`
}

/** Where the grooves of each face go, as far as they can be sawn with this blade. */
const groovesOf = (plan: Plan, kerf: Length): Partial<Record<Face['name'], readonly Length[]>> =>
  Object.fromEntries(
    panelGrooves(plan, { kerf }).flatMap(({ face, laid }) =>
      laid.status === 'laid' ? [[face, laid.centres]] : [],
    ),
  )

/** `2 end panels`, `1 handle`, `3 feet`. */
const counted = ({ name, count }: Part): string =>
  `${count} ${count === 1 ? name : name === 'foot' ? 'feet' : `${name}s`}`

/** The whole box pulled apart, with its parts by letter. */
export function boxPicture(plan: Plan, show: Show, kerf: Length): Picture {
  const parts = plan.parts.map(
    (part) => `${part.label}: ${counted(part)}, ${show.length(part.length, purposeOf(part))} long`,
  )
  return pictureOf(
    'box',
    describe([
      `The box pulled apart, from the front right and above: inside ${pair(plan.inside.length, plan.inside.width, show, 'into')}, outside ${pair(plan.outside.length, plan.outside.width, show, 'cover')}, ${show.length(plan.panelHeight, 'into')} high`,
      [...parts, ...plan.hardware.map(({ name, count }) => `${count} ${name}s`)].join('; '),
    ]),
    () => ({ draw: 'box', asked: { plan, grooves: groovesOf(plan, kerf) }, numbers: show.settings }),
  )
}

/** `2 slots 1/2 x 7 1/2 in from the top`, `a cord notch 2 x 1 in, in one of the two`. */
function cutoutWords({ kind, size, at, parts }: Cutout, count: number, show: Show): string {
  const which = parts < count ? ', in one of the two' : ''
  const deep = show.length(size.across, 'cover', true)
  if (kind !== 'slot') return `a ${kind} ${show.mark(size.along, 'cover', true)} x ${deep}${which}`
  const from = at.some((place) => place.across > 0) ? 'top' : 'bottom'
  return `${at.length === 1 ? 'a slot' : `${at.length} slots`} ${stockSize(size.along, show)} wide, ${deep} deep from the ${from}`
}

/** One kind of panel from outside. */
export function facePicture(plan: Plan, name: Face['name'], show: Show, kerf: Length): Picture {
  const face = plan.faces.find((each) => each?.name === name) ?? plan.faces[1]
  const grooves = groovesOf(plan, kerf)[face.name]
  return pictureOf(
    `${face.name}-panel`,
    describe([
      `${face.name === 'end' ? 'An end' : `A ${face.name}`} panel from outside, ${pair(face.shows, face.height, show, 'into')} over its frame`,
      `frame strips ${stockSize(plan.spec.width, show)} wide leave an opening of ${pair(face.opening.width, face.opening.height, show)}`,
      face.brace ? `a brace rises from the lower left at ${show.angle(face.brace.slope)} from level` : '',
      grooves ? `${grooves.length} grooves` : '',
      ...(plan.parts.find((part) => part.name === `${face.name} panel`)?.cutouts ?? []).map((cutout) =>
        cutoutWords(cutout, face.count, show),
      ),
    ]),
    () => ({ draw: 'face', asked: { plan, name: face.name, grooves }, numbers: show.settings }),
  )
}

/** One corner from above, with the screws that hold it where some do. */
export function cornerPicture(plan: Plan, show: Show, screw: CornerScrew | undefined): Picture {
  const { sheet, strip, width, clearance, corner } = plan.spec
  const cut = corner === 'bracketed' ? 'at a bracket' : 'half way up'
  return pictureOf(
    'corner',
    describe([
      `A ${corner} corner from above, cut ${cut}: sheet ${stockSize(sheet, show)} thick, strips ${stockSize(strip, show)} thick and ${stockSize(width, show)} wide`,
      plan.lip > 0
        ? `the corner stile reaches ${show.length(plan.lip, 'mark', true)} over the side panel, which is the lip`
        : '',
      ...fixingSentences(plan, show, screw),
      clearance > 0 ? `${show.length(clearance)} of room round the object` : '',
    ]),
    () => ({ draw: 'corner', asked: { plan, screw }, numbers: show.settings }),
  )
}

/** What stands in a corner that screws hold, and the screws. */
function fixingSentences(plan: Plan, show: Show, screw: CornerScrew | undefined): readonly string[] {
  if (!isScrewed(plan)) return []
  const { corner, width } = plan.spec
  const [block] = plan.parts.filter(({ name }) => name.endsWith('block')).reverse()
  const stands =
    corner === 'bracketed'
      ? `a steel bracket with legs ${stockSize(width, show)} long stands inside the corner, one near each rail`
      : `a corner block ${block ? `${show.length(block.length, 'into')} long ` : ''}stands in the corner against both panels`
  const each = corner === 'bracketed' ? 'each leg' : 'the block'
  return [
    stands,
    screw
      ? `${screw.count} ${screw.count === 1 ? 'screw' : 'screws'} ${screw.name} x ${show.mark(screw.length, 'mark', true)} ${show.unit} in ${each}, driven ${corner === 'bracketed' ? 'from inside' : `through the ${screw.through}`}`
      : 'no screw that is sold holds here; "fasteners" has what would',
  ]
}
