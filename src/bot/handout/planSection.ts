import type { Caution } from '../../core/checks/caution.ts'
import type { Context } from '../context.ts'
import { cornerScrew } from '../cornerScrew.ts'
import { cutoutTables } from '../extrasReply.ts'
import { boxPicture, cornerPicture, facePicture } from '../pictures.ts'
import { bracePicture, groovesPicture } from '../picturesOfCuts.ts'
import { flatPictures } from '../picturesOfFlats.ts'
import type { PlanChoices } from '../planChoices.ts'
import { panelGrooves } from '../plannedGrooves.ts'
import type { Planned } from '../plannedSurround.ts'
import { planFacts, sawNotes, sizeNotes } from '../planReply.ts'
import type { Picture } from '../reply.ts'
import type { Block, Section } from './handout.ts'
import { points } from './points.ts'
import { printTable } from './printTable.ts'

/** What is built: the box with its letters, its sizes, and what was assumed. */
export function planSection({ plan, warnings, assumptions }: Planned, context: Context): Section {
  const { show, settled } = context
  return {
    title: 'What you build',
    blocks: [
      asBlock(boxPicture(plan, show, settled.kerf), 0.42),
      // Which board is ripped is the layout's to say, which may take another than the plan assumes.
      ...points(
        [...warnings, ...sizeNotes(plan, show), ...assumptions].map((note) =>
          note.replace(/^strips ripped from .*?, so/u, 'strips'),
        ),
      ),
    ],
  }
}

/** What belongs under the cut list of a plan: cutouts, what the tape does not show, braces and grooves. */
export function sawBlocks({ plan }: Planned, { show, settled }: Context): readonly Block[] {
  const notes = sawNotes(plan, show, settled.kerf).map((note) => note.replace(/; "grooves" gives .*$/u, ''))
  return [
    ...cutoutTables(plan, show).map((table) =>
      printTable(table, show, {
        headings: { '': 'Part', No: 'No.' },
        boxes: true,
        strong: ['', 'No', 'Size'],
      }),
    ),
    ...points(notes),
  ]
}

/** Each kind of panel from outside, a corner from above, braces and grooves as they are marked out. */
export function drawingSection({ plan }: Planned, context: Context): Section {
  const { show, settled } = context
  const faces = [...new Set(plan.faces.map(({ name }) => name))]
  const braces = plan.faces.flatMap((face) =>
    face.brace ? [bracePicture({ name: face.name, ...face.opening }, plan.spec.width, face.brace, show)] : [],
  )
  const grooves = panelGrooves(plan, { kerf: settled.kerf }).flatMap(({ face: name, laid }) => {
    const length = plan.faces.find((each) => each.name === name)?.panel
    return laid.status === 'laid' && length !== undefined
      ? [groovesPicture({ name, length, thickness: plan.spec.sheet }, settled.kerf, laid, show)]
      : []
  })
  return {
    title: 'Drawings',
    blocks: [
      ...faces.map((name) => facePicture(plan, name, show, settled.kerf)),
      cornerPicture(plan, show, cornerScrew(plan, context)),
      ...flatPictures(plan, show),
      ...alike(braces),
      ...grooves,
    ].map((picture) => asBlock(picture, 0.46)),
  }
}

/** Pictures that say the same are shown once. */
const alike = (pictures: readonly Picture[]): readonly Picture[] => [
  ...new Map(pictures.map((picture) => [picture.alt, picture])).values(),
]

const asBlock = ({ alt, scene }: Picture, tallest: number): Block => ({
  block: 'picture',
  alt,
  scene,
  tallest,
})

/** Every caution that the plan calls for. */
export const planCautions = ({ plan }: Planned, choices: PlanChoices, context: Context): readonly Caution[] =>
  context.cautions(planFacts(plan, choices))
