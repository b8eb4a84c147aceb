import { byId, element } from './element.js'

/** @typedef {import('./wire.js').Who} Who */

/** Who this browser was last, and where; either may be missing. @returns {Partial<Who>} */
export function lastHere() {
  const channel = channelOf(
    new URLSearchParams(location.search).get('channel') ?? localStorage.getItem('channel') ?? '',
  )
  const name = localStorage.getItem('name')
  return { ...(name !== null && { name }), ...(isChannel(channel) && { channel }) }
}

/** Keeps it for the next time, and in the address, so that a link leads to the channel. @param {Who} who */
export function remember({ name, channel }) {
  localStorage.setItem('name', name)
  localStorage.setItem('channel', channel)
  history.replaceState(null, '', `?${new URLSearchParams({ channel })}`)
}

/**
 * The dialog that asks for a name and a channel.
 *
 * @param {{ readonly enter: (who: Who) => void, readonly forget: () => Promise<void> }} does
 */
export function createDoor({ enter, forget }) {
  const dialog = byId('door', HTMLDialogElement)
  const name = byId('name', HTMLInputElement)
  const channel = byId('channel', HTMLInputElement)
  const stay = byId('stay', HTMLButtonElement)
  const gone = byId('forget', HTMLButtonElement)
  const wrong = byId('door-wrong', HTMLElement)
  let isIn = false

  dialog.querySelector('form')?.addEventListener('submit', (event) => {
    event.preventDefault()
    const who = { name: name.value.trim().replace(/\s+/gu, '-'), channel: channelOf(channel.value) }
    wrong.textContent =
      who.name === ''
        ? 'Give a name.'
        : isChannel(who.channel)
          ? ''
          : 'A channel is letters, digits and hyphens.'
    if (wrong.textContent !== '') return (who.name === '' ? name : channel).focus()
    isIn = true
    dialog.close()
    enter(who)
  })
  // Nobody is anywhere before they have said where.
  dialog.addEventListener('cancel', (event) => isIn || event.preventDefault())
  stay.addEventListener('click', () => dialog.close())
  let isSure = false
  /** @param {boolean} sure */
  const askSure = (sure) => {
    isSure = sure
    gone.textContent = sure ? 'Press once more to delete it for good' : 'Delete what I asked in this channel'
  }
  gone.addEventListener('click', async () => {
    if (!isSure) return askSure(true)
    await forget()
    dialog.close()
  })
  return {
    /** @param {Partial<Who>} who @param {readonly string[]} channels @param {boolean} hasEntered */
    open: (who, channels, hasEntered) => {
      isIn = hasEntered
      name.value = who.name ?? ''
      channel.value = who.channel ?? 'bench'
      wrong.textContent = ''
      askSure(false)
      stay.hidden = !hasEntered
      gone.hidden = !hasEntered
      byId('channel-choices', HTMLElement).replaceChildren(
        ...channels.map((each) => {
          const button = element('button', { type: 'button' }, [each])
          button.addEventListener('click', () => {
            channel.value = each
            if (name.value !== '') dialog.querySelector('form')?.requestSubmit()
          })
          return button
        }),
      )
      if (!dialog.open) dialog.showModal()
      ;(hasEntered ? channel : name).focus()
    },
  }
}

/** A channel as the room keeps it. @param {string} typed */
const channelOf = (typed) =>
  typed.normalize('NFC').trim().toLowerCase().replace(/^#/u, '').replace(/\s+/gu, '-')

/** @param {string} channel */
const isChannel = (channel) => /^[\p{L}\p{N}][\p{L}\p{M}\p{N}_-]{0,31}$/u.test(channel)
