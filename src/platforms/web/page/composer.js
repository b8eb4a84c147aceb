import { createCombobox } from './combobox.js'
import { byId } from './element.js'

/** Lines that the up arrow brings back. */
const REMEMBERED = 50

/**
 * Where people type: one line with what may come next, or a list of many lines.
 *
 * @param {{
 *   readonly send: (line: string) => Promise<boolean>,
 *   readonly complete: (line: string, signal: AbortSignal) => Promise<readonly import('../../completions.ts').Completion[]>,
 * }} does `send` says whether the line was taken
 */
export function createComposer({ send, complete }) {
  const form = byId('composer', HTMLFormElement)
  const line = byId('line', HTMLInputElement)
  const list = byId('list', HTMLTextAreaElement)
  const many = byId('many', HTMLButtonElement)
  const unsent = byId('unsent', HTMLElement)
  const combobox = createCombobox(line, byId('suggestions', HTMLElement), complete)
  /** @type {string[]} */
  const sent = []
  let back = 0

  const isList = () => !list.hidden
  const field = () => (isList() ? list : line)
  /** @param {boolean} isMany */
  const setMany = (isMany) => {
    combobox.close()
    if (isMany === isList()) return
    const text = field().value
    line.hidden = isMany
    list.hidden = !isMany
    many.setAttribute('aria-pressed', String(isMany))
    field().value = isMany ? text : text.replace(/\s*\n\s*/gu, ' ')
    field().focus()
  }
  /** @param {string} text */
  const fill = (text) => {
    setMany(text.includes('\n'))
    field().value = text
    field().focus()
    field().setSelectionRange(text.length, text.length)
  }
  /** @param {number} step */
  const recall = (step) => {
    back = Math.min(Math.max(back + step, 0), sent.length)
    line.value = sent[sent.length - back] ?? ''
  }
  const submit = async () => {
    const text = field().value.trim()
    if (text === '') return
    combobox.close()
    field().value = ''
    unsent.textContent = ''
    back = 0
    if (sent.at(-1) !== text) sent.push(text)
    if (sent.length > REMEMBERED) sent.shift()
    if (await send(text)) setMany(false)
    // What was typed since is not thrown away for it.
    else if (field().value === '') fill(text)
  }
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    void submit()
  })
  many.addEventListener('click', () => setMany(!isList()))
  line.addEventListener('paste', (event) => {
    const pasted = event.clipboardData?.getData('text/plain') ?? ''
    if (!pasted.trim().includes('\n')) return
    event.preventDefault()
    const { value, selectionStart, selectionEnd } = line
    fill(
      value.slice(0, selectionStart ?? value.length) +
        pasted.trim() +
        value.slice(selectionEnd ?? value.length),
    )
  })
  line.addEventListener('keydown', (event) => {
    if (event.defaultPrevented || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return
    if (event.key === 'ArrowUp') {
      event.preventDefault()
      recall(1)
    }
  })
  list.addEventListener('keydown', (event) => {
    if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) form.requestSubmit()
  })
  return {
    fill,
    focus: () => field().focus(),
    blur: () => field().blur(),
    /** @param {string} why */
    complain: (why) => {
      unsent.textContent = why
    },
  }
}
