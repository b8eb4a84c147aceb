import type { Message } from 'discord.js'
import { authorOf } from './asker.ts'
import { postable, sorry } from './deliver.ts'
import { type Desk, isFirst } from './desk.ts'
import { limits } from './limits.ts'
import { type Packed, withoutAnyFile } from './pack.ts'
import { putUpNotice } from './notice.ts'
import { pagesOf } from './pages.ts'
import { loggable, troubleOf } from './trouble.ts'

const NO_FILES =
  'The pictures and files are left out: I may not attach files here. Who manages the server can allow "Attach Files".'

/** Answers a message that names the bot, or that is written to it directly, as a typed line. */
export async function hearMessage(message: Message, desk: Desk): Promise<void> {
  const line = lineIn(message)
  if (line === undefined || !(await isFirst(message.id, desk))) return
  if ('sendTyping' in message.channel) void message.channel.sendTyping().catch(() => undefined)
  const author = authorOf(message, desk)
  const response = await desk.parts.answer({ ...author, invocation: { line } })
  const terms = { isPrivate: false, asked: line, fileBytes: limits.fileBytes, user: author.user }
  const pages = await pagesOf(response, terms, desk)
  try {
    await send(pages, message, desk)
  } finally {
    // What was changed is up for everybody, whatever became of the answer.
    const words = await putUpNotice(response, author, message.channelId, desk)
    if (words) await message.reply(postable(words)).catch(() => undefined)
  }
}

/** What is asked of the bot; undefined where it is not spoken to. */
function lineIn({ author, content, client, guildId, system }: Message): string | undefined {
  if (author.bot || system) return undefined
  const named = new RegExp(`<@!?${client.user.id}>`, 'gu')
  if (guildId !== null && !named.test(content)) return undefined
  return content.replace(named, ' ').trim() || 'help'
}

async function send(pages: readonly Packed[], message: Message, desk: Desk): Promise<void> {
  try {
    await reply(pages, message)
  } catch (error) {
    desk.parts.log.warn(
      { ...loggable(error), message: message.id },
      'an answer to a message did not go through',
    )
    if (troubleOf(error) !== 'forbidden') throw error
    if (!pages.some(({ files }) => files.length > 0)) return explain(message, desk)
    const bare = pages.map((page) => (page.files.length > 0 ? withoutAnyFile(page, NO_FILES) : page))
    await reply(bare, message).catch(() => explain(message, desk))
  }
}

/** The same answer is never there twice, whichever process gives it. */
async function reply(pages: readonly Packed[], message: Message): Promise<void> {
  for (const [index, page] of pages.entries())
    await message.reply(postable(page, `${message.id}${index === 0 ? '' : `-${index}`}`))
}

/** Tells the person what is missing where it can still be told. */
async function explain({ author, channelId, id }: Message, { parts }: Desk): Promise<void> {
  const words = `I heard you in the channel, but may not write there. Who manages the server can allow "View Channel", "Send Messages", "Send Messages in Threads" and "Read Message History" for me; slash commands work without.`
  try {
    await author.send(postable(sorry(words)))
  } catch (error) {
    parts.log.error(
      { ...loggable(error), message: id, channel: channelId },
      'nobody could be told what is missing',
    )
  }
}
