import type { Rectangle } from '../problem.ts'
import type { Fault, Rule } from './fault.ts'
import { faultIn } from './fault.ts'

/** A rectangle with the name it goes by in a fault: a part's id or `an offcut`. */
export interface Named extends Rectangle {
  readonly name: string
  readonly part?: string | undefined
}

const lieWithin = (a: Rectangle, b: Rectangle, gap: number): boolean =>
  a.x < b.x + b.length + gap &&
  b.x < a.x + a.length + gap &&
  a.y < b.y + b.width + gap &&
  b.y < a.y + a.width + gap

function describePair(first: Named, second: Named, index: number): Fault {
  const rule: Rule = lieWithin(first, second, 0) ? 'overlap' : 'kerf'
  const claim = rule === 'overlap' ? 'overlap' : 'lie closer together than the kerf'
  const where = `at (${first.x}, ${first.y}) and ${second.name} at (${second.x}, ${second.y})`
  return faultIn(rule, index, `${first.name} ${where} ${claim}`, first.part ?? second.part)
}

/** Every two rectangles that overlap, or that no kerf fits between; sorted by `x` so that few pairs are looked at. */
export function findCrowded(rectangles: readonly Named[], kerf: number, index: number): Fault[] {
  const sorted = rectangles.toSorted((a, b) => a.x - b.x)
  return sorted.flatMap((first, place) => {
    const faults: Fault[] = []
    for (let other = place + 1; other < sorted.length; other += 1) {
      const second = sorted[other]!
      if (second.x >= first.x + first.length + kerf) break
      if (lieWithin(first, second, kerf)) faults.push(describePair(first, second, index))
    }
    return faults
  })
}

/** Whether `inner` lies inside `outer`, edges included. */
export const isInside = (inner: Rectangle, outer: Rectangle): boolean =>
  inner.x >= outer.x &&
  inner.y >= outer.y &&
  inner.x + inner.length <= outer.x + outer.length &&
  inner.y + inner.width <= outer.y + outer.width
