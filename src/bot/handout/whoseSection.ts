import type { MergedPart } from '../../core/group/mergeParts.ts'
import { whosePieces } from '../group/whosePieces.ts'
import { isSheets, type LaidJob } from '../laidJob.ts'
import type { HandoutTable, Section } from './handout.ts'

/** Sheet by sheet the names of its pieces, as they stand on the labels; nothing where no sheet is cut. */
export function whoseSection(job: LaidJob, merged: readonly MergedPart[]): readonly Section[] {
  const tables = whosePieces(job, merged).flatMap(({ laid, dealt }): readonly HandoutTable[] => {
    if (!isSheets(laid)) return []
    const { material, thickness } = laid.group
    return [
      {
        block: 'table',
        title: `Sheets ${material ? `of ${material} ` : ''}${job.show.length(thickness, 'mark', true)} thick`,
        columns: [
          { heading: 'Cut' },
          { heading: 'Way', right: true },
          { heading: 'Sheet' },
          { heading: 'Pieces', strong: true },
        ],
        rows: dealt.map(({ way, number, of, stock, pieces }) => [
          { boxes: 1 },
          String(way),
          of === 1 ? stock : `${stock}, ${number} of ${of}`,
          pieces.map(({ name }) => name).join(', '),
        ]),
      },
    ]
  })
  return tables.length === 0 ? [] : [{ title: 'Whose each piece of a sheet is', blocks: tables }]
}
