import { oneEffect } from '../oneEffect.ts'
import { workingView } from './answerView.ts'
import { answerInView } from './answerInView.ts'
import { deliver, logged, share } from './deliver.ts'
import { ask } from './desk.ts'
import { show, tell } from './destination.ts'
import { formOf, formView } from './form.ts'
import { publishHome } from './home.ts'
import { recalledText } from './keptLines.ts'
import { cautionsPost } from './moreCautions.ts'
import { plainMessage } from './message.ts'
import type { Press } from './press.ts'
import { unpackMessage } from './sharedMessage.ts'
import { slackError } from './slackError.ts'

/** Does what pressing the button is for. Rejects as that does, when whoever pressed has been told. */
export async function answerPress(name: string, press: Press): Promise<void> {
  const work = Object.hasOwn(PRESSES, name) ? PRESSES[name] : undefined
  try {
    await work?.(press)
  } catch (error) {
    await say(press, FAULT)
    throw error
  }
}

/** What each kind of button does; the part of its action before the colon names it. */
const PRESSES: Readonly<Record<string, (press: Press) => Promise<void>>> = {
  line: pressLine,
  show: pressShow,
  send: pressSend,
  more: pressMore,
  form: pressForm,
  channel: pressChannel,
}

/** Pressing is typing the line. In a view the answer is shown over it. */
async function pressLine(press: Press): Promise<void> {
  const { desk, client, view, to, isPublic } = press
  const line = await recalledText(press.value, desk.parts.keeping)
  if (line === undefined) return say(press, GONE)
  if (!view) {
    // In the conversation with the bot nobody else reads along.
    const audience = isPublic && to.channel.startsWith('D') ? 'channel' : 'asker'
    return deliver(desk, to, { response: await ask(desk, to, { line }), line, audience })
  }
  const opened =
    view.type === 'modal'
      ? view.id
      : (await client.views.open({ trigger_id: press.trigger, view: workingView(to.channel) })).view?.id
  const response = await ask(desk, to, { line })
  await answerInView(desk, to, { view: opened, response, line })
  // The line had its effect; a page that shows it as it was is no reason to press again.
  if (view.type === 'home')
    await publishHome(desk, to).catch((error: unknown) =>
      desk.parts.log.warn({ why: slackError(error) }, 'a home page could not be published'),
    )
}

/**
 * Shows the asker's answer to everybody, with its drawing, and takes the private one away. Each of the two goes out once,
 * however often it is tapped; what failed of them is made up for by the next tap.
 */
async function pressShow(press: Press): Promise<void> {
  const { desk, to } = press
  const shared = await unpackMessage(press.value, desk.parts.keeping)
  if (!shared) return say(press, GONE)
  const once = (what: string, work: () => Promise<boolean>) =>
    oneEffect(`show ${what} ${press.button}`, work, desk.parts)
  const words = await once('words', async () => {
    const failures = await show(to, shared.post)
    await logged(desk, Promise.resolve(failures))
    return failures.length === 0
  })
  if (words === 'failed') return say(press, UNSHOWN)
  if (words === 'under way') return
  if (shared.attachments !== undefined) {
    const attachments = desk.recent.find(shared.attachments)
    const files = await once('files', async () => {
      if (attachments) return share(desk, to, attachments)
      await say(press, DRAWING_GONE)
      return true
    })
    if (files === 'failed' || files === 'under way') return
  }
  await to.response?.post({ delete_original: true })
}

/** Sends drawing and files to the person alone: Slack has no private files in a channel. */
async function pressSend(press: Press): Promise<void> {
  const { desk, client, to } = press
  const attachments = desk.recent.find(press.value)
  if (!attachments) return say(press, DRAWING_GONE)
  const opened = await client.chat.postMessage({ channel: to.user, text: 'What you asked for:' })
  const direct = { ...to, channel: opened.channel ?? to.user, thread: undefined }
  if (await share(desk, direct, attachments)) await say(press, 'Sent to you as a direct message.')
}

/** Says the cautions that an answer had no room for, to whoever asks for them. */
async function pressMore(press: Press): Promise<void> {
  const { desk, to } = press
  const kept = await recalledText(press.value, desk.parts.keeping)
  if (kept === undefined) return say(press, GONE)
  await logged(desk, tell(to, await cautionsPost(kept, desk, to.user)))
}

/** Opens the form of a line. Slack lets a modal be opened for three seconds only, so nothing is looked up before. */
async function pressForm(press: Press): Promise<void> {
  const { desk, client, to, trigger, view } = press
  const line = await recalledText(press.value, desk.parts.keeping)
  const form = line === undefined ? undefined : formOf(line, desk.parts.commands)
  if (!form) return say(press, GONE)
  const ticket = {
    command: form.command,
    verb: form.use.verb,
    channel: to.channel,
    thread: to.thread,
    responseUrl: to.response?.url,
  }
  await client.views.open({ trigger_id: trigger, view: formView(form, ticket) })
  // A choice from the list of the home page stays chosen, and could not be made again.
  if (view?.type === 'home') await publishHome(desk, to)
}

/** Shows another channel's project on the home page. */
async function pressChannel({ desk, to, value }: Press): Promise<void> {
  await publishHome(desk, { ...to, channel: value || to.channel })
}

const FAULT = 'that could not be done just now; press the button again in a minute.'

const GONE = 'that button is too old; type the line again.'

const UNSHOWN = 'this could not be shown to all just now; press the button again.'

const DRAWING_GONE = 'the drawing is not at hand any more; ask again, and it is drawn again.'

const say = ({ desk, to }: Press, words: string): Promise<void> => logged(desk, tell(to, plainMessage(words)))
