import type { PercentRead } from '../core/measure/readPercent.ts'
import type { TemperatureRead } from '../core/measure/readTemperature.ts'
import { showPercent, showTemperature } from '../core/measure/showAir.ts'
import type { YearOfMoisture } from '../core/moisture/cornerFit.ts'
import { equilibriumMoisture } from '../core/moisture/equilibrium.ts'
import type { PlaceName } from '../core/moisture/seasons.ts'
import type { Context } from './context.ts'
import { Refusal } from './refusal.ts'

/** What may be said of a year: where the box stands, or the air of its driest and wettest month, and the wood now. */
export interface YearAsked {
  readonly where?: PlaceName | undefined
  readonly driest?: PercentRead | undefined
  readonly wettest?: PercentRead | undefined
  readonly temperature?: TemperatureRead | undefined
  readonly moisture?: PercentRead | undefined
}

export interface ChosenYear {
  readonly year: YearOfMoisture
  readonly notes: readonly string[]
}

/**
 * Moisture of the wood when it is put together and in the two months that matter. Air goes before the place, and a meter before
 * the rule that wood is put together half way. Throws a Refusal where the driest month is wetter than the wettest.
 */
export function chooseYear(asked: YearAsked, { reference, show }: Context): ChosenYear {
  const { seasons } = reference
  const where = asked.where ?? 'heated'
  const degrees = asked.temperature?.celsius ?? seasons.temperature
  const inAir = (air: PercentRead | undefined): number | undefined =>
    air && equilibriumMoisture(degrees, air.percent)
  const driest = inAir(asked.driest) ?? seasons.places[where].driest
  const wettest = inAir(asked.wettest) ?? seasons.places[where].wettest
  if (driest > wettest)
    throw new Refusal(
      'invalid',
      `the driest month comes to ${showPercent(driest)} moisture and the wettest to ${showPercent(wettest)}; write driest=30% wettest=70%`,
    )
  const assembled = asked.moisture?.percent ?? (driest + wettest) / 2
  const air = asked.driest || asked.wettest
  return {
    year: { assembled, driest: Math.min(driest, assembled), wettest: Math.max(wettest, assembled) },
    notes: [
      `wood at ${showPercent(driest)} in the driest month, ${showPercent(wettest)} in the wettest, ${showPercent(assembled)} when put together${asked.moisture ? '' : ' (moisture= by a meter)'}`,
      ...(asked.driest && asked.wettest ? [] : [placeNote(where, asked)]),
      ...(air && !asked.temperature ? [`air at ${showTemperature(degrees, show.units)} (temperature=)`] : []),
      ...(assembled > wettest
        ? ['wetter now than it will be there: let it dry first, or every joint in it will open']
        : []),
    ],
  }
}

const placeNote = (where: PlaceName, { where: said }: YearAsked): string =>
  said
    ? `it stands ${PLACE_WORDS[where]}`
    : `taken to stand ${PLACE_WORDS[where]} (where=, or driest= and wettest=)`

const PLACE_WORDS: Readonly<Record<PlaceName, string>> = {
  heated: 'in a heated room',
  unheated: 'under an unheated roof',
  outdoors: 'outdoors under cover',
}
