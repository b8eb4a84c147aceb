import { type Length, minus, nanometres, plus, times } from '../measure/length.ts'

/** Sizes that halved corners depend on; `fit` is what a slot is wider than the sheet. */
export interface Halved {
  readonly sheet: Length
  readonly strip: Length
  readonly width: Length
  readonly fit: Length
}

/** What a halved corner is made of. */
export interface Halving {
  /** How far each panel runs past the one that it crosses: a strip's width, common practice, never less than a frame is proud. */
  readonly tail: Length
  /** Of every slot: the sheet and the play. */
  readonly slot: Length
  /** Half the play, rounded up: how far a slot reaches in past the inner face of the panel that stands in it. */
  readonly slack: Length
}

/**
 * Halved corners: every panel runs past its neighbours and has a slot over each, half the height deep: in the ends from the top,
 * in the sides from below, so that a side drops over both ends. Slots are as wide as the sheet really is and the play; a panel
 * stands in the middle of its slot. The frames lie between the tails of the panels that cross, clear of the slots.
 */
export function halve({ sheet, strip, width, fit }: Halved): Halving {
  return {
    tail: Math.max(width, strip) as Length,
    slot: plus(sheet, fit),
    slack: nanometres(Math.ceil(fit / 2)),
  }
}

interface Inside {
  readonly length: Length
  readonly width: Length
}

/** The lengths that halved corners give to panels and strips, as sizeFraming wants them. */
export function halvedFraming(frame: Halved & { readonly inside: Inside }) {
  const { inside, sheet, width } = frame
  const { tail, slack } = halve(frame)
  const past = times(plus(sheet, tail), 2)
  const covered = plus(tail, sheet, slack, width)
  return {
    sidePanel: plus(inside.length, past),
    endPanel: plus(inside.width, past),
    sideRail: minus(inside.length, times(slack, 2)),
    endRail: minus(inside.width, times(slack, 2)),
    endCover: covered,
    sideCover: covered,
  }
}
