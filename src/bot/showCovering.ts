import { INCH, type Length, MILLIMETRE, nanometres } from '../core/measure/length.ts'
import { type Purpose, roundFor } from '../core/measure/round.ts'
import type { Context } from './context.ts'
import { partPurpose } from './partPurpose.ts'
import type { Show } from './show.ts'

/** A part as far as its sides are rounded. */
interface Sided {
  readonly name?: string | undefined
  readonly length: Length
  readonly width?: Length | undefined
}

/**
 * Which way a length is rounded wherever it is shown: up where it is a side of what covers, down where it is a side of any part
 * that goes into its place; undefined where no part has such a side. So whoever reads the list, a picture and a saw setting
 * reads one number.
 */
export function sidePurpose(parts: readonly Sided[]): (length: Length) => Purpose | undefined {
  const sizes = (purpose: Purpose): ReadonlySet<Length> =>
    new Set(
      parts
        .filter((part) => partPurpose(part) === purpose)
        .flatMap(({ length, width }) => (width === undefined ? [length] : [length, width])),
    )
  const [into, cover] = [sizes('into'), sizes('cover')]
  return (length) => (into.has(length) ? 'into' : cover.has(length) ? 'cover' : undefined)
}

/** `show` for pictures of a layout, where a part is known by its size alone: the sizes of what covers are rounded up. */
export function showCovering(parts: readonly Sided[], show: Show): Show {
  const purposeOf = sidePurpose(parts)
  return {
    ...show,
    mark: (length, purpose, isFine) =>
      show.mark(length, purpose === 'into' ? (purposeOf(length) ?? purpose) : purpose, isFine),
  }
}

/** How the saw settings of some parts are shown. */
export interface Marking {
  /** Without the unit. */
  readonly mark: (setting: Length) => string
  /** With the unit, and by how much the mark misses. */
  readonly words: (setting: Length) => string
  /** The mark as a length. */
  readonly exact: (setting: Length) => Length
  /** Whether it is a side of a part, and so shown as the list of parts has it. */
  readonly isSide: (setting: Length) => boolean
}

/** A setting that is a side of a part is the number that the list of parts has; all others are to the nearest fine mark. */
export function markingOf(
  parts: readonly Sided[],
  show: Show,
  { settings, settled }: Pick<Context, 'settings' | 'settled'>,
): Marking {
  const purposeOf = sidePurpose(parts)
  const [coarse, fine] =
    show.units === 'inch'
      ? [INCH / settled.tape, INCH / Math.max(settled.tape, settings.jointTape)]
      : [settings.millimetreStep * MILLIMETRE, settings.fineMillimetreStep * MILLIMETRE]
  return {
    mark: (setting) => show.mark(setting, purposeOf(setting) ?? 'mark', purposeOf(setting) === undefined),
    words: (setting) => show.length(setting, purposeOf(setting) ?? 'mark', purposeOf(setting) === undefined),
    exact: (setting) => {
      const purpose = purposeOf(setting)
      return roundFor(setting, nanometres(purpose === undefined ? fine : coarse), purpose ?? 'mark')
    },
    isSide: (setting) => purposeOf(setting) !== undefined,
  }
}
