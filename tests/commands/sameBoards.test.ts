import { afterAll, describe, expect, it } from 'vitest'
import type { Figure, Reply } from '../../src/bot/reply.ts'
import { blocksOf, openPrintingRoom, type PrintingRoom } from './printing.ts'

/** What each command names of the boards of the channel's plan; fences in mm by the label of the board, widest first. */
interface Named {
  /** Boards to take or to buy, by label. */
  readonly boards: Readonly<Record<string, number>>
  readonly fences: Readonly<Record<string, readonly number[]>>
}
type Figures = Readonly<Record<string, Figure>>

const PLANS = [
  '17in x 13in height=15in',
  '17in x 13in height=15in board=2x4',
  '40in x 30in height=30in braces=all',
  '29in x 46in height=18in grooves=5 lid=inset bottom=cleats',
  '430mm x 330mm height=380mm sheet=12mm strip=12mm width=38mm clearance=10mm',
  '20in round height=18in corner=halved bottom=feet',
]
const STOCKS = [
  [],
  ['stock add 2x4x8'],
  ['stock add 2x6x8 price=7', 'stock add 2x4x8 price=3'],
  ['stock add 2x4x8 count=1', 'stock add 2x8x10 price=11'],
  ['stock add 2x6x8', 'stock add 4ft x 8ft sheet=1/2 ply price=40'],
  ['stock add 2x4x8 count=2', 'stock add 2x6x8 count=1', 'stock add 2x6x10'],
]

const printing: PrintingRoom = await openPrintingRoom()
afterAll(() => printing.room.close())
const { room } = printing

const rows = (value: Figure | undefined) => value as unknown as readonly Figures[]
const byLabel = <Value>(pairs: readonly (readonly [string, Value])[]): Readonly<Record<string, Value>> =>
  Object.fromEntries(pairs.toSorted(([a], [b]) => (a < b ? -1 : 1)))

/** `Take 1 sheet (4x8) and 3 boards (2 of S1, 1 of S2)`. */
function boardsSaid(answer: string): Named['boards'] {
  const [, count = '', names = ''] = /(\d+) boards? \((.*?)\)/u.exec(answer) ?? []
  return byLabel(
    names.split(', ').map((each): [string, number] => {
      const [, many = count, label = each] = /^(\d+) of (.*)$/u.exec(each) ?? []
      return [label, Number(many)]
    }),
  )
}

const ofLayout = async (who: { channel: string }) => boardsSaid((await room.reply('layout', who)).answer)

/** What is needed by name: a row of the channel's stock is called by its label first. */
async function ofShopping(who: { channel: string }, labels: readonly string[]): Promise<Named['boards']> {
  const { figures } = await room.reply('shopping', who)
  return byLabel(
    rows(figures.items).flatMap(({ item, need }): [string, number][] => {
      const label = labels.find((each) => item === each || String(item).startsWith(`${each} `))
      return label === undefined ? [] : [[label, need as number]]
    }),
  )
}

/** The first tables of a cut order are the rips of one stock each. */
function ripsSaid({ tables = [], figures }: Reply): Named {
  const rips = rows(figures.steps).filter(({ kind, of }) => kind === 'rip' && of === 'board')
  let at = 0
  const found = tables.flatMap(({ title = '', rows: lines }): [string, readonly Figures[]][] => {
    const label = /^First rip (.*) into strips/u.exec(title)?.[1]
    if (label === undefined) return []
    at += lines.length
    return [[label, rips.slice(at - lines.length, at)]]
  })
  expect(at).toBe(rips.length)
  return {
    fences: byLabel(found.map(([label, each]) => [label, each.map(({ setting }) => setting as number)])),
    // The first strip comes off every board.
    boards: byLabel(found.map(([label, [first]]) => [label, first?.cuts as number])),
  }
}

async function ofSteps(who: { channel: string }): Promise<Named['fences']> {
  const { figures } = await room.reply('steps all', who)
  const rip = rows(figures.steps).find(({ name }) => name === 'rip strips')
  const found = new Map<string, number[]>()
  for (const { of, value } of rows(rip?.settings))
    found.set(String(of), [...(found.get(String(of)) ?? []), value as number])
  return byLabel([...found])
}

/** The marks of the fences in the steps of the handout, by board. */
async function ofHandout(who: { channel: string }) {
  await room.reply('handout', who)
  const { handout } = printing.last()
  const tasks = blocksOf(handout, 'Steps').flatMap((block) => (block.block === 'tasks' ? block.items : []))
  const rip = tasks.find(({ heading }) => heading.includes('rip strips'))
  const [words] = blocksOf(handout, 'Layouts')
  return {
    rip: rip?.settings ?? [],
    boards: boardsSaid(words?.block === 'words' ? words.text : ''),
  }
}

const cases = PLANS.flatMap((plan, at) =>
  STOCKS.map((stock, index) => ({ plan, stock, which: `${at}-${index}` })),
)

describe('the boards of a plan', () => {
  const kinds = new Set<string>()
  let most = 0
  afterAll(() => {
    // Otherwise nothing was there to differ.
    expect(kinds.size).toBeGreaterThan(3)
    expect(most).toBeGreaterThan(1)
  })

  it.each(cases)('$plan from $stock are the same in every command', async ({ plan, stock, which }) => {
    // Whoever asks first searches; each command is the first of some case.
    const order = cases.findIndex((each) => each.which === which) % 4
    const who = { channel: which }
    await room.reply(`project start ${plan}`, who)
    for (const line of stock) await room.reply(line, who)
    if (order === 1) await room.reply('steps', who)
    if (order === 2) await room.reply('strips', who)
    if (order === 3) await room.reply('cutorder', who)
    const boards = await ofLayout(who)
    const { boards: ripped, fences } = ripsSaid(await room.reply('cutorder', who))
    expect(Object.keys(boards).length).toBeGreaterThan(0)
    for (const kind of Object.keys(boards)) kinds.add(kind)
    most = Math.max(most, Object.keys(boards).length)
    expect(ripped).toEqual(boards)
    expect(await ofShopping(who, Object.keys(boards))).toEqual(boards)
    expect(await ofSteps(who)).toEqual(fences)
    const strips = (await room.reply('strips', who)).figures
    const label = String(strips.board)
    expect(strips.boards).toBe(boards[label])
    const safe = 50.8
    const settings = strips.settings as readonly number[]
    const wide = settings.filter((_, cut) => cut < (fences[label]?.length ?? 0))
    expect(wide).toEqual(fences[label]?.filter((fence) => fence >= safe))
    const printed = await ofHandout(who)
    expect(printed.boards).toEqual(boards)
    expect(printed.rip.map((line) => /\((.*?)(?:, push block)?\)$/u.exec(line)?.[1])).toEqual(
      Object.values(fences).length === 1
        ? (fences[label] ?? []).map(() => label)
        : expect.arrayContaining(Object.keys(fences)),
    )
  })
  it('are those of its own strips where the cut list of the channel is of something else', async () => {
    const who = { channel: 'own list' }
    await room.reply('project start 17in x 13in height=15in', who)
    const fences = await ofSteps(who)
    await room.reply('cutlist add 4 @ 30in 2x4', who)
    expect(await ofSteps(who)).toEqual(fences)
    expect(Object.keys(fences)).toEqual(['2x6 8 ft'])
  })

  it('are said to be a guess where no layout takes any', async () => {
    const who = { channel: 'too long' }
    await room.reply('project start 17in x 13in height=15in board=2x4', who)
    await room.reply('stock add 2x6 12in count=3', who)
    await room.refusal('layout', who)
    await room.reply('steps done 1-3', who)
    const { notes = [], tables = [] } = await room.reply('steps', who)
    expect(tables[0]?.rows.map(([, what]) => what)).toContain('rip fence')
    expect(notes.join()).toMatch(
      /"layout" takes no boards for these strips yet \(.*\); the fences are for 2x4/u,
    )
  })
})
