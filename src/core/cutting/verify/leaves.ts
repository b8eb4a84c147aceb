import type { Rectangle, SheetLayout, SheetProblem } from '../problem.ts'
import type { Fault } from './fault.ts'
import { faultIn } from './fault.ts'
import { replayCuts } from './replay.ts'
import { addTo } from './tally.ts'

const place = ({ x, y, length, width }: Rectangle): string => `${length} x ${width} at (${x}, ${y})`

/** What comes more often in `these` than in `those`. */
function findExtra(these: readonly string[], those: readonly string[]): string[] {
  const left = new Map<string, number>()
  for (const text of those) addTo(left, text, 1)
  return these.filter((text) => {
    addTo(left, text, -1)
    return left.get(text)! < 0
  })
}

function compareParts(layout: SheetLayout, freed: readonly string[], index: number): Fault[] {
  const drawn = layout.placements.map(
    (placement) => `part "${placement.part}" ${placement.turned ? 'turned, ' : ''}${place(placement)}`,
  )
  return [
    ...findExtra(drawn, freed).map((text) => faultIn('cuts', index, `the cuts do not set free ${text}`)),
    ...findExtra(freed, drawn).map((text) =>
      faultIn('cuts', index, `the cuts set free ${text}, which is not drawn`),
    ),
  ]
}

function compareOffcuts(
  layout: SheetLayout,
  rests: readonly Rectangle[],
  keepable: number,
  index: number,
): Fault[] {
  const isKept = ({ length, width }: Rectangle): boolean => Math.min(length, width) >= Math.max(keepable, 1)
  const kept = rests.filter(isKept).map(place)
  const given = layout.offcuts.map(place)
  return [
    ...layout.offcuts
      .filter((offcut) => !isKept(offcut))
      .map((offcut) => faultIn('offcut', index, `offcut ${place(offcut)} is too small to keep`)),
    ...findExtra(given, rests.map(place)).map((text) =>
      faultIn('offcut', index, `offcut ${text} is not left by the cuts`),
    ),
    ...findExtra(kept, given).map((text) => faultIn('offcut', index, `the offcut ${text} is left out`)),
  ]
}

/** Makes the layout's own cuts in the trimmed sheet and compares what comes free with what is drawn. */
export function checkCuts(
  problem: SheetProblem,
  layout: SheetLayout,
  whole: Rectangle,
  index: number,
): Fault[] {
  const replayed = replayCuts(whole, layout.cuts, problem.kerf)
  const freed = replayed.parts.map(
    ({ part, turned, at }) => `part "${part}" ${turned ? 'turned, ' : ''}${place(at)}`,
  )
  return [
    ...replayed.wrong.map((claim) => faultIn('cuts', index, claim)),
    ...compareParts(layout, freed, index),
    ...compareOffcuts(layout, replayed.rests, problem.keepable, index),
  ]
}
