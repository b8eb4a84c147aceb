import type { MergedPart } from '../../core/group/mergeParts.ts'
import { csvOf } from '../csv.ts'
import { pieceName } from '../handout/labels.ts'
import { isSheets, type LaidGroup, type LaidJob } from '../laidJob.ts'
import type { File } from '../reply.ts'

/** One sheet, board or strip, with whose its pieces are. */
export interface DealtPiece {
  /** The row of the layout that it is cut by, from 1. */
  readonly way: number
  /** Which of the `of` that are cut just so, from 1. */
  readonly number: number
  readonly of: number
  /** The label of the stock it is taken from. */
  readonly stock: string
  /** `K07-B2` for each of its parts, in their order, with the row of the list. */
  readonly pieces: readonly { readonly row: string; readonly name: string }[]
}

/** One kind of sheets, boards or strips of a layout, dealt to the kits. */
export interface DealtGroup {
  readonly laid: LaidGroup
  readonly dealt: readonly DealtPiece[]
}

/**
 * Which piece is whose: every piece of the layout has the name on one of the labels, and every label has its piece. Pieces
 * of one row are all alike and are dealt to its kits in their order, then to the spares.
 */
export function whosePieces(job: LaidJob, merged: readonly MergedPart[]): readonly DealtGroup[] {
  const waiting = new Map(merged.map((part) => [part.label, namesOf(part)]))
  const dealt = (row: string) => ({ row, name: waiting.get(row)?.shift() ?? row })
  return job.groups.map((laid) => ({
    laid,
    dealt: partsByWay(laid).flatMap(({ stock, count, parts }, index) =>
      Array.from({ length: count }, (_, copy) => ({
        way: index + 1,
        number: copy + 1,
        of: count,
        stock,
        pieces: parts.map(dealt),
      })),
    ),
  }))
}

const namesOf = ({ label, owners, spare }: MergedPart): string[] => [
  ...owners.flatMap((owner) =>
    Array.from({ length: owner.count }, (_, index) => pieceName(owner.label, index, owner.count)),
  ),
  ...Array.from({ length: spare }, (_, index) => pieceName(`${label}-S`, index, spare)),
]

const partsByWay = (laid: LaidGroup) =>
  isSheets(laid)
    ? laid.layouts.map(({ stock, count, placements }) => ({
        stock,
        count,
        parts: placements.map(({ part }) => part),
      }))
    : laid.layouts

/** Every piece of a layout with whose it is, for a spreadsheet. */
export function piecesFile(job: LaidJob, merged: readonly MergedPart[]): File {
  const { show } = job
  const heading = ['from', `thickness ${show.unit}`, 'way', 'number', 'stock', 'part', 'whose']
  const rows = whosePieces(job, merged).flatMap(({ laid, dealt }) =>
    dealt.flatMap(({ way, number, stock, pieces }) =>
      pieces.map(({ row, name }) => [
        laid.group.kind,
        show.mark(laid.group.thickness, 'mark', true),
        way,
        number,
        stock,
        row,
        name,
      ]),
    ),
  )
  return { name: 'group-layout.csv', type: 'text/csv', content: csvOf([heading, ...rows]) }
}
