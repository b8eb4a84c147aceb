import type { Line, Point, Polygon, Scene, Shape, Stroke, Text } from '../drawing/scene.ts'
import { FACES, FILLS, PAPER, PENS, TONES } from './look.ts'
import { PATTERNS } from './patterns.ts'

/** The open font that every picture is set in. */
export const FONT = 'DejaVu Sans'

/** A scene as SVG text. Numbers are to a thousandth of a unit, so that the same scene is the same text everywhere. */
export function writeSvg({ width, height, shapes }: Scene): string {
  const used = [...new Set(shapes.flatMap(patternOf))].sort()
  const patterns = used.map((name) => PATTERNS[name] ?? '').join('')
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${number(width)} ${number(height)}" width="${number(width)}" height="${number(height)}" font-family="${FONT}" font-kerning="none" stroke-linejoin="round" stroke-linecap="round">`,
    ...(patterns === '' ? [] : [`<defs>${patterns}</defs>`]),
    `<rect width="${number(width)}" height="${number(height)}" fill="${PAPER}"/>`,
    ...shapes.map(shapeMarkup),
    '</svg>',
    '',
  ].join('\n')
}

const patternOf = (shape: Shape): readonly string[] => {
  const name = shape.shape === 'polygon' ? /^url\(#(.*)\)$/u.exec(FILLS[shape.fill])?.[1] : undefined
  return name === undefined ? [] : [name]
}

function shapeMarkup(shape: Shape): string {
  if (shape.shape === 'text') return textMarkup(shape)
  return shape.shape === 'line' ? lineMarkup(shape) : polygonMarkup(shape)
}

const number = (value: number): string => String(Math.round(value * 1000) / 1000 + 0)
const points = (list: readonly Point[]): string => list.map(([x, y]) => `${number(x)},${number(y)}`).join(' ')

function pen(stroke: Stroke): string {
  const { colour, width, dashes } = PENS[stroke]
  return ` stroke="${colour}" stroke-width="${width}"${dashes ? ` stroke-dasharray="${dashes}"` : ''}`
}

const lineMarkup = ({ points: list, stroke }: Line): string =>
  `<polyline points="${points(list)}" fill="none"${pen(stroke)}/>`

function polygonMarkup({ points: list, fill, stroke, facing }: Polygon): string {
  const colour = (facing && FACES[fill]?.[facing]) ?? FILLS[fill]
  return `<polygon points="${points(list)}" fill="${colour}"${stroke ? pen(stroke) : ''}/>`
}

/** Letters have a rim of paper, so that no line or hatching runs into them. */
function textMarkup({
  at: [x, y],
  text,
  size,
  anchor = 'start',
  turn = 0,
  bold,
  tone,
  rim = true,
}: Text): string {
  const turned = turn === 0 ? '' : ` transform="rotate(${turn} ${number(x)} ${number(y)})"`
  const rimmed = rim ? ` stroke="${PAPER}" stroke-width="7" paint-order="stroke"` : ''
  return `<text x="${number(x)}" y="${number(y)}" font-size="${number(size)}" text-anchor="${anchor}" fill="${TONES[tone ?? 'ink']}"${bold ? ' font-weight="bold"' : ''}${rimmed}${turned}>${escaped(text)}</text>`
}

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }
const escaped = (text: string): string => text.replace(/[&<>"]/gu, (sign) => ESCAPES[sign] ?? sign)
