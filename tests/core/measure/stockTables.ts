import { inches, type Length, millimetres } from '../../../src/core/measure/length.ts'
import type { ReadingSettings, UnitSystem } from '../../../src/core/measure/reading.ts'
import type { Board, Region, SheetLabel, SheetSize, StockTables } from '../../../src/core/stock/stock.ts'

/** US softwood, nominal name to dressed inches (Hartford Lumber table of dressed dry sizes, agrees with PS 20). */
const US: Readonly<Record<string, readonly [number, number]>> = {
  '1x2': [0.75, 1.5],
  '1x3': [0.75, 2.5],
  '1x4': [0.75, 3.5],
  '1x6': [0.75, 5.5],
  '1x8': [0.75, 7.25],
  '1x10': [0.75, 9.25],
  '1x12': [0.75, 11.25],
  '5/4x4': [1, 3.5],
  '5/4x6': [1, 5.5],
  '2x2': [1.5, 1.5],
  '2x3': [1.5, 2.5],
  '2x4': [1.5, 3.5],
  '2x6': [1.5, 5.5],
  '2x8': [1.5, 7.25],
  '2x10': [1.5, 9.25],
  '2x12': [1.5, 11.25],
  '4x4': [3.5, 3.5],
  '4x6': [3.5, 5.5],
  '6x6': [5.5, 5.5],
}

/** Other regions, in mm: the name, the section, and the name on the rack where the first is what people call it. */
const METRIC: readonly (readonly [Region, string, number, number, string?])[] = [
  ['UK', '47x100', 47, 100],
  ['UK', '4x2', 47, 100, '47x100'],
  ['UK', '2x4', 47, 100, '47x100'],
  ['UK', '6x2', 47, 150, '47x150'],
  ['UK', '25x50', 25, 50],
  ['UK', '25x50 batten', 25, 50, '25x50'],
  ['UK', '38x89 CLS', 38, 89],
  ['UK', '38x89', 38, 89, '38x89 CLS'],
  ['UK', '4x2 CLS', 38, 89, '38x89 CLS'],
  ['UK', '4x2 PAR', 44, 94, '44x94 PAR'],
  ['AU', '90x45', 45, 90],
  ['AU', '45x90', 45, 90, '90x45'],
  ['AU', '4x2', 45, 90, '90x45'],
  ['AU', '2x4', 45, 90, '90x45'],
  ['AU', '140x45', 45, 140],
  ['EU', '47x100', 47, 100],
  ['EU', '100x200', 100, 200],
]

const board = (region: Region, name: string, thickness: Length, width: Length, aliasOf?: string): Board => ({
  region,
  name,
  thickness,
  width,
  ...(aliasOf !== undefined && { aliasOf }),
})

const sheet = (region: Region, material: string, label: Length, actual = label): SheetLabel => ({
  region,
  material,
  label,
  actual,
})

const size = (region: Region, name: string, length: Length, width: Length): SheetSize => ({
  region,
  name,
  length,
  width,
})

/** Just enough stock to read names by; the sizes are those of the shop tables named above and in the readings data. */
export const stock: StockTables = {
  boards: [
    ...Object.entries(US).map(([name, [thickness, width]]) =>
      board('US', name, inches(thickness), inches(width)),
    ),
    ...METRIC.map(([region, name, thickness, width, aliasOf]) =>
      board(region, name, millimetres(thickness), millimetres(width), aliasOf),
    ),
  ],
  lengths: [],
  labels: [
    sheet('US', 'plywood', inches(1, 4), inches(7, 32)),
    sheet('US', 'plywood', inches(3, 8), inches(11, 32)),
    sheet('US', 'plywood', inches(1, 2), inches(15, 32)),
    sheet('US', 'plywood', inches(5, 8), inches(19, 32)),
    sheet('US', 'plywood', inches(3, 4), inches(23, 32)),
    sheet('US', 'birch plywood', millimetres(18)),
    sheet('US', 'MDF', inches(1, 2)),
    sheet('US', 'MDF', inches(3, 4)),
    sheet('US', 'OSB', inches(7, 16)),
    sheet('UK', 'plywood', millimetres(18)),
    sheet('UK', 'MDF', millimetres(18)),
  ],
  sizes: [
    size('US', '4x8', inches(48), inches(96)),
    size('US', '8x4', inches(48), inches(96)),
    size('US', '4x4', inches(48), inches(48)),
    size('US', '2x4', inches(24), inches(48)),
    size('US', '5x5', millimetres(1525), millimetres(1525)),
    size('UK', '8x4', millimetres(1220), millimetres(2440)),
    size('UK', '4x8', millimetres(1220), millimetres(2440)),
  ],
}

/** A person in `region`, with no units settled unless given, a 1/8 in kerf and the stock above. */
export const reading = (region: Region = 'US', units?: UnitSystem): ReadingSettings => ({
  region,
  kerf: inches(1, 8),
  stock,
  ...(units !== undefined && { units }),
})
