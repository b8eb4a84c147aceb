import { createRequire } from 'node:module'
import { Resvg } from '@resvg/resvg-js'
import { type Drawable, sceneOf } from '../drawing/drawing.ts'
import { encodePng } from './png.ts'
import { FONT, writeSvg } from './svg.ts'

const FONTS = ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf']

/** Only the fonts that come with the bot: a picture is the same on every machine. */
const fontFiles = FONTS.map((name) => createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${name}`))

/** Pixels across: sharp on a phone, and still a small file. */
const WIDTH = 960

/** A picture as a PNG, drawn first where it is not yet. */
export function paint(picture: Drawable): Uint8Array {
  const image = new Resvg(writeSvg(sceneOf(picture)), {
    fitTo: { mode: 'width', value: WIDTH },
    font: { loadSystemFonts: false, fontFiles, defaultFontFamily: FONT },
  }).render()
  return encodePng({ width: image.width, height: image.height, bytes: image.pixels })
}
