import { element } from './element.js'

/** @typedef {import('../../completions.ts').Completion} Completion */

/** Typing faster than this, in ms, is not interrupted by a look at what may come next. */
const PAUSE = 90

/**
 * Makes a text field an editable combobox with a list of what may come next, after the pattern of the WAI-ARIA Authoring
 * Practices: the focus stays in the field; the arrow keys choose, Enter or Tab takes what is chosen, Escape closes the list.
 *
 * @param {HTMLInputElement} field
 * @param {HTMLElement} list
 * @param {(line: string, signal: AbortSignal) => Promise<readonly Completion[]>} complete
 */
export function createCombobox(field, list, complete) {
  /** @type {readonly Completion[]} */
  let offered = []
  let chosen = -1
  let asking = new AbortController()
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let waiting

  /** @param {number} place */
  const choose = (place) => {
    chosen = place
    for (const [index, option] of [...list.children].entries())
      option.setAttribute('aria-selected', String(index === place))
    const option = list.children[place]
    if (option) {
      field.setAttribute('aria-activedescendant', option.id)
      option.scrollIntoView({ block: 'nearest' })
    } else field.removeAttribute('aria-activedescendant')
  }
  /** @param {readonly Completion[]} completions */
  const show = (completions) => {
    offered = completions
    list.replaceChildren(...completions.map(optionOf))
    list.hidden = completions.length === 0
    field.setAttribute('aria-expanded', String(!list.hidden))
    choose(-1)
  }
  const close = () => {
    clearTimeout(waiting)
    asking.abort()
    show([])
  }
  const look = async () => {
    asking.abort()
    asking = new AbortController()
    const { signal } = asking
    const line = field.value
    const found = await complete(line, signal).catch(() => [])
    if (!signal.aborted && field.value === line && document.activeElement === field) show(found)
  }
  const lookSoon = () => {
    clearTimeout(waiting)
    waiting = setTimeout(look, PAUSE)
  }
  /** @param {number} place */
  const take = (place) => {
    const taken = offered[place]
    if (!taken) return
    const end = taken.text.endsWith('=') ? '' : ' '
    field.value = field.value.slice(0, taken.from) + taken.text + end
    field.focus()
    close()
    lookSoon()
  }
  /** @param {number} step */
  const move = (step) => {
    const last = offered.length - 1
    if (chosen < 0) choose(step > 0 ? 0 : last)
    else choose(chosen + step > last ? 0 : chosen + step < 0 ? last : chosen + step)
  }
  field.addEventListener('input', lookSoon)
  field.addEventListener('blur', () => setTimeout(() => list.contains(document.activeElement) || close(), 0))
  field.addEventListener('keydown', (event) => {
    if (event.isComposing) return
    const isOpen = !list.hidden
    if (event.key === 'ArrowDown') isOpen ? move(1) : void look()
    else if (event.key === 'ArrowUp' && isOpen) move(-1)
    else if (event.key === 'Escape') {
      close()
      if (!isOpen) return
    } else if ((event.key === 'Enter' || (event.key === 'Tab' && !event.shiftKey)) && isOpen && chosen >= 0)
      take(chosen)
    else return
    event.preventDefault()
  })
  // The pointer must not take the focus out of the field.
  list.addEventListener('pointerdown', (event) => event.preventDefault())
  list.addEventListener('click', (event) => {
    const option = event.target instanceof Element ? event.target.closest('[role=option]') : null
    if (option) take([...list.children].indexOf(option))
  })
  return { close }
}

/**
 * @param {Completion} completion
 * @param {number} place
 */
const optionOf = ({ text, says }, place) =>
  element('div', { role: 'option', id: `suggestion-${place}`, 'aria-selected': 'false' }, [
    element('code', {}, [text]),
    ...(says === '' ? [] : [' ', element('span', {}, [says])]),
  ])
