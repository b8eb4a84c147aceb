import { z } from 'zod'
import { defineCommand, type Idle } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { sheetDensity, woodDensityOf } from '../src/bot/density.ts'
import { liftingNote } from '../src/bot/liftingNotes.ts'
import { board, choice, count, first, length, percent, sheet, size, species } from '../src/bot/option.ts'
import { overlay } from '../src/bot/planChoices.ts'
import { choicesFrom } from '../src/bot/planOptions.ts'
import { objectFacts, planned } from '../src/bot/plannedSurround.ts'
import { Refusal } from '../src/bot/refusal.ts'
import type { Cell, Reply } from '../src/bot/reply.ts'
import { plantedBox, plantedFigures, plantedNotes, SOILS, soilIn } from '../src/bot/soil.ts'
import { type Length, toMillimetres } from '../src/core/measure/length.ts'
import { showWeight } from '../src/core/measure/showWeight.ts'
import { blockWeight, type CarriedWeight, weighPlan } from '../src/core/quantities/weight.ts'

const options = z.strictObject({
  size: first(size('sides of one panel or sheet', '4ft x 8ft')).optional(),
  sheet: sheet('what the panels are').optional(),
  board: board('a board in place of a panel', '2x4x8').optional(),
  length: length('length of the board', '8ft').optional(),
  count: count('how many pieces', 1, 10_000).optional(),
  wood: species('what boards and strips are').optional(),
  moisture: percent('of the wood', '12%').optional(),
  soil: choice('what the planter inside is filled with', SOILS).optional(),
  depth: length('how deep the soil is', '12in').optional(),
})
type Asked = z.output<typeof options>

type Weighed = 'board' | 'panel' | 'project'

const weighedBy = ({ board, size: sides }: Asked): Weighed => {
  if (board) return 'board'
  return sides ? 'panel' : 'project'
}

/** Options that go for nothing where something else is weighed. */
const only = (by: readonly Weighed[], what: string, how: string, of: readonly (keyof Asked)[]) =>
  of.map(
    (option): Idle<Asked> => ({ option, what, how, isUsed: ({ input }) => by.includes(weighedBy(input)) }),
  )

export default defineCommand({
  name: 'weight',
  summary: 'What parts, panels and the whole weigh, who can lift them, and what a wet planter loads',
  examples: [
    'weight 4ft x 8ft sheet=3/4 ply',
    'weight 1220mm x 2440mm sheet=18mm birch ply count=3',
    'weight board=2x4x8 count=24 wood=SPF',
  ],
  options,
  idle: [
    ...only(['panel'], 'a panel', 'leave board= out', ['size']),
    ...only(['panel', 'project'], 'panels', 'leave board= out', ['sheet']),
    ...only(['board'], 'a board', 'board=2x4', ['length']),
    ...only(['board', 'panel'], 'a panel or a board', 'write one, such as 4ft x 8ft', ['count']),
    ...only(['board', 'project'], 'boards and strips', 'board=2x4x8', ['wood', 'moisture']),
    ...only(['project'], 'the box of a project', 'leave panel and board out', ['soil']),
    {
      option: 'depth',
      what: 'soil',
      how: 'soil=garden or light',
      isUsed: ({ input, context: { project } }) =>
        weighedBy(input) === 'project' && soilIn(input.soil, project?.choices.objectWords) !== 'none',
    },
  ],
  run: (input, context) => {
    if (input.board) return weighBoards(input, input.board, context)
    if (input.size) return weighPanels(input, input.size.lengths, context)
    if (context.project) return weighProject(input, context)
    throw new Refusal(
      'invalid',
      'what is weighed? Write a panel such as 4ft x 8ft sheet=3/4 ply, or board=2x4x8, or start a project in this channel',
    )
  },
})

function weighPanels(input: Asked, [long, wide, third]: readonly Length[], context: Context): Reply {
  if (long === undefined || wide === undefined || third !== undefined || input.size?.round)
    throw new Refusal('invalid', 'a panel has two sides; write 4ft x 8ft, and its thickness as sheet=3/4 ply')
  const plan = context.project && planned(context.project.choices, context).plan
  const thickness = input.sheet?.thickness ?? plan?.spec.sheet
  if (thickness === undefined)
    throw new Refusal('invalid', 'how thick is the panel? Add sheet=3/4 ply or sheet=18mm')
  const known = input.sheet ?? context.project?.choices.sheet
  const { density, notes } = sheetDensity(known, thickness, context)
  const each = blockWeight(long, wide, thickness, density)
  return weighed(each, input.count ?? 1, notes, context)
}

function weighBoards(
  input: Asked,
  { thickness, width, length: own }: NonNullable<Asked['board']>,
  context: Context,
): Reply {
  const long = input.length ?? own
  if (long === undefined)
    throw new Refusal('invalid', 'how long is the board? Add length=8ft, or write it as 2x4x8')
  const { density, notes } = woodDensityOf(input.wood, input.moisture?.percent, context)
  return weighed(
    blockWeight(long, width, thickness, density),
    input.count ?? input.board?.count ?? 1,
    notes,
    context,
  )
}

function weighed(each: number, pieces: number, notes: readonly string[], context: Context): Reply {
  const { show } = context
  const total = each * pieces
  const one = showWeight(each, show.units)
  return {
    answer:
      pieces === 1
        ? `${one} in one piece`
        : `${showWeight(total, show.units)} in all: ${pieces} pieces of ${one}`,
    cautions: context.cautions({ weight: each / 1000 }),
    notes: [liftingNote(each, pieces === 1 ? 'in one piece' : 'one piece', show), ...notes],
    figures: { each, total },
  }
}

/** `ends 4 lb each`, `lid 3 lb`. */
const carriedWords = ({ name, count, each }: CarriedWeight, say: (grams: number) => string): string =>
  count === 1 ? `${name} ${say(each)}` : `${name}s ${say(each)} each`

function weighProject(input: Asked, context: Context): Reply {
  const { show, project } = context
  const choices = overlay(project?.choices ?? {}, choicesFrom({ sheet: input.sheet }))
  const { plan } = planned(choices, context)
  const sheets = sheetDensity(choices.sheet, plan.spec.sheet, context)
  const strips = woodDensityOf(input.wood, input.moisture?.percent, context)
  const { parts, end, side, carried, total } = weighPlan(plan, {
    sheet: sheets.density,
    strip: strips.density,
  })
  const soil = soilIn(input.soil, choices.objectWords)
  if (input.depth !== undefined && input.depth > plan.panelHeight)
    throw new Refusal(
      'invalid',
      `soil ${show.length(input.depth, 'mark')} deep is more than the box is high: give depth=${show.mark(plan.panelHeight, 'into')}${show.unit} or less, or a taller box`,
    )
  const planted = plantedBox(plan, total, soil, input.depth ?? plan.panelHeight)
  const say = (grams: number) => showWeight(grams, show.units)
  return {
    answer: `${say(total)} in all, standing or flat: ${carried.map((each) => carriedWords(each, say)).join(', ')}${planted ? `; filled and soaked up to ${say(planted.total)}` : ''}`,
    cautions: context.cautions({
      weight: total / 1000,
      height: toMillimetres(plan.panelHeight),
      base: toMillimetres(Math.min(plan.outside.length, plan.outside.width) as Length),
      ...objectFacts(choices),
    }),
    tables: [
      {
        title: 'Weight of each part',
        columns: ['', 'No', 'Each', 'For'],
        rows: parts.map(({ label, count: pieces, each, name }): Cell[] => [label, pieces, say(each), name]),
      },
    ],
    notes: [
      ...(planted && soil !== 'none' ? plantedNotes(planted, soil, show) : []),
      ...(planted && input.depth === undefined
        ? [`filled to ${show.length(plan.panelHeight)} (depth=; soil=light, or none)`]
        : []),
      liftingNote(
        total,
        `the whole, ${show.mark(plan.flatStack, 'cover')} ${show.unit} thick when flat`,
        show,
      ),
      ...sheets.notes,
      ...strips.notes,
      'paint, glue and grooves are left out',
    ],
    figures: {
      total,
      end,
      side,
      ...Object.fromEntries(
        carried.filter(({ name }) => name !== 'end' && name !== 'side').map(({ name, each }) => [name, each]),
      ),
      parts: parts.map((part) => ({ ...part })),
      flatStack: toMillimetres(plan.flatStack),
      ...plantedFigures(planted),
    },
  }
}
