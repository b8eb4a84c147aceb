import { z } from 'zod'
import { defineAction } from '../command.ts'
import type { Context } from '../context.ts'
import { counted } from '../cutListReply.ts'
import { fewCautions } from '../fewCautions.ts'
import { frontOf, groupHandout } from '../handout/groupHandout.ts'
import { FILES, type Handout, PAPERS, type Paper } from '../handout/handout.ts'
import { kitLabels } from '../handout/kitSections.ts'
import { labelSection } from '../handout/labels.ts'
import { paperOf, paperWords } from '../handout/paperOf.ts'
import { printedFile } from '../handout/printedFile.ts'
import { choice, first } from '../option.ts'
import type { Reply } from '../reply.ts'
import { showKept } from '../showKept.ts'
import { type GroupParts, groupParts, pooledStock } from './cutting.ts'
import { type Group, groupOf, memberOf } from './group.ts'
import { groupFigures, kitCautions, namesOf } from './groupReply.ts'
import { problemLines } from './kits.ts'
import { groupList } from './list.ts'

export const handout = defineAction({
  // Few words: Discord takes 8000 characters of a whole command, and this is one verb of many.
  summary: 'A PDF to print',
  options: z.strictObject({
    file: first(choice('what of it', FILES)).optional(),
    paper: choice('what to print on', PAPERS).optional(),
  }),
  // Sixty kits are some 250 pages with as many drawings: seconds on an idle machine, and longer on a busy one.
  patience: 6,
  run: async ({ file = 'all', paper }, context) => {
    const parts = await groupParts(context)
    if (!(await context.isOrganiser())) memberOf(parts.group, context.request.user)
    const asked = {
      parts,
      paper: paper ?? paperOf(context.settled.region),
      ...(await versionOf(parts, context)),
    }
    if (file === 'parts') return partsReply(asked, context)
    return file === 'labels' ? labelsReply(asked, context) : wholeReply(asked, context)
  },
})

interface Asked {
  readonly parts: GroupParts
  readonly paper: Paper
  readonly number: number
  readonly version: string
}

/** The version of the list that is posted; until it is, how often the group was changed. */
async function versionOf(
  { group }: GroupParts,
  context: Context,
): Promise<Pick<Asked, 'number' | 'version'>> {
  if (group.posted) {
    const { version } = group.posted
    return { number: version, version: `list version ${version}${group.locked ? ', locked' : ''}` }
  }
  const [last] = await groupOf(context).history(1)
  const number = last?.revision ?? 0
  return { number, version: `draft ${number}, not posted` }
}

async function wholeReply({ parts, paper, number, version }: Asked, context: Context): Promise<Reply> {
  const { group, worked, merged } = parts
  const stock = await pooledStock(group, context)
  const names = await namesOf(usersOf(group), context)
  const made = await groupHandout({ parts, stock, names, version, paper }, context)
  const { file, pages } = await printedFile(made.handout, `group-handout-v${number}`, context)
  const figures = groupFigures(group, worked, merged)
  const said = fewCautions(kitCautions(worked, context))
  return {
    answer: `${counted(pages, 'page')} to print on ${paperWords(paper)}: ${counted(Number(figures.parts), 'part')} for ${counted(Number(figures.kits), 'kit')}, ${version}`,
    cautions: said.cautions,
    notes: [
      ...problemLines(worked),
      'print at full size (100 %); a page for each kit, and at the end labels to cut out',
    ],
    files: [file],
    buttons: [
      { label: 'Labels alone', line: `group handout labels paper=${paper}` },
      { label: 'Parts as CSV', line: 'group handout parts' },
      ...said.buttons,
    ],
    figures: {
      ...figures,
      paper,
      pages,
      printed: number,
      rows: merged.length,
      labels: made.labels.length,
      settings: made.settings,
    },
    audience: 'channel',
  }
}

async function labelsReply({ parts, paper, number, version }: Asked, context: Context): Promise<Reply> {
  const { group, worked, merged } = parts
  const names = await namesOf(usersOf(group), context)
  const labels = kitLabels({ group, worked, merged, names, show: showKept(context, group.units) })
  const printed: Handout = {
    ...frontOf(group, version, context),
    paper,
    at: context.request.at,
    sections: [labelSection(labels)],
  }
  const { file, pages } = await printedFile(printed, `group-labels-v${number}`, context)
  return {
    answer: `${counted(labels.length, 'label')} on ${counted(pages, 'page')} of ${paperWords(paper)}, ${version}`,
    notes: problemLines(worked),
    files: [file],
    figures: {
      ...groupFigures(group, worked, merged),
      paper,
      pages,
      printed: number,
      labels: labels.length,
    },
    audience: 'channel',
  }
}

function partsReply({ parts: { group, worked, merged }, number, version }: Asked, context: Context): Reply {
  const { files = [] } = groupList(group, worked, merged, context)
  const figures = groupFigures(group, worked, merged)
  return {
    answer: `${counted(Number(figures.parts), 'part')} in ${counted(merged.length, 'row')} for a spreadsheet, ${version}`,
    notes: problemLines(worked),
    files: files.map((file) => ({ ...file, name: `group-parts-v${number}.csv` })),
    figures: { ...figures, printed: number, rows: merged.length },
    audience: 'channel',
  }
}

/** Everybody whose name is printed. */
const usersOf = ({ members, needs, brought }: Group): readonly string[] =>
  [...members, ...needs.flatMap(({ claims }) => claims), ...brought].map(({ user }) => user)
