import { type Length, toMillimetres } from '../../core/measure/length.ts'
import { csvOf } from '../csv.ts'
import type { Listed } from '../cutList.ts'
import { partPurpose } from '../partPurpose.ts'
import type { File } from '../reply.ts'
import type { Show } from '../show.ts'
import { stockMark } from '../stockSize.ts'

/** The cut list for a spreadsheet: each size as it is marked out, and exactly in mm. */
export function partsFile(parts: readonly Listed[], show: Show, name: string): File {
  const { unit } = show
  const heading = [
    'part',
    'what',
    'from',
    'material',
    'count',
    ...(unit === 'mm' ? [] : [`length ${unit}`, `width ${unit}`, `thickness ${unit}`]),
    'length mm',
    'width mm',
    'thickness mm',
    'grain',
    'when',
  ]
  const rows = parts.map((part) => [
    part.label,
    part.name ?? '',
    part.from,
    part.material ?? '',
    part.count,
    ...(unit === 'mm' ? [] : marksOf(part, show)),
    ...[part.length, part.width, part.thickness].map(exact),
    part.grain ? 'along the length' : '',
    part.later ? 'on the day' : 'now',
  ])
  return { name, type: 'text/csv', content: csvOf([heading, ...rows]) }
}

const exact = (length: Length | undefined): number | string =>
  length === undefined ? '' : toMillimetres(length)

const marksOf = ({ name, from, length, width, thickness }: Listed, show: Show): readonly string[] => [
  show.mark(length, partPurpose({ name })),
  width === undefined
    ? ''
    : from === 'sheet'
      ? show.mark(width, partPurpose({ name }))
      : stockMark(width, show),
  thickness === undefined ? '' : stockMark(thickness, show),
]
