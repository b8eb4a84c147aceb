import { createBoard } from './board.js'
import { buttonOf, planOf } from './card.js'
import { createComposer } from './composer.js'
import { createDoor, lastHere, remember } from './door.js'
import { byId, element } from './element.js'
import { createNotebook } from './notebook.js'
import { ask, completions, forget, listen, project, share, welcome } from './wire.js'

/** @typedef {import('./wire.js').Who} Who */

/** @type {Who} */
let who = { name: '', channel: '' }
let hasEntered = false
let leave = () => {}

/** On a touch screen the keyboard would hide the answer. */
const isTouched = matchMedia('(pointer: coarse)')

const composer = createComposer({
  send: (line) => say(line, isTouched.matches),
  complete: (line, signal) => completions(who, line, signal),
})
const notebook = createNotebook({
  press: (line) => void say(line, true),
  again: composer.fill,
  share: (id) =>
    void share(who, id).then(notebook.shared, (error) => composer.complain(`Not shown: ${error.message}`)),
})
const board = createBoard((line) => void say(line, true))
const door = createDoor({
  enter: (chosen) => enter(chosen),
  forget: async () => {
    const { count } = await forget(who)
    byId('said', HTMLElement).textContent = `${count} of your answers deleted`
  },
})

/**
 * Sends a line and shows its answer; says whether it was taken.
 *
 * @param {string} line
 * @param {boolean} isFocused the focus goes to the answer
 */
async function say(line, isFocused) {
  setView('book')
  if (isFocused) composer.blur()
  const arrived = notebook.await(who.name, line)
  try {
    const entry = await ask(who, line)
    arrived()
    notebook.answer(entry, isFocused)
    void showPlan()
    return true
  } catch (error) {
    arrived()
    composer.complain(`Not sent: ${error instanceof TypeError ? 'the room does not answer' : error}`)
    return false
  }
}

/** @param {Who} chosen */
function enter(chosen) {
  who = chosen
  hasEntered = true
  remember(chosen)
  byId('channel-shown', HTMLElement).textContent = chosen.channel
  byId('name-shown', HTMLElement).textContent = chosen.name
  document.title = `${chosen.channel} - battenbot`
  leave()
  notebook.clear()
  leave = listen(chosen, {
    history: (entries, posted) => {
      notebook.open(entries)
      board.open(posted)
      void showPlan()
    },
    entry: notebook.hear,
    posted: (posted) => {
      board.put(posted)
      const what = posted.card.ok ? posted.card.answer : posted.card.error
      byId('said', HTMLElement).textContent = `Up for everybody: ${what}`
    },
    changed: () => void showPlan(),
    forgotten: notebook.forget,
    lost: (isLost) => {
      byId('lost', HTMLElement).textContent = isLost ? 'The room does not answer; trying again.' : ''
    },
  })
  if (!isTouched.matches) composer.focus()
}

/** @type {NodeListOf<HTMLElement>} */
const views = document.querySelectorAll('.views button')

let planAsked = 0

/** Shows what the channel builds, unless something newer was asked for meanwhile. */
async function showPlan() {
  planAsked += 1
  const asked = planAsked
  const card = await project(who).catch(() => undefined)
  if (!card || asked !== planAsked) return
  const plan = byId('plan-card', HTMLElement)
  const isOpen = plan.querySelector('details')?.open ?? false
  plan.replaceChildren(...planOf(card, (line) => void say(line, true)))
  const folded = plan.querySelector('details')
  if (folded) folded.open = isOpen
}

/** How far down each view was read. @type {Record<string, number>} */
const readTo = {}

/** On a narrow screen, shows the notebook or the plan; on a wide one both are there. @param {string} view */
function setView(view) {
  const { dataset } = document.body
  if (dataset.view === view) return
  readTo[dataset.view ?? ''] = window.scrollY
  dataset.view = view
  for (const button of views) button.setAttribute('aria-pressed', String(button.dataset.view === view))
  window.scrollTo({ top: readTo[view] ?? 0, behavior: 'instant' })
}

for (const button of views) button.addEventListener('click', () => setView(button.dataset.view ?? ''))

byId('where', HTMLButtonElement).addEventListener('click', async () => {
  const { channels } = await welcome()
  door.open(who, channels, hasEntered)
})

const { channels, begin } = await welcome()
byId('begin', HTMLElement).replaceChildren(
  element('p', { class: 'answer' }, ['What do you build?']),
  element('p', {}, ['Type a line below, or begin with one of these.']),
  element(
    'div',
    { class: 'buttons' },
    begin.map(({ label, line }) => buttonOf(label, line, (chosen) => void say(chosen, true))),
  ),
)
const last = lastHere()
if (last.name && last.channel) enter({ name: last.name, channel: last.channel })
else door.open(last, channels, false)
