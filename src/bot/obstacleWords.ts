import { inches, minus, ZERO } from '../core/measure/length.ts'
import type { CornerWarning } from '../core/panelling/cornerWarning.ts'
import type { SurroundObstacle } from '../core/panelling/surroundObstacle.ts'
import type { Show } from './show.ts'

/** A strip thinner than this is no frame, so it is never advised: 1/8 in. */
const THINNEST_STRIP = inches(1, 8)

/** Why a surround cannot be built, and what would do. */
export function obstacleSentence(obstacle: SurroundObstacle, show: Show): string {
  switch (obstacle.kind) {
    case 'notPositive':
    case 'negative':
      return `the ${obstacle.what} comes out as ${typeof obstacle.value === 'number' && obstacle.value <= 0 ? 'nothing or less' : 'too small'}; give a larger one`
    case 'noLip': {
      const wider = `strips wider than ${show.length(obstacle.widthAbove, 'cover', true)} (width= or board=)`
      const thinner =
        obstacle.stripBelow > THINNEST_STRIP
          ? `strips thinner than ${show.length(obstacle.stripBelow, 'into', true)} (strip=), or `
          : ''
      const short = minus(ZERO, obstacle.lip)
      const reach = short === 0 ? 'only just reach' : `end ${show.length(short, 'mark', true)} short of`
      return `no captured corner: the corner stiles would ${reach} the side panels. Use ${thinner}${wider}, or corner=cleated`
    }
    case 'noHold':
      return `the stiles of the ${obstacle.face} face would hang past their own panel; use strips wider than ${show.length(obstacle.widthAbove, 'cover')} (width= or board=)`
    case 'tooLow':
      return `${obstacle.face === 'front' ? 'front' : 'height'} ${show.length(obstacle.height)} leaves no stile between the two rails; it takes more than ${show.length(obstacle.heightAbove, 'cover')}, or narrower strips (width=)`
    case 'tooNarrow':
      return `the ${obstacle.face} face shows ${show.length(obstacle.shows)}, and its two stiles take all of that; it takes more than ${show.length(obstacle.showsAbove, 'cover')}, or narrower strips (width=)`
    case 'noRoomForBlocks':
      return `two corner blocks would meet inside; the inside ${obstacle.along} has to be at least ${show.length(obstacle.inside, 'cover')}, or use corner=captured`
    case 'noRoomForBrace':
      return `no brace fits the ${obstacle.face} face: it takes strips narrower than ${show.length(obstacle.widthBelow, 'into')} (width=), or braces=none`
    default:
      return extraSentence(obstacle, show)
  }
}

type Plain =
  | 'notPositive'
  | 'negative'
  | 'noLip'
  | 'noHold'
  | 'tooLow'
  | 'tooNarrow'
  | 'noRoomForBlocks'
  | 'noRoomForBrace'

/** The same for a front of its own, a lid, a bottom and a cord notch. */
function extraSentence(obstacle: Exclude<SurroundObstacle, { readonly kind: Plain }>, show: Show): string {
  switch (obstacle.kind) {
    case 'frontTall':
      return `the front is no higher than the box: front= takes ${show.length(obstacle.height, 'into')} at most, or raise height=`
    case 'lidOnSlope':
      return `a lid lies level: it takes front=${show.mark(obstacle.height)}${show.unit}, as high as the box, or lid=none`
    case 'notchInRim':
      return 'the rim of an overlapping lid is where a finger notch would be; use handle=strip, or lid=inset'
    case 'noInterior':
      return `bottom and lid leave nothing inside: it takes a ${obstacle.face === 'front' ? 'front' : 'box'} higher than ${show.length(obstacle.heightAbove, 'cover')} (${obstacle.face === 'front' ? 'front' : 'height'}=), or leave one of them out`
    case 'noRoomForCleats':
      return `the strips under lid or bottom would meet: the inside ${obstacle.along} has to be more than ${show.length(obstacle.insideAbove, 'cover')}; add clearance=, or thinner strips (strip=)`
    case 'drainWide':
      return `drain holes that wide run into each other or into the strips below; ${show.length(obstacle.diameterAtMost, 'into')} at most (drain=), or further apart (spacing=)`
    case 'noRoomForCord':
      return obstacle.heightAtMost > 0 && obstacle.widthAtMost > 0
        ? `the cord notch does not fit the ${obstacle.face} panel clear of its frame: ${show.length(obstacle.widthAtMost, 'into')} wide and ${show.length(obstacle.heightAtMost, 'into')} high at most (cord=), or another panel (cordin=)`
        : `the ${obstacle.face} panel has no room for that cord notch clear of its frame; make it narrower (cord=), or put it in another panel (cordin=)`
  }
}

/** What to look out for with corners that can be built, in one line. */
export function warningLine(warning: CornerWarning, show: Show): string {
  switch (warning.kind) {
    case 'lipSmall':
      return `lip only ${show.length(warning.lip, 'mark', true)}: under ${show.length(warning.least)} it soon splits; wider or thinner strips help`
    case 'noFit':
      return 'no gap at the corners: after paint or in damp weather the panels will not go together; allow some (fit=)'
    case 'blockMeetsObject':
      return `the corner blocks stand where the object is; allow ${show.length(warning.clearanceAtLeast, 'cover')} on each side (clearance=)`
  }
}
