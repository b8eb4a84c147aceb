import { type Length, minus, nanometres } from '../measure/length.ts'

/** A panel as far as joining goes: its sides, and how much of it the frame covers. */
export interface JoinedPanel {
  readonly length: Length
  /** Its height when it stands. */
  readonly width: Length
  /** How far a stile lies over either end, and a rail over top and bottom; 0 without a frame. */
  readonly stile: Length
  readonly rail: Length
}

/** A sheet on sale. */
export interface SheetSize {
  readonly length: Length
  readonly width: Length
}

/** Where the one join of a panel goes: how far along it an upright join is, or how far up a level one. */
export interface PanelJoin {
  readonly status: 'joined'
  readonly way: 'upright' | 'level'
  readonly at: Length
  readonly behind: 'stile' | 'rail' | 'batten'
}

/**
 * Where a panel larger than every sheet is joined from two pieces: behind the middle of the top rail if either piece then comes
 * out of a sheet, else behind a stile, else in its own middle, on a batten. `whole` where a sheet gives it in one piece, `many`
 * where two pieces will not do. A sheet may be turned.
 */
export function joinPanel(
  panel: JoinedPanel,
  sheets: readonly SheetSize[],
): PanelJoin | { readonly status: 'whole' | 'many' } {
  const { length, width, stile, rail } = panel
  const fits = (long: number, wide: number): boolean =>
    sheets.some((sheet) => Math.max(long, wide) <= sheet.length && Math.min(long, wide) <= sheet.width)
  if (fits(length, width)) return { status: 'whole' }
  const half = (side: Length): Length => nanometres(side / 2)
  const tried: readonly Omit<PanelJoin, 'status'>[] = [
    { way: 'level', at: minus(width, half(rail)), behind: 'rail' },
    { way: 'upright', at: minus(length, half(stile)), behind: 'stile' },
    { way: 'level', at: half(width), behind: 'batten' },
    { way: 'upright', at: half(length), behind: 'batten' },
  ]
  const found = tried.find(({ way, at }) =>
    way === 'level'
      ? fits(length, at) && fits(length, width - at)
      : fits(at, width) && fits(length - at, width),
  )
  return found ? { status: 'joined', ...found } : { status: 'many' }
}
