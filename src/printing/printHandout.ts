import PDFDocument from 'pdfkit'
import type { Block, Handout, Printed, Section } from '../bot/handout/handout.ts'
import type { Desk } from './desk.ts'
import { labelStrips } from './labels.ts'
import { registerFaces } from './faces.ts'
import { FOOT, GREY, MARGIN, SIZES, TYPE } from './paper.ts'
import { createPatterns, type Patterns } from './patterns.ts'
import { pictureStrip } from './pictures.ts'
import { isCovered } from './signs.ts'
import { placeStrips, type Strip } from './strip.ts'
import { tableStrips } from './tables.ts'
import { createSetter, type Style } from './type.ts'
import { headingStrips, pointStrips, taskStrips, titleStrips, wordStrips } from './words.ts'

/** A document as a PDF; `squeezed` is false for whoever wants to read its pages. The same document is the same file. */
export async function printHandout(handout: Handout, squeezed = true): Promise<Printed> {
  const doc = openDocument(handout, squeezed)
  const content = collect(doc)
  const desk = deskOf(doc, handout)
  const placed = placeStrips(stripsOf(handout, desk), MARGIN, MARGIN + desk.height)
  const pages = 1 + Math.max(0, ...placed.map(({ page }) => page))
  let page = 0
  for (const { strip, page: wanted, y, height } of placed) {
    for (; page < wanted; page += 1) nextPage(doc, handout, page + 1, pages, desk)
    strip.draw(y, height)
  }
  drawFoot(desk, handout.foot, `${pages} of ${pages}`)
  doc.end()
  return { content: await content, pages }
}

function openDocument({ title, paper, at }: Handout, squeezed: boolean): PDFKit.PDFDocument {
  return new PDFDocument({
    size: [...SIZES[paper]],
    margin: 0,
    compress: squeezed,
    lang: 'en',
    displayTitle: true,
    info: { Title: title, CreationDate: at, ModDate: at },
  })
}

function collect(doc: PDFKit.PDFDocument): Promise<Uint8Array> {
  const chunks: Buffer[] = []
  return new Promise((resolve, reject) => {
    doc.on('data', (chunk: Buffer) => chunks.push(chunk))
    doc.on('end', () => {
      resolve(new Uint8Array(Buffer.concat(chunks)))
    })
    doc.on('error', reject)
  })
}

function deskOf(doc: PDFKit.PDFDocument, { paper }: Handout): Desk {
  const [width, height] = SIZES[paper]
  registerFaces(doc)
  return {
    doc,
    setter: createSetter(doc),
    left: MARGIN,
    width: width - 2 * MARGIN,
    height: height - 2 * MARGIN - FOOT,
  }
}

/** Said where a name is in a script that the faces do not have, so that nobody takes its question marks for its own. */
const UNCOVERED =
  '? stands for a letter that this printout has no sign for; write the name beside it by hand.'

const stripsOf = (handout: Handout, desk: Desk): readonly Strip[] => {
  const { title, subtitle, sections } = handout
  const patterns = createPatterns(desk.doc)
  return [
    ...titleStrips(desk, title, subtitle),
    ...(isCovered(JSON.stringify([title, subtitle, sections])) ? [] : wordStrips(desk, UNCOVERED, false)),
    ...sections.flatMap((section) => sectionStrips(section, desk, patterns)),
  ]
}

/** The heading stays with what comes first under it. */
const sectionStrips = (
  { title, onNewPage = false, blocks }: Section,
  desk: Desk,
  patterns: Patterns,
): readonly Strip[] => [
  ...headingStrips(desk, title, onNewPage, () => {
    desk.doc.outline.addItem(title)
  }),
  ...blocks.flatMap((block) => blockStrips(block, desk, patterns)),
]

function blockStrips(block: Block, desk: Desk, patterns: Patterns): readonly Strip[] {
  switch (block.block) {
    case 'words':
      return wordStrips(desk, block.text, block.strong ?? false)
    case 'points':
      return pointStrips(desk, block.items)
    case 'tasks':
      return taskStrips(desk, block.items)
    case 'table':
      return tableStrips(desk, block)
    case 'picture':
      return [pictureStrip(desk, block, patterns)]
    case 'labels':
      return labelStrips(desk, block.labels)
  }
}

function nextPage(
  doc: PDFKit.PDFDocument,
  { foot, paper }: Handout,
  number: number,
  pages: number,
  desk: Desk,
): void {
  drawFoot(desk, foot, `${number} of ${pages}`)
  doc.addPage({ size: [...SIZES[paper]], margin: 0 })
}

const FOOTING: Style = { face: 'body', size: TYPE.foot }

function drawFoot({ setter, left, width, height }: Desk, foot: string, number: string): void {
  const y = MARGIN + height + FOOT
  const room = width - setter.width(number, FOOTING) - 20
  setter.draw(setter.wrap(foot, FOOTING, room)[0] ?? '', { x: left, y }, FOOTING, GREY)
  setter.draw(number, { x: left + width, y, anchor: 'end' }, { ...FOOTING, face: 'strong' })
}
