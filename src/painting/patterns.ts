import { INK } from './look.ts'

const pattern = (id: string, width: number, height: number, turn: number, inside: string): string =>
  `<pattern id="${id}" width="${width}" height="${height}" patternUnits="userSpaceOnUse"${turn === 0 ? '' : ` patternTransform="rotate(${turn})"`}>${inside}</pattern>`

const ground = (width: number, height: number, colour: string): string =>
  `<rect width="${width}" height="${height}" fill="${colour}"/>`

const stroke = (path: string, colour: string, width: number): string =>
  `<path d="${path}" stroke="${colour}" stroke-width="${width}" fill="none"/>`

/** Patterns by name: layers of a sheet in section, end grain of a strip, an offcut to keep, waste. */
export const PATTERNS: Readonly<Record<string, string>> = {
  layers: pattern('layers', 12, 12, 0, ground(12, 12, '#f7efe0') + stroke('M0 4H12M0 10H12', '#b59a6a', 1.6)),
  uprightLayers: pattern(
    'uprightLayers',
    12,
    12,
    0,
    ground(12, 12, '#f7efe0') + stroke('M4 0V12M10 0V12', '#b59a6a', 1.6),
  ),
  grain: pattern('grain', 16, 16, 45, ground(16, 16, '#e3cda6') + stroke('M0 8H16', '#7d6136', 2)),
  hatch: pattern('hatch', 22, 22, -45, ground(22, 22, '#ffffff') + stroke('M0 11H22', '#8d949c', 2)),
  dots: pattern(
    'dots',
    14,
    14,
    0,
    `${ground(14, 14, '#eceef0')}<circle cx="4" cy="4" r="1.6" fill="${INK}" opacity="0.45"/><circle cx="11" cy="11" r="1.6" fill="${INK}" opacity="0.45"/>`,
  ),
}
