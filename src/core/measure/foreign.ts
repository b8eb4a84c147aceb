/** What is measured in units that are no length, by the words people use for them. */
const WORDS: Readonly<Record<string, string>> = {
  'a volume':
    'cup cups gal gals gallon gallons litre litres liter liters lt ltr ltrs ml cl millilitre millilitres pint pints quart quarts qt qts tsp tbsp teaspoon teaspoons tablespoon tablespoons bushel bushels cc barrel barrels bf bdft',
  'a weight':
    'lb lbs pound pounds kg kgs kilo kilos kilogram kilograms g gram grams gm oz ozs ounce ounces ton tons tonne tonnes stone stones mg',
  'a time':
    'second seconds sec secs minute minutes hour hours hr hrs day days week weeks month months year years pm am',
  money: 'dollar dollars buck bucks cent cents euro euros pound-sterling quid usd eur gbp pence p',
  'a temperature': 'c f celsius fahrenheit centigrade kelvin k',
  'a pressure': 'psi psf pa kpa mpa',
  'a power or a voltage': 'v volt volts watt watts kw hp amp amps horsepower',
  'a percentage': 'percent pct',
  'an area': 'sqft sqm sf acre acres hectare hectares sqin',
  'a distance, not a size of a board':
    'mile miles mi km kms kilometre kilometres kilometer kilometers furlong furlongs league leagues parsec parsecs lightyear lightyears chain chains rod rods fathom fathoms mph kph nm nanometre nanometres nanometer nanometers',
  'a size on a screen or in print': 'px pixel pixels em rem pica picas dpi',
}

const BY_WORD: ReadonlyMap<string, string> = new Map(
  Object.entries(WORDS).flatMap(([what, words]) => words.split(' ').map((word) => [word, what] as const)),
)

/** What a number before this word is, when it is no length (`a volume`); undefined for any other word. */
export const foreignOf = (word: string): string | undefined => BY_WORD.get(word)

/** Money and percent signs, which stand before or after a number. */
export const foreignSign = (sign: string): string | undefined =>
  sign === '%' ? 'a percentage' : /^[$£€¥¢₹]$/u.test(sign) ? 'money' : undefined
