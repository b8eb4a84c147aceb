import { roleOf } from './role.ts'
import { isStockWord } from './stockWords.ts'

/** Words that say what one length is: a bare fraction before them can be no lumber and has lost no space. */
export const NAMES_OF_LENGTHS =
  /^(?:kerf|kerfs|blade|blades|gap|gaps|clearance|margin|overhang|reveal|lip|overlap|spacer|shim|groove|grooves|dado|dados|rabbet|rabbets|rebate|rebates|strips?|slats?|shelf|shelves|spacing|tongue|chamfer|roundover|radius|setback|inset|allowance|trim|dowels?|holes?|brads?|nails?|screws?|bits?|tape|mark|tall|thick|saw)$/u

const THINGS =
  /^(?:pots?|box|boxes|bin|crate|planter|generator|heater|speaker|server|cabinet|drawers?|doors?|frames?|legs?|rails?|stiles?|braces?|panels?|parts?|sides?|ends?|tops?|bottoms?|fronts?|backs?|base|lid|table|bench|bed|unit|air|conditioner|heat|pump|plants?|tubs?|bucket|barrel|jars?|wall|floor|area|room|space|slot|step|size|please|thanks|wide|square|round|and|or|so|to|long|exactly|exact|actual|true|measured|real|only|just|is|it|the|an?|of|for|from|on|my)$/u

/** True for a word that may follow a bare number without being mistaken for its unit. */
export const isKnownThing = (word: string): boolean =>
  NAMES_OF_LENGTHS.test(word) || THINGS.test(word) || roleOf(word) || isStockWord(word)
