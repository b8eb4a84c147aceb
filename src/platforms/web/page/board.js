import { planOf } from './card.js'
import { byId, element } from './element.js'

/** @typedef {import('../posted.ts').Posted} Posted */

/**
 * What stands for everybody in the channel, over its plan.
 *
 * @param {(line: string) => void} press
 */
export function createBoard(press) {
  const board = byId('board', HTMLElement)
  /** @type {Map<string, HTMLElement>} */
  const known = new Map()

  /** Shows a notice in the place of the one of its name. @param {Posted} posted */
  const put = ({ notice, at, card }) => {
    const shown = element('article', { class: 'card posted' }, [
      element('p', { class: 'label' }, ['Up for everybody, ', timeOf(at)]),
      ...planOf(card, press),
    ])
    const before = known.get(notice)
    if (before) {
      for (const [place, folded] of before.querySelectorAll('details').entries())
        shown.querySelectorAll('details')[place]?.toggleAttribute('open', folded.open)
      before.replaceWith(shown)
    } else board.append(shown)
    known.set(notice, shown)
  }
  return {
    put,
    /** Everything that stands there, in the place of what stood there. @param {readonly Posted[]} all */
    open: (all) => {
      board.replaceChildren()
      known.clear()
      all.forEach(put)
    },
  }
}

/** @param {string} at */
const timeOf = (at) =>
  element('time', { datetime: at }, [
    new Date(at).toLocaleString(undefined, { weekday: 'short', hour: '2-digit', minute: '2-digit' }),
  ])
