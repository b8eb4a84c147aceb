/** One run of letters on a page, in points from the upper left corner of the page. */
export interface Run {
  readonly text: string
  readonly x: number
  /** Of the foot of the letters. */
  readonly y: number
  readonly right: number
  readonly size: number
  readonly font: string
}

/** A page of a PDF: its box and what is written on it, in the order in which it was written. */
export interface PageRead {
  readonly width: number
  readonly height: number
  readonly runs: readonly Run[]
}

/** Reads a PDF that was printed without compression (ISO 32000-1, 7.5 and 9.4), as far as the printer goes. */
export function readPdf(content: Uint8Array): readonly PageRead[] {
  const objects = new Map(
    [
      ...Buffer.from(content)
        .toString('latin1')
        .matchAll(/(\d+) 0 obj\n([\s\S]*?)\nendobj/gu),
    ].map(([, number = '', body = '']) => [number, body]),
  )
  const object = (number: string | undefined): string => objects.get(number ?? '') ?? ''
  const tree = [...objects.values()].find((body) => /\/Type \/Pages\b/u.test(body)) ?? ''
  const kids = /\/Kids \[([^\]]*)\]/u.exec(tree)?.[1] ?? ''
  return [...kids.matchAll(/(\d+) 0 R/gu)].map(([, number]) => {
    const page = object(number)
    const [, , width = 0, height = 0] = (/\/MediaBox \[([^\]]*)\]/u.exec(page)?.[1] ?? '')
      .split(' ')
      .map(Number)
    const fonts = fontsOf(object(/\/Resources (\d+) 0 R/u.exec(page)?.[1]), object)
    const stream = streamOf(object(/\/Contents (\d+) 0 R/u.exec(page)?.[1]))
    return { width, height, runs: readStream(stream, fonts, height) }
  })
}

const streamOf = (body: string): string => /stream\n([\s\S]*?)\nendstream/u.exec(body)?.[1] ?? ''

interface Font {
  readonly name: string
  readonly texts: readonly string[]
  readonly widths: readonly number[]
}

function fontsOf(
  resources: string,
  object: (number: string | undefined) => string,
): ReadonlyMap<string, Font> {
  const named = /\/Font <<([\s\S]*?)>>/u.exec(resources)?.[1] ?? ''
  return new Map(
    [...named.matchAll(/\/(\w+) (\d+) 0 R/gu)].map(([, name = '', number]) => {
      const font = object(number)
      const descendant = object(/\/DescendantFonts \[(\d+) 0 R/u.exec(font)?.[1])
      const map = streamOf(object(/\/ToUnicode (\d+) 0 R/u.exec(font)?.[1]))
      const lists = [...map.matchAll(/<[0-9a-f]+> <[0-9a-f]+> \[([^\]]*)\]/giu)].map(([, list = '']) => list)
      return [
        name,
        {
          name: /\/BaseFont \/\w+\+(\S+)/u.exec(font)?.[1] ?? '',
          texts: lists.flatMap((list) =>
            [...list.matchAll(/<([0-9a-f ]*)>/giu)].map(([, hex = '']) => fromHex(hex)),
          ),
          widths: (/\/W \[0 \[([^\]]*)\]/u.exec(descendant)?.[1] ?? '').trim().split(/\s+/u).map(Number),
        },
      ]
    }),
  )
}

const fromHex = (hex: string): string =>
  Buffer.from(hex.replaceAll(' ', ''), 'hex').swap16().toString('utf16le')

type Matrix = readonly [number, number, number, number, number, number]

/** `inner` first, then `outer`. */
const times = ([a, b, c, d, e, f]: Matrix, [A, B, C, D, E, F]: Matrix): Matrix => [
  a * A + b * C,
  a * B + b * D,
  c * A + d * C,
  c * B + d * D,
  e * A + f * C + E,
  e * B + f * D + F,
]

function readStream(stream: string, fonts: ReadonlyMap<string, Font>, height: number): readonly Run[] {
  const runs: Run[] = []
  const kept: Matrix[] = []
  let ctm: Matrix = [1, 0, 0, 1, 0, 0]
  let text: Matrix = ctm
  let [font, size] = ['', 0]
  const numbers = (line: string) => line.split(' ').slice(0, 6).map(Number) as unknown as Matrix
  for (const line of stream.split('\n')) {
    if (line === 'q') kept.push(ctm)
    else if (line === 'Q') ctm = kept.pop() ?? ctm
    else if (line.endsWith(' cm')) ctm = times(numbers(line), ctm)
    else if (line.endsWith(' Tm')) text = times(numbers(line), ctm)
    else if (line.endsWith(' Tf')) {
      const [name = '', given] = line.slice(1).split(' ')
      font = name
      size = Number(given)
    } else if (line.endsWith(' TJ')) {
      const { name = '', texts = [], widths = [] } = fonts.get(font) ?? {}
      const parts = [...line.matchAll(/<([0-9a-f]*)>|(-?[\d.]+)/gu)]
      const glyphs = parts.flatMap(([, hex]) =>
        (hex?.match(/.{4}/gu) ?? []).map((each) => Number.parseInt(each, 16)),
      )
      const kerned = parts.reduce((sum, [, , moved]) => sum + Number(moved ?? 0), 0)
      const wide = ((glyphs.reduce((sum, glyph) => sum + (widths[glyph] ?? 0), 0) - kerned) * size) / 1000
      const [x, y] = [text[4], text[5]]
      const [right, foot] = [x + wide * text[0], y + wide * text[1]]
      runs.push({
        text: glyphs.map((glyph) => texts[glyph] ?? '').join(''),
        x,
        y: height - Math.max(y, foot),
        right: Math.max(x, right),
        size: size * Math.hypot(text[0], text[1]),
        font: name,
      })
    }
  }
  return runs
}

/** The lines of a page, from the top: what stands at one height, from left to right, two spaces between. */
export function linesOf({ runs }: PageRead): readonly string[] {
  const rows = new Map<number, Run[]>()
  for (const run of runs) {
    const y = [...rows.keys()].find((each) => Math.abs(each - run.y) < 1) ?? run.y
    rows.set(y, [...(rows.get(y) ?? []), run])
  }
  return [...rows]
    .sort(([one], [other]) => one - other)
    .map(([, row]) =>
      [...row]
        .sort((a, b) => a.x - b.x)
        .map(({ text }) => text)
        .join('  '),
    )
}
