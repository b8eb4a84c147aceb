import { byId } from './element.js'
import { entryOf, pendingOf } from './entry.js'

/** @typedef {import('./entry.js').EntryView} EntryView */

/** Within so many pixels of its end, somebody is reading the end of the page. */
const NEAR = 160

/** A page that is open for days keeps so many; a reload finds the newest again. */
const MOST = 300

/**
 * The entries on the page, oldest first.
 *
 * @param {import('./entry.js').Does} does
 */
export function createNotebook(does) {
  const entries = byId('entries', HTMLElement)
  const begin = byId('begin', HTMLElement)
  const fresh = byId('fresh', HTMLButtonElement)
  const said = byId('said', HTMLElement)
  /** @type {Map<string, { readonly article: HTMLElement, readonly shown: string }>} */
  const known = new Map()
  let isFirst = true

  const isNearEnd = () => document.documentElement.scrollHeight - window.innerHeight - window.scrollY < NEAR
  const countUp = () => {
    begin.hidden = entries.childElementCount > 0
  }
  /** @param {HTMLElement} article @param {ScrollBehavior} [behavior] */
  const goTo = (article, behavior = 'auto') => article.scrollIntoView({ block: 'start', behavior })

  /** @param {string} id */
  const drop = (id) => {
    known.get(id)?.article.remove()
    known.delete(id)
  }

  /** Shows an entry at the end, or in place of the one it was; says whether it is a new one. @param {EntryView} entry */
  const put = (entry) => {
    const shown = JSON.stringify(entry)
    const before = known.get(entry.id)
    if (before?.shown === shown) return false
    const article = entryOf(entry, does)
    if (before) before.article.replaceWith(article)
    else entries.append(article)
    known.set(entry.id, { article, shown })
    for (const id of [...known.keys()].slice(0, Math.max(0, known.size - MOST))) drop(id)
    countUp()
    return !before
  }
  /** @param {string} id */
  const remove = (id) => {
    drop(id)
    countUp()
  }
  /** Tells those who do not see the page what has come. @param {EntryView} entry */
  const announce = ({ name, isMine, card }) => {
    const what = card.ok ? card.answer : card.error
    const count = card.ok && card.cautions.length > 0 ? `. ${counted(card.cautions.length, 'caution')}` : ''
    said.textContent = `${isMine ? 'Answer' : `${name} shows`}: ${what}${count}`
  }
  /** @param {ScrollBehavior} [behavior] */
  const showEnd = (behavior) => {
    const last = entries.lastElementChild
    if (last instanceof HTMLElement) goTo(last, behavior)
    fresh.hidden = true
  }
  fresh.addEventListener('click', () => {
    showEnd()
    focusOn(entries.lastElementChild)
  })
  const seen = () => {
    if (isNearEnd()) fresh.hidden = true
  }
  window.addEventListener('scroll', seen, { passive: true })

  return {
    /** @param {readonly EntryView[]} history */
    open: (history) => {
      const wasNearEnd = isNearEnd()
      const ids = new Set(history.map(({ id }) => id))
      for (const id of [...known.keys()]) if (!ids.has(id)) remove(id)
      const isMore = history.filter(put).length > 0
      countUp()
      if (isFirst) showEnd('instant')
      else if (isMore && wasNearEnd) showEnd()
      isFirst = false
    },
    /** What somebody else showed, or this person asked on another page. @param {EntryView} entry */
    hear: (entry) => {
      const wasNearEnd = isNearEnd()
      if (!put(entry)) return
      if (!entry.isMine) announce(entry)
      if (wasNearEnd) showEnd()
      else fresh.hidden = false
    },
    /** @param {readonly string[]} ids */
    forget: (ids) => {
      for (const id of ids) remove(id)
    },
    /** Shows that a line is on its way; gives what takes it away again. @param {string} name @param {string} line */
    await: (name, line) => {
      const pending = pendingOf(name, line)
      entries.append(pending)
      countUp()
      goTo(pending)
      return () => {
        pending.remove()
        countUp()
      }
    },
    /** The answer to a line of one's own, with its top in view. @param {EntryView} entry @param {boolean} isFocused */
    answer: (entry, isFocused) => {
      put(entry)
      announce(entry)
      const article = known.get(entry.id)?.article
      if (!article) return
      goTo(article)
      fresh.hidden = true
      if (isFocused) focusOn(article)
    },
    /** What was just shown to all. @param {EntryView} entry */
    shared: (entry) => {
      put(entry)
      said.textContent = 'Everybody here sees it now'
      const seen = known.get(entry.id)?.article.querySelector('.seen')
      if (seen instanceof HTMLElement) seen.focus({ preventScroll: true })
    },
    /** Everything off the page, for another channel. */
    clear: () => {
      for (const id of [...known.keys()]) remove(id)
      isFirst = true
    },
  }
}

/** @param {Element | null} article */
function focusOn(article) {
  const heading = article?.querySelector('h3')
  if (heading) heading.focus({ preventScroll: true })
}

/** @param {number} count @param {string} what */
const counted = (count, what) => `${count} ${what}${count === 1 ? '' : 's'}`
