import type { HomeView, KnownBlock } from '@slack/types'
import type { Description } from '../../bot/usage.ts'
import { ask, type Desk } from './desk.ts'
import { limits } from './limits.ts'
import { button, clipped, context, section } from './message.ts'
import type { Whereabouts } from './people.ts'
import { render } from './render.ts'

/** Publishes somebody's home page: their units, and the project of the channel they are shown. */
export async function publishHome(desk: Desk, where: Whereabouts): Promise<void> {
  const [units, project] = await Promise.all(
    ['units', 'project'].map(async (line) =>
      render(await ask(desk, where, { line })).blocks.slice(0, MOST_BLOCKS),
    ),
  )
  const view = homeView(desk, where.channel, units ?? [], project ?? [])
  await where.client.views.publish({ user_id: where.user, view })
}

/** Of each answer on the page, which holds 100. */
const MOST_BLOCKS = 40

const homeView = (
  { command, parts }: Desk,
  channel: string,
  units: readonly KnownBlock[],
  project: readonly KnownBlock[],
): HomeView => ({
  type: 'home',
  private_metadata: JSON.stringify({ channel }),
  blocks: [
    section(`Ask in any channel: \`${command} sizing 17in x 13in height=15in\``),
    {
      type: 'actions',
      elements: [
        {
          type: 'static_select',
          action_id: 'form:home',
          placeholder: { type: 'plain_text', text: 'Ask by a form', emoji: false },
          options: formOptions(parts.commands),
        },
      ],
    },
    { type: 'divider' },
    section('*Your units*'),
    ...units,
    {
      type: 'actions',
      elements: [
        button('line:inch', 'Inches', 'units inch'),
        button('line:metric', 'Millimetres', 'units metric'),
        button('line:reset', 'As the channel has it', 'units reset=yes'),
      ],
    },
    { type: 'divider' },
    {
      type: 'section',
      text: { type: 'mrkdwn', text: '*Project of a channel*' },
      accessory: channelChoice(channel),
    },
    ...project,
    context(`Threads share the project of their channel. ${command} help lists every command.`),
  ],
})

/** Direct conversations are not on the list, so that one is never chosen to begin with. */
const channelChoice = (channel: string) => ({
  type: 'conversations_select' as const,
  action_id: 'channel',
  placeholder: { type: 'plain_text' as const, text: 'Choose a channel', emoji: false },
  filter: { include: ['public' as const, 'private' as const], exclude_bot_users: true },
  ...(/^[CG]/u.test(channel) && { initial_conversation: channel }),
})

/** Every command and verb that takes something. */
const formOptions = (commands: readonly Description[]) =>
  commands
    .flatMap(({ name, uses }) =>
      uses.filter(({ options }) => options.length > 0).map(({ verb }) => (verb ? `${name} ${verb}` : name)),
    )
    .slice(0, limits.selectOptions)
    .map((line) => ({
      text: { type: 'plain_text' as const, text: clipped(line, limits.optionText), emoji: false },
      value: line,
    }))
