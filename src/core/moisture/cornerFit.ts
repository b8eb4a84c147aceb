import { type Length, minus, plus, times, ZERO } from '../measure/length.ts'
import { type Film, filmBetween } from './film.ts'
import { type Movement, type MovementUnknown, movement } from './movement.ts'
import type { Cut, Species } from './species.ts'

/** Percent of moisture in the wood when the box is put together, and in the driest and the wettest time of the year. */
export interface YearOfMoisture {
  readonly assembled: number
  readonly driest: number
  readonly wettest: number
}

/** A captured corner as planned, its paint, and the year it has to live through. */
export interface CornerFitRequest {
  /** Gap at each end of the corner stile, cut at `assembled`, before paint. */
  readonly fit: Length
  /** Face width of the rails, which run across the gap. */
  readonly width: Length
  readonly species: Species
  readonly cut: Cut
  readonly moisture: YearOfMoisture
  /** Coats on every face. */
  readonly coats: number
  readonly film: Film
  /** What is left in the tightest month so that a hand can slide it. */
  readonly pushFit: Length
}

/** Whether it slides: all year; not in the wettest month; not even in the driest, though bare it would; never at all. */
export type Fits = 'always' | 'dry only' | 'unpainted only' | 'never'

export interface CornerFit {
  readonly status: 'reckoned'
  readonly fits: Fits
  /** Gap at each end in the driest month under thin coats, and in the wettest under thick ones; negative where it binds. */
  readonly loosest: Length
  readonly tightest: Length
  /** The fit at each end that leaves the push fit in the wettest month, and the three things it is made of. */
  readonly allowance: Length
  readonly film: Length
  readonly growth: Length
  readonly pushFit: Length
  /** What the year moves the gap by at each end, driest to wettest. */
  readonly seasonal: Length
  /** What to take off the corner stile's length, over both its ends, beyond the fit it has; 0 where it has enough. */
  readonly takeFrom: { readonly part: 'corner stile'; readonly dimension: 'length'; readonly amount: Length }
  /** One of the moistures is outside 6 to 14 %, where growth is less even. */
  readonly beyond: boolean
  readonly fromMemory: boolean
}

/**
 * The gap at each end of a captured corner stile, which goes up and down with the end panel between the two rails of the side
 * frame. Wood along the grain stays, so the stile keeps its length; the rails lie across the gap. The worst end is the upper
 * one: the end stands on its own bottom rail, which may swell downward and lift the stile by the whole of its growth, while
 * the top rail of the side swells down to meet it. So each end has to have both faces' paint, the growth of TWO rails and the
 * push fit. Cut it from the stile, never from a rail, which would move the frame. Unknown as for movement.
 */
export function cornerFit(request: CornerFitRequest): CornerFit | MovementUnknown {
  checkYear(request.moisture)
  const wet = railMovement(request, request.moisture.wettest)
  const dry = railMovement(request, request.moisture.driest)
  if (wet.status === 'unknown') return wet
  if (dry.status === 'unknown') return dry
  const { fit, coats, film, pushFit } = request
  const [growth, shrinkage] = [times(wet.change, 2), times(dry.change, 2)]
  const [thick, thin] = [filmBetween(coats, film.high), filmBetween(coats, film.low)]
  const gaps = {
    loosest: minus(fit, thin, shrinkage),
    tightest: minus(fit, thick, growth),
    driest: minus(fit, thick, shrinkage),
    bare: minus(fit, shrinkage),
  }
  const allowance = plus(thick, growth, pushFit)
  return {
    status: 'reckoned',
    fits: verdict(gaps),
    loosest: gaps.loosest,
    tightest: gaps.tightest,
    allowance,
    film: thick,
    growth,
    pushFit,
    seasonal: minus(growth, shrinkage),
    takeFrom: { part: 'corner stile', dimension: 'length', amount: beyondFit(allowance, fit) },
    beyond: wet.beyond || dry.beyond,
    fromMemory: wet.fromMemory,
  }
}

function checkYear({ assembled, driest, wettest }: YearOfMoisture): void {
  if (driest <= assembled && assembled <= wettest) return
  throw new RangeError(
    `moisture must go driest, assembled, wettest in order: ${driest}, ${assembled}, ${wettest}`,
  )
}

const railMovement = (request: CornerFitRequest, to: number): Movement | MovementUnknown =>
  movement({ ...request, from: request.moisture.assembled, to })

type Gaps = Readonly<Record<'tightest' | 'driest' | 'bare', Length>>

function verdict({ tightest, driest, bare }: Gaps): Fits {
  if (tightest >= 0) return 'always'
  if (driest >= 0) return 'dry only'
  return bare >= 0 ? 'unpainted only' : 'never'
}

const beyondFit = (allowance: Length, fit: Length): Length =>
  allowance > fit ? times(minus(allowance, fit), 2) : ZERO
