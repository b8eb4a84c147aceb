import type { UnitSystem } from '../core/measure/reading.ts'
import type { Context } from './context.ts'
import { showFor } from './createContext.ts'
import type { Show } from './show.ts'

/**
 * How to show what is kept: in the units that are settled or were typed in this line, else in those it was typed in when it
 * was kept, else in those of the region.
 */
export function showKept(context: Context, units?: UnitSystem): Show {
  if (!units || context.settled.units || context.typed || context.project) return context.show
  return showFor(context.settled, units, context.settings)
}

/** The units that a list begins with: undefined where no line says. */
export function unitsWritten(text: string): UnitSystem | undefined {
  const metric = text.search(/\d\s*(?:mm|cm)\b/iu)
  const inch = text.search(/\d\s*(?:in(?:ch(?:es)?)?\b|ft\b|feet\b|foot\b|["”″'’′])/iu)
  if (metric < 0 && inch < 0) return undefined
  return inch < 0 || (metric >= 0 && metric < inch) ? 'metric' : 'inch'
}
