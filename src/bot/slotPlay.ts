import { type Length, minus, nanometres } from '../core/measure/length.ts'
import { slotWidth } from '../core/moisture/cornerFlush.ts'
import { TYPICAL_COAT } from '../core/moisture/film.ts'
import { thicknessGrowth } from '../core/moisture/panelMovement.ts'
import type { Context } from './context.ts'
import { chooseWood } from './wood.ts'
import { chooseYear } from './year.ts'

/** What a slot of halved corners is wider than the sheet: paint on its two faces, a year's swelling and a hand's push fit. */
export function slotPlay(
  { thickness, material }: { readonly thickness: Length; readonly material?: string | undefined },
  context: Context,
): Length {
  const { coats, pushFit } = context.reference.seasons
  const { year } = chooseYear({}, context)
  const { wood } = chooseWood(undefined, context)
  const rate = /mdf|particle/iu.test(material ?? '') ? thicknessGrowth('mdf') : (wood.growth?.radial ?? 0)
  const swelling = nanometres(thickness * rate * Math.max(0, year.wettest - year.assembled))
  return minus(slotWidth({ sheet: thickness, coats, coat: TYPICAL_COAT, swelling, pushFit }), thickness)
}
