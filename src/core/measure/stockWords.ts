import { isMaterial } from './sheetThickness.ts'

/** Words that may stand in the name of a piece of stock without making it a sentence. */
const BOARD =
  /^(?:boards?|studs?|joists?|posts?|lumber|timbers?|planks?|beams?|rafters?|battens?|furring|strapping|sticks?|deck|decking|cedar|pine|fir|spruce|hemlock|oak|maple|poplar|walnut|cherry|ash|larch|redwood|whitewood|softwood|hardwood|treated|pt|pressure|kd|kiln|dried|spf|syp|df|select|clear|common|construction|framing|premium|no|grade|sawn|rough|carcassing|cls|par|pse|planed|regularised|regularized|dressed|dar|trim|fence|lengths?|rails?|sleepers?|nominal|stock|lvl)$/u

const SHEET =
  /^(?:sheets?|panels?|sheathing|subfloor|sanded|exterior|interior|marine|grade|underlayment|b|c|bb|bc|cd|ac|wbp|particle|board|boards|hardwood|softwood|veneer|veneered|core|shuttering|bs1088|moisture|resistant|green|mr|rated|t&g)$/u

const FILLERS =
  /^(?:of|an?|the|pieces?|pcs|pc|x|in|thick|long|full|whole|off|ea|each|qty|lengths?|at|footer|foot|sheet)$/u

/** True for a word that goes with a board: `stud`, `cedar`, `treated`. */
export const isBoardWord = (word: string): boolean => BOARD.test(word)
/** True for a word that goes with a sheet. */
const isSheetWord = (word: string): boolean => SHEET.test(word) || isMaterial(word)

/** Words that turn two small numbers into the feet of a sheet: `4x8 sheet`, `2x2 panel`. */
export const isPanelWord = (word: string): boolean => /^(?:sheets?|panels?)$/u.test(word) || isMaterial(word)

/** True for a word that the name of a piece of stock may have in it. */
export const isStockWord = (word: string): boolean =>
  isBoardWord(word) || isSheetWord(word) || FILLERS.test(word)
