import type { Block } from './block.ts'
import { type OpenSheet, type Packing, type Place, takesAny } from './packing.ts'
import type { Random } from './random.ts'

/** How free room is judged: a gap of area A is worth A to the power `power`, nothing where no part fits. */
export interface Taste {
  /** Chance to pass over a place, so that repeated fillings differ. */
  readonly blink: number
  /** 0: worth A squared; 1: A to the 3/2. */
  readonly power: 0 | 1
}

const roomWorth = (packing: Packing, length: number, width: number, power: 0 | 1): number => {
  if (length <= 0 || width <= 0 || !takesAny(packing.sizes, length, width)) return 0
  const area = length * width
  return power === 0 ? area * area : area * Math.sqrt(area)
}

/** Better of the two splits of a gap; the loss goes into `place` when it beats what is there. */
const tryGap = (
  packing: Packing,
  sheet: number,
  gap: number,
  row: Block,
  index: number,
  power: 0 | 1,
  place: Place,
): void => {
  const length = packing.sizes.along[index] as number
  const width = packing.sizes.across[index] as number
  const roomLength = row.along === 0 ? row.gap : row.length
  const roomWidth = row.along === 0 ? row.width : row.gap
  if (length > roomLength || width > roomWidth) return
  const whole = roomWorth(packing, roomLength, roomWidth, power)
  const besides = roomWorth(packing, roomLength - length, roomWidth, power)
  const above = roomWorth(packing, length, roomWidth - width, power)
  const beside = roomWorth(packing, roomLength - length, width, power)
  const aboveAll = roomWorth(packing, roomLength, roomWidth - width, power)
  const upright = whole - besides - above
  const level = whole - beside - aboveAll
  const loss = Math.min(upright, level)
  if (loss >= place.loss) return
  place.loss = loss
  place.sheet = sheet
  place.gap = gap
  place.turned = (index & 1) === 1
  // An upright first cut (parallel to the width) follows a row along x; a level one goes across it.
  place.across = upright < level ? row.along === 1 : row.along === 0
}

/** The place that spoils the least free room, among open sheets; `loss` stays Infinity when there is none. */
export const findPlace = (packing: Packing, part: number, random: Random, taste: Taste): Place => {
  const place: Place = { sheet: -1, gap: -1, turned: false, across: false, loss: Number.POSITIVE_INFINITY }
  const sheets = packing.sheets
  const area = packing.sizes.area[part] as number
  const turnable = packing.sizes.along[2 * part + 1] !== Number.POSITIVE_INFINITY
  for (let sheet = 0; sheet < sheets.length; sheet++) {
    const gaps = (sheets[sheet] as OpenSheet).gaps
    packing.effort += 10 * gaps.length
    for (let gap = 0; gap < gaps.length; gap++) {
      const row = gaps[gap] as Block
      if ((row.along === 0 ? row.gap * row.width : row.gap * row.length) < area) continue
      if (taste.blink === 0 || random.next() >= taste.blink)
        tryGap(packing, sheet, gap, row, 2 * part, taste.power, place)
      if (turnable && (taste.blink === 0 || random.next() >= taste.blink))
        tryGap(packing, sheet, gap, row, 2 * part + 1, taste.power, place)
    }
  }
  return place
}
