import type { CutOrder } from '../core/cutting/order/cutOrder.ts'
import type { SheetLayout } from '../core/cutting/problem.ts'
import type { Length } from '../core/measure/length.ts'
import { isSheets, type LaidGroup, type LaidJob, type LaidLengths, type LaidSheets } from './laidJob.ts'
import { pair } from './pair.ts'
import { pictureOf } from './picture.ts'
import { describe } from './pictures.ts'
import type { Picture } from './reply.ts'
import type { Show } from './show.ts'
import { showCovering } from './showCovering.ts'

/** Of a reply; the tables have the rest. */
const MOST = 2

/** What is drawn of a job: sizes are those that its list of parts has. */
type Drawn = Pick<LaidJob, 'groups' | 'parts' | 'show'>

/** What a layout shows first: a sheet of the first group that has one, and the boards or strips of the first that has some. */
export function layoutPictures({ groups, parts, show: plain }: Drawn): readonly Picture[] {
  const show = showCovering(parts, plain)
  const sheets = groups.filter(isSheets).slice(0, 1)
  const lengths = groups.filter((laid): laid is LaidLengths => !isSheets(laid)).slice(0, 1)
  const pictures = [
    ...sheets.flatMap((laid) => laid.layouts.slice(0, 1).map((_, index) => sheetPicture(laid, index, show))),
    ...lengths.map((laid) => boardsPicture(laid, show)),
  ]
  return pictures.slice(0, MOST)
}

/** Every way that every sheet, board and strip is cut, for paper. */
export function allLayoutPictures({ groups, parts, show: plain }: Drawn): readonly Picture[] {
  const show = showCovering(parts, plain)
  return groups.flatMap((laid) =>
    isSheets(laid)
      ? laid.layouts.map((_, index) => sheetPicture(laid, index, show))
      : [boardsPicture(laid, show)],
  )
}

/** One way that sheets are cut; with an order, each part has the number of the setting that it comes free at. */
export function sheetPicture(laid: LaidSheets, index: number, show: Show, order?: CutOrder): Picture {
  const layout = laid.layouts[index]
  if (!layout) throw new RangeError('no such layout')
  const { problem, stock } = laid.group
  const size = stock.find(({ label }) => label === layout.stock)
  const raw = problem.stock.find(({ id }) => id === layout.stock)
  if (!size || !raw) throw new RangeError(`a layout of ${layout.stock}, which is not in stock`)
  const parts = layout.placements.map(
    ({ part, length, width }) =>
      `${part} ${show.mark(length as Length, 'into')} x ${show.mark(width as Length, 'into')}`,
  )
  return pictureOf(
    `sheet-${index + 1}`,
    describe([
      `Sheet layout ${index + 1} of ${laid.layouts.length}, ${pair(size.length, size.width, show)}, ${layout.count} of them cut so`,
      `parts ${parts.join(', ')} ${show.unit}`,
      layout.offcuts.length > 0 ? `${layout.offcuts.length} offcuts to keep` : '',
    ]),
    () => ({
      draw: 'sheet',
      asked: {
        layout,
        stock: size,
        kerf: problem.kerf,
        trim: raw.net ? 0 : problem.trim,
        which: { number: index + 1, of: laid.layouts.length },
        settings: order && settingsOf(layout, index, order),
      },
      numbers: show.settings,
    }),
  )
}

/** The number of the setting at which each part of a layout's first copy comes free; parts alike are alike to the saw. */
function settingsOf(
  layout: SheetLayout,
  index: number,
  { steps }: CutOrder,
): readonly (number | undefined)[] {
  const waiting = new Map<string, number[]>()
  steps.forEach((step, at) => {
    for (const cut of step.cuts)
      if (cut.layout === index && cut.copy === 0)
        for (const part of cut.parts) waiting.set(part, [...(waiting.get(part) ?? []), at + 1])
  })
  return layout.placements.map(({ part }) => waiting.get(part)?.shift())
}

/** All the ways that boards or strips of one group are cut. */
function boardsPicture({ group, layouts }: LaidLengths, show: Show): Picture {
  const { problem, kind, stock } = group
  const rows = layouts.map(
    ({ count, parts, offcut }) =>
      `${count} with ${parts.join(', ')}${offcut >= problem.keepable && offcut > 0 ? `, keep ${show.mark(offcut as Length, 'into')}` : ''}`,
  )
  return pictureOf(
    `${kind}s`,
    describe([
      `${kind === 'strip' ? 'Strips' : 'Boards'} cut from the left, ${layouts.length} ${layouts.length === 1 ? 'way' : 'ways'}`,
      `${rows.join('; ')} ${show.unit}`,
    ]),
    () => ({
      draw: 'boards',
      asked: {
        kind,
        layouts,
        stock: stock.map(({ label, length }) => [label, length]),
        parts: problem.parts.map(({ id, length }) => [id, length]),
        kerf: problem.kerf,
        trim: problem.trim,
        keepable: problem.keepable,
      },
      numbers: show.settings,
    }),
  )
}

/** The first sheet with the numbers of its saw settings, else the boards. */
export function orderPictures(
  sawn: readonly { readonly laid: LaidGroup; readonly order: CutOrder }[],
  { parts, show: plain }: Pick<LaidJob, 'parts' | 'show'>,
): readonly Picture[] {
  const show = showCovering(parts, plain)
  const [first] = sawn
  if (!first) return []
  const { laid, order } = sawn.find((each) => isSheets(each.laid)) ?? first
  return isSheets(laid) ? [sheetPicture(laid, 0, show, order)] : [boardsPicture(laid, show)]
}
