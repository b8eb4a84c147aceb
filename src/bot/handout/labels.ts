import type { Listed } from '../cutList.ts'
import { partPurpose } from '../partPurpose.ts'
import type { Show } from '../show.ts'
import { stockMark } from '../stockSize.ts'
import type { Label, Section } from './handout.ts'

/** What a piece is called among `count` alike: `B2`, `A1-2` where the label ends in a figure, `B` where there is but one. */
export const pieceName = (label: string, index: number, count: number): string =>
  count === 1 ? label : `${label}${/\d$/u.test(label) ? '-' : ''}${index + 1}`

/** The size of a part as it is marked out: `17 15/16 x 12 in`, of a strip its length alone. */
export function sizeWords(part: Listed, show: Show): string {
  const purpose = partPurpose(part)
  const { from, length, width } = part
  const wide = from === 'sheet' && width !== undefined ? ` x ${show.mark(width, purpose)}` : ''
  return `${show.mark(length, purpose)}${wide} ${show.unit}`
}

/** What a part is, with the section of a strip: `end rail, 1/2 x 1 1/2`. */
const partWords = ({ name, from, width, thickness }: Listed, show: Show): string =>
  [
    name ?? '',
    from === 'sheet' || width === undefined || thickness === undefined
      ? ''
      : `${stockMark(thickness, show)} x ${stockMark(width, show)}`,
  ]
    .filter((word) => word !== '')
    .join(', ')

/** A label for each piece; `prefix` goes before its name, `whose` on the last line. */
export const labelsOf = (
  parts: readonly Listed[],
  show: Show,
  { prefix = '', whose }: { readonly prefix?: string; readonly whose?: string | undefined } = {},
): readonly Label[] =>
  parts.flatMap((part) =>
    Array.from({ length: part.count }, (_, index) => ({
      name: prefix + pieceName(part.label, index, part.count),
      size: sizeWords(part, show),
      lines: [partWords(part, show), whose ?? ''].filter((line) => line !== ''),
    })),
  )

/** The sheet of labels, at the end, where it is taken off and cut up. */
export const labelSection = (labels: readonly Label[]): Section => ({
  title: 'Part labels',
  onNewPage: true,
  blocks: [
    {
      block: 'words',
      text: 'One for each piece: cut along the dashes and tape it on as soon as the piece is cut.',
    },
    { block: 'labels', labels },
  ],
})
