import { describe, expect, it } from 'vitest'
import type { Block, Handout } from '../../src/bot/handout/handout.ts'
import { boxPicture } from '../../src/bot/pictures.ts'
import { printHandout } from '../../src/printing/printHandout.ts'
import { INCHES, planOf, USUAL } from '../drawing/corpus.ts'
import { handoutOf } from './corpus.ts'
import { linesOf, type PageRead, readPdf } from './readPdf.ts'

const read = async (handout: Handout): Promise<readonly PageRead[]> =>
  readPdf((await printHandout(handout, false)).content)

const table = (rows: number): Block => ({
  block: 'table',
  title: 'From 15/32 in plywood',
  columns: [
    { heading: 'Cut' },
    { heading: 'Part', strong: true },
    { heading: 'Long (in)', right: true },
    { heading: 'Whose' },
  ],
  rows: Array.from({ length: rows }, (_, row) => [
    { boxes: 1 + (row % 6), ticked: row % 2 },
    `P${row + 1}`,
    '17 15/16',
    Array.from({ length: 1 + (row % 9) }, (_each, kit) => `K${kit + 1}-B`).join(', '),
  ]),
})

const picture: Block = {
  block: 'picture',
  alt: 'a box',
  scene: boxPicture(planOf(USUAL), INCHES, USUAL.kerf).scene,
}

const everything: readonly Block[] = [
  { block: 'words', text: 'Take 1 sheet and 1 board', strong: true },
  table(90),
  { block: 'points', items: ['first', `long ${'and longer '.repeat(40)}`] },
  picture,
  {
    block: 'tasks',
    items: Array.from({ length: 20 }, (_, index) => ({
      ticked: index < 2,
      heading: `${index + 1}. crosscut side rail (D)`,
      settings: ['stop: 19 15/16 in'],
      words: 'square one end, then every one against the same stop',
    })),
  },
  {
    block: 'labels',
    labels: Array.from({ length: 50 }, (_, index) => ({
      name: `K07-B${index + 1}`,
      size: '17 3/4 x 12 in',
      lines: ['side panel', 'Dagmar von Hohenlohe-Langenburg und zu Schillingsfürst'],
    })),
  },
]

/** Half an inch: less is lost at the edge of some printers. */
const RIM = 36

describe('a printed document', () => {
  it('is on A4 and on Letter as the standards have them, in points', async () => {
    // ISO 216: 210 x 297 mm. ANSI/ASME Y14.1: 8 1/2 x 11 in. A point is 1/72 in.
    const sizes = { a4: [595.28, 841.89], letter: [612, 792] } as const
    for (const paper of ['a4', 'letter'] as const) {
      const pages = await read(handoutOf(everything, { paper }))
      expect(pages.length).toBeGreaterThan(5)
      for (const { width, height } of pages) {
        expect(width).toBeCloseTo(sizes[paper][0], 1)
        expect(height).toBeCloseTo(sizes[paper][1], 1)
      }
    }
  })

  it('keeps every letter off the rim of the page, and big enough to read at a bench', async () => {
    for (const paper of ['a4', 'letter'] as const)
      for (const { width, height, runs } of await read(handoutOf(everything, { paper }))) {
        expect(runs.length).toBeGreaterThan(2)
        for (const run of runs) {
          expect(run.x, run.text).toBeGreaterThanOrEqual(RIM)
          expect(run.right, run.text).toBeLessThanOrEqual(width - RIM + 0.01)
          expect(run.y - run.size * 0.76, run.text).toBeGreaterThanOrEqual(RIM)
          expect(run.y, run.text).toBeLessThanOrEqual(height - RIM)
        }
      }
    const [first] = await read(handoutOf([table(3)]))
    const body = first?.runs.filter(({ text }) => text === '17 15/16') ?? []
    expect(body.map(({ size }) => size)).toEqual([11, 11, 11])
  })

  it('numbers every page of all', async () => {
    const pages = await read(handoutOf(everything))
    const { pages: counted } = await printHandout(handoutOf(everything))
    expect(counted).toBe(pages.length)
    pages.forEach((page, index) => {
      expect(linesOf(page).at(-1)).toBe(`Plan version 12, 6 March 2026  ${index + 1} of ${pages.length}`)
    })
  })

  it('says every row of a table once, and its head on each page', async () => {
    const pages = await read(handoutOf([table(90)]))
    const labels = pages
      .flatMap(({ runs }) => runs.map(({ text }) => text))
      .filter((text) => /^P\d+$/u.test(text))
    expect(labels).toEqual(Array.from({ length: 90 }, (_, row) => `P${row + 1}`))
    expect(pages.length).toBeGreaterThan(1)
    for (const page of pages) expect(linesOf(page)).toContain('Cut  Part  Long (in)  Whose')
  })

  it('has no heading at the foot of a page, wherever the page ends', async () => {
    for (let lines = 24; lines < 38; lines += 1) {
      const filling: Block = {
        block: 'points',
        items: Array.from({ length: lines }, (_, line) => `line ${line}`),
      }
      const pages = await read(
        handoutOf([filling], {
          sections: [
            { title: 'First', blocks: [filling] },
            { title: 'Second', blocks: [table(2)] },
          ],
        }),
      )
      const page = pages.find((each) => linesOf(each).includes('Second'))
      expect(page && linesOf(page), `${lines} lines`).toEqual(
        expect.arrayContaining([
          'From 15/32 in plywood',
          'Cut  Part  Long (in)  Whose',
          expect.stringMatching(/^P1 /u),
        ]),
      )
    }
  })

  it('writes the letters of a picture, and names in the letters of Europe; what it lacks is a question mark', async () => {
    const [page] = await read(handoutOf([picture, { block: 'words', text: 'José Łukasz Ζωή 山田 🌳' }]))
    const texts = page?.runs.map(({ text }) => text) ?? []
    expect(texts).toEqual(expect.arrayContaining(['A', 'B', 'The box, pulled apart']))
    expect(texts.join(' ')).toContain('José Łukasz Ζωή ?? ?')
  })

  it('is the same file each time, and small', async () => {
    const [one, other] = [
      await printHandout(handoutOf(everything)),
      await printHandout(handoutOf(everything)),
    ]
    expect(Buffer.from(one.content).equals(Buffer.from(other.content))).toBe(true)
    expect(Buffer.from(one.content).subarray(0, 5).toString('latin1')).toBe('%PDF-')
    expect(one.content.length).toBeLessThan(120_000)
  })

  it('is black and grey alone', async () => {
    const { content } = await printHandout(handoutOf(everything), false)
    const colours = [
      ...Buffer.from(content)
        .toString('latin1')
        .matchAll(/^([\d.]+) ([\d.]+) ([\d.]+) (?:scn|SCN)$/gmu),
    ]
    expect(colours.length).toBeGreaterThan(100)
    for (const [, red, green, blue] of colours) expect([green, blue]).toEqual([red, red])
  })
})

describe('names in other scripts', () => {
  const named = (name: string) =>
    handoutOf([{ block: 'labels', labels: [{ name, size: '10 x 5 in', lines: ['side panel'] }] }])

  it('are told of where the faces lack their letters, and only there', async () => {
    const words = async (name: string) => (await read(named(name))).flatMap(linesOf).join(' ')
    expect(await words('\u9752 1')).toContain('? stands for a letter that this printout has no sign for')
    expect(await words('\u9752 1')).toContain('? 1')
    for (const name of ['B1', 'Zo\u00eb', 'Zoe\u0308', '\u0416\u0435\u043d\u044f'])
      expect(await words(name)).not.toContain('?')
  })
})

describe('lines with a dot', () => {
  it('never leave the last one alone at the top of a page', async () => {
    for (let before = 30; before < 60; before += 1) {
      const points: Block = {
        block: 'points',
        items: Array.from({ length: before }, (_, at) => `line ${at}`),
      }
      const pages = await read(handoutOf([points]))
      const onLast = linesOf(pages.at(-1) as PageRead).filter((line) => line.startsWith('line '))
      expect(pages.length === 1 || onLast.length > 1).toBe(true)
    }
  })
})
