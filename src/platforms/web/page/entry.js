import { cardOf } from './card.js'
import { element } from './element.js'

/**
 * @typedef {import('../entry.ts').EntryView} EntryView
 * @typedef {{
 *   readonly press: (line: string) => void,
 *   readonly again: (line: string) => void,
 *   readonly share: (id: string) => void,
 * }} Does
 */

/**
 * One line of the notebook: who asked what and when, the answer, and who sees it.
 *
 * @param {EntryView} entry
 * @param {Does} does
 */
export function entryOf(entry, does) {
  const line = element(
    'button',
    { type: 'button', class: 'line', title: 'Put this line back, to change it' },
    [
      element('span', { class: 'unseen' }, ['Change this line: ']),
      element('code', { class: 'asked' }, [entry.line]),
    ],
  )
  line.addEventListener('click', () => does.again(entry.line))
  return element(
    'article',
    {
      class: entry.isShared ? 'entry' : 'entry own',
      'data-id': entry.id,
      'aria-label': `${entry.name} asked`,
    },
    [
      element('div', { class: 'margin' }, [
        element('bdi', { class: 'name' }, [entry.name]),
        timeOf(entry.at),
      ]),
      element('div', { class: 'page' }, [line, ...cardOf(entry.card, does.press), seenBy(entry, does)]),
    ],
  )
}

/**
 * A line that waits for its answer.
 *
 * @param {string} name
 * @param {string} line
 */
export const pendingOf = (name, line) =>
  element('article', { class: 'entry own pending', 'aria-label': `${name} asks`, 'aria-busy': 'true' }, [
    element('div', { class: 'margin' }, [element('bdi', { class: 'name' }, [name])]),
    element('div', { class: 'page' }, [
      element('p', { class: 'line' }, [element('code', { class: 'asked' }, [line])]),
      element('p', { class: 'label' }, ['Working it out']),
    ]),
  ])

/**
 * Who sees the entry, and for what is still the asker's alone the way to show it.
 *
 * @param {EntryView} entry
 * @param {Does} does
 */
function seenBy({ id, isMine, isShared }, { share }) {
  if (isShared) {
    const whose = isMine ? 'Everybody here sees this' : 'Shown to everybody here'
    return element('p', { class: 'seen', tabindex: -1 }, [whose])
  }
  const button = element('button', { type: 'button' }, ['Show to all'])
  button.addEventListener('click', () => share(id))
  return element('p', { class: 'seen' }, ['Only you see this ', button])
}

/** @param {string} at */
function timeOf(at) {
  const date = new Date(at)
  const isToday = date.toDateString() === new Date().toDateString()
  const time = date.toLocaleTimeString(undefined, { hour: '2-digit', minute: '2-digit' })
  const day = isToday ? '' : `${date.toLocaleDateString(undefined, { day: 'numeric', month: 'short' })}, `
  return element('time', { datetime: at }, [day + time])
}
