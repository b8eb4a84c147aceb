import type { Length } from '../../core/measure/length.ts'
import type { Listed } from '../cutList.ts'
import type { Show } from '../show.ts'
import { partPurpose } from './partPurpose.ts'

/**
 * `show` for pictures of a layout, where a part is known by its size alone: the sizes of what covers are rounded up, as in the
 * cut list. A size that another part has too, which goes into its place, is rounded down.
 */
export function showCovering(parts: readonly Listed[], show: Show): Show {
  const sizes = (purpose: 'into' | 'cover'): ReadonlySet<Length> =>
    new Set(
      parts
        .filter((part) => partPurpose(part) === purpose)
        .flatMap(({ length, width }) => (width === undefined ? [length] : [length, width])),
    )
  const [into, cover] = [sizes('into'), sizes('cover')]
  return {
    ...show,
    mark: (length, purpose, isFine) =>
      show.mark(
        length,
        purpose === 'into' && cover.has(length) && !into.has(length) ? 'cover' : purpose,
        isFine,
      ),
  }
}
