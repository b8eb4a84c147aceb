import { inches, millimetres } from '../../../src/core/measure/length.ts'
import type { StockTables } from '../../../src/core/stock/stock.ts'

/** A shop with a little of everything. */
export const shop: StockTables = {
  boards: [
    { region: 'US', name: '2x4', thickness: inches(3, 2), width: inches(7, 2) },
    { region: 'US', name: '5/4x6', thickness: inches(1), width: inches(11, 2) },
    { region: 'UK', name: '47x100', thickness: millimetres(47), width: millimetres(100) },
    { region: 'UK', name: '4x2', aliasOf: '47x100', thickness: millimetres(47), width: millimetres(100) },
    { region: 'UK', name: '38x89 CLS', thickness: millimetres(38), width: millimetres(89) },
  ],
  lengths: [{ region: 'US', name: '8 ft', length: inches(96) }],
  labels: [
    { region: 'US', material: 'plywood', label: inches(3, 4), actual: inches(23, 32) },
    { region: 'US', material: 'MDF', label: inches(3, 4), actual: inches(3, 4) },
    { region: 'US', material: 'plywood', label: inches(1, 2), actual: inches(15, 32) },
    { region: 'UK', material: 'plywood', label: millimetres(12), actual: millimetres(12) },
  ],
  sizes: [
    { region: 'US', name: '4x8', length: inches(96), width: inches(48) },
    { region: 'UK', name: '1220x2440', length: millimetres(2440), width: millimetres(1220) },
    { region: 'UK', name: '8x4', aliasOf: '1220x2440', length: millimetres(2440), width: millimetres(1220) },
  ],
}
