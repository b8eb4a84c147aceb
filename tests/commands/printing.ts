import type { Block, Handout, HandoutTable } from '../../src/bot/handout/handout.ts'
import { createSearch } from '../../src/search/pool.ts'
import { openRoom, type Room } from '../room.ts'
import { type PageRead, readPdf } from '../printing/readPdf.ts'

/** A room whose printer leaves its pages readable, and the last document that was printed. */
export interface PrintingRoom {
  readonly room: Room
  /** Layouts that were searched for so far, whatever came of them. */
  readonly searches: () => number
  readonly last: () => { readonly handout: Handout; readonly pages: readonly PageRead[] }
}

/** Opens one with short searches. */
export async function openPrintingRoom(): Promise<PrintingRoom> {
  const { printHandout } = await import('../../src/printing/printHandout.ts')
  const pool = createSearch({ threads: 1, queue: 8 })
  let searches = 0
  const counted =
    <Asked extends readonly unknown[], Found>(look: (...asked: Asked) => Found) =>
    (...asked: Asked): Found => {
      searches += 1
      return look(...asked)
    }
  let printed: { handout: Handout; pages: readonly PageRead[] } | undefined
  const room = await openRoom({
    search: {
      ...pool,
      cutSheets: counted(pool.cutSheets),
      cutStrips: counted(pool.cutStrips),
      cutLengths: counted(pool.cutLengths),
    },
    settings: { search: { seconds: 0.5, queue: 8 }, commandSeconds: 60 },
    print: async (handout) => {
      const result = await printHandout(handout, false)
      printed = { handout, pages: readPdf(result.content) }
      return result
    },
  })
  return {
    room: {
      ...room,
      close: async () => {
        await room.close()
        await pool.close()
      },
    },
    searches: () => searches,
    last: () => {
      if (!printed) throw new Error('nothing was printed')
      return printed
    },
  }
}

/** All that is written in a document, in order. */
export const textsOf = (pages: readonly PageRead[]): readonly string[] =>
  pages.flatMap(({ runs }) => runs.map(({ text }) => text))

export const titlesOf = ({ sections }: Handout): readonly string[] => sections.map(({ title }) => title)

export const blocksOf = ({ sections }: Handout, title: string): readonly Block[] =>
  sections.find((section) => section.title === title)?.blocks ?? []

export const tablesOf = (handout: Handout, title: string): readonly HandoutTable[] =>
  blocksOf(handout, title).filter((block): block is HandoutTable => block.block === 'table')

/** The labels of the last section. */
export const labelNames = (handout: Handout): readonly string[] =>
  (handout.sections.at(-1)?.blocks ?? []).flatMap((block) =>
    block.block === 'labels' ? block.labels.map(({ name }) => name) : [],
  )
