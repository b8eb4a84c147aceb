import type { Board, Region, StockTables } from './stock.ts'

/** The board of that name, aliases too, however it is spaced or capitalised; undefined where the region has none. */
export function findBoard(name: string, region: Region, stock: StockTables): Board | undefined {
  const wanted = plainName(name)
  return stock.boards.find((board) => board.region === region && plainName(board.name) === wanted)
}

/** The names on the rack in `region`, in the order of the config, aliases left out. */
export const boardNames = (region: Region, stock: StockTables): readonly string[] =>
  stock.boards
    .filter((board) => board.region === region && board.aliasOf === undefined)
    .map((board) => board.name)

/** Lower case, `×` as `x`, and no spaces round it or doubled. */
const plainName = (name: string): string =>
  name
    .trim()
    .toLowerCase()
    .replaceAll('×', 'x')
    .replace(/\s*x\s*(?=[\d.])/g, 'x')
    .replace(/\s+/g, ' ')
