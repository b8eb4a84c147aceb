import { findBoard } from '../stock/boards.ts'
import { type Board, REGIONS, type Region } from '../stock/stock.ts'
import type { Amount } from './amount.ts'
import { type Length, nanometres, toInches, toMillimetres } from './length.ts'
import type { Ambiguous, ReadingSettings, UnitSystem } from './reading.ts'
import { MM } from './unit.ts'
import { ambiguous, couldBe, decimalText, quoted, typed } from './wording.ts'
import Fraction from 'fraction.js'

/** A board found by its name: its real section. */
export interface BoardMatch {
  readonly status: 'read'
  readonly thickness: Length
  readonly width: Length
  readonly name: string
  /** The system of the name: `2x4` is said in inches, `90x45` in mm. */
  readonly units: UnitSystem
  readonly note: string
}

/** Words that change the section a name stands for, as the stock tables write them. */
const QUALIFIERS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    cls: 'CLS',
    par: 'PAR',
    pse: 'PAR',
    planed: 'PAR',
    regularised: 'regularised',
    regularized: 'regularised',
  }),
)

/** Names of this size or more are mm; smaller ones are the inch names of the trade. */
const METRIC = 13

/**
 * The board that `first x second` names where the person buys wood, or somewhere else when only one size there bears
 * the name. Asks where the name is turned round or means different sizes; undefined when it names no board.
 */
export function matchBoard(
  first: Amount,
  second: Amount,
  words: readonly string[],
  settings: ReadingSettings,
): BoardMatch | Ambiguous | undefined {
  const [a, b] = [nameOf(first), nameOf(second)]
  if (a === undefined || b === undefined) return undefined
  const metric = first.number.value.compare(METRIC) >= 0 && second.number.value.compare(METRIC) >= 0
  const qualifier = words.map((word) => QUALIFIERS.get(word)).find((word) => word !== undefined)
  if (qualifier) return qualified(a, b, qualifier, metric, settings, first, second)
  const own = lookUp(a, b, settings.region, settings)
  if (own) return boardRead(own, `${a}x${b}`, metric)
  const turned =
    first.number.value.compare(second.number.value) < 0 && lookUp(b, a, settings.region, settings)
  if (turned) return boardRead(turned, `${a}x${b}`, metric)
  return metric ? metricElsewhere(first, second, words, settings) : inchElsewhere(a, b, settings)
}

/** The figures of a name: a whole number, a decimal in mm, or quarters. */
function nameOf({ number, unit }: Amount): string | undefined {
  if (unit || number.fault || number.comma) return undefined
  if (number.form === 'fraction')
    return number.stroke ? `${number.stroke.over}/${number.stroke.under}` : number.value.toFraction()
  return number.form === 'mixed' ? undefined : decimalText(number.value)
}

const lookUp = (a: string, b: string, region: Region, { stock }: ReadingSettings): Board | undefined =>
  findBoard(`${a}x${b}`, region, stock)

function qualified(
  a: string,
  b: string,
  qualifier: string,
  metric: boolean,
  settings: ReadingSettings,
  first: Amount,
  second: Amount,
): BoardMatch | Ambiguous | undefined {
  const names = [`${a}x${b} ${qualifier}`, `${b}x${a} ${qualifier}`]
  const regions = [settings.region, ...REGIONS.filter((region) => region !== settings.region)]
  const board = regions
    .flatMap((region) => names.map((name) => findBoard(name, region, settings.stock)))
    .find((found) => found !== undefined)
  if (board) return boardRead(board, `${a}x${b} ${qualifier}`, metric)
  return metric ? asTyped(first, second, `${a}x${b}`) : undefined
}

/** A metric name says the real size; one from another region is taken when it can be nothing but a board. */
function metricElsewhere(
  first: Amount,
  second: Amount,
  words: readonly string[],
  settings: ReadingSettings,
): BoardMatch | undefined {
  const told = words.some((word) => METRIC_WORDS.test(word))
  const [a, b] = [nameOf(first) ?? '', nameOf(second) ?? '']
  const found = REGIONS.flatMap(
    (region) => lookUp(a, b, region, settings) ?? lookUp(b, a, region, settings) ?? [],
  )
  const [board] = found
  const real = [a, b].map(Number).sort((one, other) => one - other)
  const asNamed =
    board && toMillimetres(board.thickness) === real[0] && toMillimetres(board.width) === real[1]
  const same =
    asNamed && found.every((other) => other.thickness === board?.thickness && other.width === board?.width)
  if (board && same && (told || board.thickness < 50 * 1_000_000)) return boardRead(board, `${a}x${b}`, true)
  return told ? asTyped(first, second, `${a}x${b}`) : undefined
}

const METRIC_WORDS =
  /^(?:sawn|battens?|joists?|studs?|timber|carcassing|rough|treated|planed|dressed|framing|rails?|posts?|sleepers?)$/u

function asTyped(first: Amount, second: Amount, name: string): BoardMatch {
  const sides = [first, second]
    .map(({ number }) => nanometres(number.value.mul(MM.size).valueOf()))
    .sort((one, other) => one - other)
  const [thickness, width] = sides as [Length, Length]
  return {
    status: 'read',
    thickness,
    width,
    name,
    units: 'metric',
    note: `${name} read as the real size in mm`,
  }
}

/** An inch name that is no board here: turned round, or a board in another region only. */
function inchElsewhere(a: string, b: string, settings: ReadingSettings): Ambiguous | undefined {
  const turned = lookUp(b, a, settings.region, settings)
  const elsewhere = REGIONS.flatMap((region) => lookUp(a, b, region, settings) ?? [])
  const [other] = elsewhere
  if (!turned && !other) return undefined
  const size = `${a}ft x ${b}ft`
  if (turned)
    return couldBe(`${a}x${b}`, [`${b}x${a}`, size, `${a}in x ${b}in`], `${a}x${b} is no board here`)
  return ambiguous(
    `${quoted(`${a}x${b}`)} could be the board sold elsewhere as ${section(other as Board)}, or a size; write ${section(other as Board)}, ${a}in x ${b}in or ${size}`,
  )
}

const section = ({ thickness, width }: Board): string =>
  `${toMillimetres(thickness)}mm x ${toMillimetres(width)}mm`

function boardRead(board: Board, name: string, metric: boolean): BoardMatch {
  const { thickness, width } = board
  return {
    status: 'read',
    thickness,
    width,
    name,
    units: metric ? 'metric' : 'inch',
    note: noteOf(board, name),
  }
}

function noteOf({ thickness, width, region, aliasOf }: Board, name: string): string {
  const sold = aliasOf === undefined || aliasOf === name ? '' : `, sold as ${aliasOf}`
  const real =
    region === 'US'
      ? `${inchText(thickness)} x ${inchText(width)} in, dressed`
      : `${toMillimetres(thickness)} x ${toMillimetres(width)} mm`
  return `${name} taken as ${real}${sold}`
}

const inchText = (length: Length): string => typed(new Fraction(toInches(length)))
