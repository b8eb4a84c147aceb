import { tableOf } from './cardTable.js'
import { element } from './element.js'

/**
 * @typedef {import('../card.ts').Card} Card
 * @typedef {import('../card.ts').CardPicture} CardPicture
 * @typedef {import('../card.ts').CardFile} CardFile
 * @typedef {(line: string) => void} Press
 */

/** Notes that are shown without a tap beside tables or pictures. */
const NOTES_SHOWN = 3
/** Characters of an answer that is set large. */
const SHORT = 90

/** What heads a refusal, by its kind. */
const KINDS = { unsafe: 'Not safe', fault: 'Our fault', ambiguous: 'Which one?' }

/**
 * The parts of a reply in the order that every platform keeps. The answer is a heading that can be given the focus.
 *
 * @param {Card} card
 * @param {Press} press sends a line, as if it were typed
 * @returns {readonly HTMLElement[]}
 */
export function cardOf(card, press) {
  if (!card.ok) return refusalOf(card)
  const { answer, cautions, tables, pictures, notes, files, buttons } = slotsOf(card, press)
  return [...answer, ...cautions, ...tables, ...pictures, ...notes, ...files, ...buttons]
}

/**
 * The same for the plan that stays beside the notebook: what is looked up again and again stands before the cautions,
 * which every answer to a question about it begins with.
 *
 * @param {Card} card
 * @param {Press} press
 * @returns {readonly HTMLElement[]}
 */
export function planOf(card, press) {
  if (!card.ok) return [element('p', {}, [card.error])]
  const { answer, cautions, tables, pictures, notes, files, buttons } = slotsOf(card, press)
  return [...answer, ...pictures, ...tables, ...buttons, ...files, ...cautions, ...notes]
}

/**
 * @param {Extract<Card, { ok: true }>} card
 * @param {Press} press
 */
function slotsOf({ answer, cautions, tables, pictures, notes, files, buttons }, press) {
  const isFolded = notes.length > NOTES_SHOWN && tables.length + pictures.length > 0
  const size = answer.length > SHORT ? 'answer long' : 'answer'
  return {
    answer: [element('h3', { class: size, tabindex: -1 }, numbersBold(answer))],
    cautions: cautions.length > 0 ? [cautionsOf(cautions)] : [],
    tables: tables.map(tableOf),
    pictures: pictures.map(pictureOf),
    notes: notes.length === 0 ? [] : [isFolded ? foldedNotes(notes) : notesOf(notes)],
    files:
      files.length > 0 ? [element('ul', { class: 'files', 'aria-label': 'Files' }, files.map(fileOf))] : [],
    buttons: buttons.length > 0 ? [buttonsOf(buttons, press)] : [],
  }
}

/** @param {{ kind: string, error: string }} refusal */
function refusalOf({ kind, error }) {
  const head = Object.hasOwn(KINDS, kind) ? KINDS[/** @type {keyof typeof KINDS} */ (kind)] : 'Not answered'
  return [
    element('div', { class: kind === 'unsafe' ? 'refusal unsafe' : 'refusal' }, [
      element('p', { class: 'label' }, [head]),
      element('h3', { class: 'answer long', tabindex: -1 }, [error]),
    ]),
  ]
}

/**
 * The answer with its numbers in bold, fractions set as fractions.
 *
 * @param {string} answer
 */
const numbersBold = (answer) =>
  answer
    .split(/(\d+x\d+(?: \d+ ft)?|\d+(?:[.,]\d+)*(?: \d+\/\d+|\/\d+)?)/u)
    .map((part, place) => (place % 2 === 0 ? part : element('b', {}, withFraction(part))))

/** @param {string} number */
const withFraction = (number) =>
  number
    .split(/(\d+\/\d+)/u)
    .map((part, place) => (place % 2 === 0 ? part : element('span', { class: 'fraction' }, [part])))

/** @param {readonly string[]} cautions */
const cautionsOf = (cautions) =>
  element('div', { class: 'cautions' }, [
    element('h4', { class: 'label' }, ['Caution']),
    element(
      'ul',
      {},
      cautions.map((text) => element('li', {}, [text])),
    ),
  ])

/** @param {CardPicture} picture */
function pictureOf({ name, alt, width, height, content }) {
  if (content === undefined) return element('p', { class: 'picture-words' }, [alt])
  const address = `/kept/${content}/${encodeURIComponent(`${name}.png`)}`
  const image = element('img', { src: address, alt, width, height, loading: 'lazy', decoding: 'async' })
  return element('figure', {}, [
    element('a', { href: address, target: '_blank', rel: 'noopener', title: 'Open the picture alone' }, [
      image,
    ]),
  ])
}

/** @param {readonly string[]} notes */
const notesOf = (notes) =>
  element(
    'ul',
    { class: 'notes', 'aria-label': 'Notes' },
    notes.map((note) => element('li', {}, [note])),
  )

/** @param {readonly string[]} notes */
const foldedNotes = (notes) =>
  element('details', { class: 'folded' }, [
    element('summary', {}, [`What this goes by (${notes.length})`]),
    notesOf(notes),
  ])

/** @param {CardFile} file */
const fileOf = ({ name, bytes, content }) =>
  element('li', {}, [
    element('a', { href: `/kept/${content}/${encodeURIComponent(name)}`, download: name }, [
      element('span', { class: 'file-name' }, [name]),
      ` ${sizeOf(bytes)}`,
    ]),
  ])

/** @param {number} bytes */
const sizeOf = (bytes) => (bytes < 1000 ? `${bytes} bytes` : `${Math.ceil(bytes / 1000)} kB`)

/**
 * @param {readonly { label: string, line: string }[]} buttons
 * @param {Press} press
 */
const buttonsOf = (buttons, press) =>
  element(
    'div',
    { class: 'buttons' },
    buttons.map(({ label, line }) => buttonOf(label, line, press)),
  )

/**
 * A button that sends its line, which it shows, so that it can be typed the next time.
 *
 * @param {string} label
 * @param {string} line
 * @param {Press} press
 */
export function buttonOf(label, line, press) {
  const button = element('button', { type: 'button', class: 'act' }, [
    element('b', { class: 'act-label' }, [label]),
    ' ',
    element('code', { class: 'act-line' }, [line]),
  ])
  button.addEventListener('click', () => press(line))
  return button
}
