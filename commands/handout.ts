import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { counted } from '../src/bot/cutListReply.ts'
import { fewCautions } from '../src/bot/fewCautions.ts'
import { FILES, type Handout, PAPERS, type Paper } from '../src/bot/handout/handout.ts'
import { labelSection, labelsOf } from '../src/bot/handout/labels.ts'
import { paperOf, paperWords } from '../src/bot/handout/paperOf.ts'
import { partsFile } from '../src/bot/handout/partsFile.ts'
import { planHandout } from '../src/bot/handout/planHandout.ts'
import { printedFile } from '../src/bot/handout/printedFile.ts'
import { versionLine, versionOf } from '../src/bot/handout/version.ts'
import { partsToCut } from '../src/bot/layoutJob.ts'
import { choice, first } from '../src/bot/option.ts'
import type { Reply } from '../src/bot/reply.ts'
import { showKept } from '../src/bot/showKept.ts'

export default defineCommand({
  name: 'handout',
  summary: 'A PDF to print: cut list, layouts, cut order, steps, cautions, shopping, labels',
  examples: ['handout', 'handout paper=a4', 'handout labels', 'handout file=parts'],
  options: z.strictObject({
    file: first(choice('all of it, the labels alone, or the parts for a spreadsheet', FILES)).optional(),
    paper: choice('what the printer holds; by the region where it is left out', PAPERS).optional(),
  }),
  run: ({ file = 'all', paper }, context) => {
    const chosen = paper ?? paperOf(context.settled.region)
    if (file === 'parts') return partsReply(context)
    return file === 'labels' ? labelsReply(chosen, context) : wholeReply(chosen, context)
  },
})

async function wholeReply(paper: Paper, context: Context): Promise<Reply> {
  const { handout, version, list, labels, cautions, figures } = await planHandout(paper, context)
  const { file, pages } = await printedFile(handout, `handout-v${version.number}`, context)
  const said = fewCautions(cautions)
  return {
    answer: `${counted(pages, 'page')} to print on ${paperWords(paper)}: ${counted(labels.length, 'part')} in ${counted(list.parts.length, 'row')}, ${version.words}`,
    cautions: said.cautions,
    notes: [
      'print at full size (100 %); the last pages are labels to cut out',
      'when the plan changes, this is the old version: ask again',
    ],
    files: [file],
    buttons: [
      { label: 'Labels alone', line: `handout labels paper=${paper}` },
      { label: 'Parts as CSV', line: 'handout parts' },
      ...said.buttons,
    ],
    figures: {
      ...countsOf(list.parts),
      ...figures,
      paper,
      pages,
      version: version.number,
      labels: labels.length,
      cautions: cautions.map(({ id }) => id),
    },
  }
}

async function labelsReply(paper: Paper, context: Context): Promise<Reply> {
  const list = await partsToCut(context)
  const version = await versionOf(context)
  const line = versionLine(version.words, context.request.at)
  const labels = labelsOf(list.parts, showKept(context, list.units))
  const handout: Handout = {
    title: 'Labels',
    subtitle: line,
    foot: line,
    paper,
    at: context.request.at,
    sections: [labelSection(labels)],
  }
  const { file, pages } = await printedFile(handout, `labels-v${version.number}`, context)
  return {
    answer: `${counted(labels.length, 'label')} on ${counted(pages, 'page')} of ${paperWords(paper)}, ${version.words}`,
    files: [file],
    figures: {
      ...countsOf(list.parts),
      paper,
      pages,
      version: version.number,
      labels: labels.length,
    },
  }
}

async function partsReply(context: Context): Promise<Reply> {
  const list = await partsToCut(context)
  const version = await versionOf(context)
  const file = partsFile(list.parts, showKept(context, list.units), `parts-v${version.number}.csv`)
  const counts = countsOf(list.parts)
  return {
    answer: `${counted(counts.parts, 'part')} in ${counted(counts.rows, 'row')} for a spreadsheet, ${version.words}`,
    files: [file],
    figures: { ...counts, version: version.number },
  }
}

const countsOf = (parts: readonly { readonly count: number }[]) => ({
  parts: parts.reduce((sum, { count }) => sum + count, 0),
  rows: parts.length,
})
