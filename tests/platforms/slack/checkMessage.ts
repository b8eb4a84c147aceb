import { PHONE_COLUMNS } from '../../../src/bot/format.ts'

/**
 * Every way in which Slack would refuse or spoil a message; none for a good one. As strict as the Block Kit reference
 * (docs.slack.dev/reference/block-kit) and the types of @slack/types 3.2: keys, lengths, counts, unique ids. Beyond that:
 * no text that could ping or link, no code wider than a phone, and no more characters than posts are known to hold.
 */
export function checkMessage(message: {
  readonly text: string
  readonly blocks?: readonly object[]
}): readonly string[] {
  const blocks = (message.blocks ?? []) as readonly Block[]
  const tables = blocks.filter(({ type }) => type === 'table').length
  return [
    ...lengthFaults('text', message.text, 1, 4000),
    ...markupFaults('text', message.text),
    ...(blocks.length > 50 ? [`${blocks.length} blocks`] : []),
    ...(tables > 1 ? ['only_one_table_allowed'] : []),
    ...(JSON.stringify(blocks).length > 13_200 ? ['msg_blocks_too_long'] : []),
    ...blocks.flatMap((block, index) => blockFaults(block, `block ${index}`, MESSAGE_BLOCKS)),
    ...uniqueFaults('block_id', blocks),
  ]
}

/** The same for a view: a modal, or the home page. */
export function checkView(view: object): readonly string[] {
  const {
    type,
    title,
    submit,
    close,
    callback_id,
    private_metadata,
    blocks = [],
    ...rest
  } = view as Block & {
    blocks?: readonly Block[]
  }
  const isModal = type === 'modal'
  return [
    ...(isModal || type === 'home' ? [] : [`a view is no ${String(type)}`]),
    ...Object.keys(rest).map((key) => `a view has no ${key}`),
    ...(isModal
      ? textFaults('title', title, 24, true)
      : title === undefined
        ? []
        : ['a home page has no title']),
    ...[submit, close].flatMap((label) =>
      label === undefined ? [] : textFaults('submit or close', label, 24, true),
    ),
    ...(callback_id === undefined ? [] : lengthFaults('callback_id', callback_id, 1, 255)),
    ...(private_metadata === undefined ? [] : lengthFaults('private_metadata', private_metadata, 0, 3000)),
    ...(blocks.length < 1 || blocks.length > 100 ? [`${blocks.length} blocks`] : []),
    ...(JSON.stringify(view).length > 250_000 ? ['view_too_large'] : []),
    ...(isModal && submit === undefined && blocks.some((block) => block.type === 'input')
      ? ['no submit']
      : []),
    ...blocks.flatMap((block, index) => blockFaults(block, `block ${index}`, VIEW_BLOCKS)),
    ...uniqueFaults('block_id', blocks),
  ]
}

type Block = Readonly<Record<string, unknown>> & {
  readonly type?: unknown
  readonly blocks?: readonly Block[]
}

const MESSAGE_BLOCKS = ['section', 'context', 'actions', 'divider', 'header', 'image', 'table']
const VIEW_BLOCKS = ['section', 'context', 'actions', 'divider', 'header', 'image', 'input']

const KEYS: Readonly<Record<string, readonly string[]>> = {
  section: ['text', 'fields', 'accessory', 'expand'],
  context: ['elements'],
  actions: ['elements'],
  divider: [],
  header: ['text'],
  input: ['label', 'element', 'hint', 'optional', 'dispatch_action'],
  mrkdwn: ['text', 'verbatim'],
  plain_text: ['text', 'emoji'],
  button: ['text', 'action_id', 'value', 'url', 'style', 'confirm', 'accessibility_label'],
  static_select: [
    'action_id',
    'placeholder',
    'options',
    'option_groups',
    'initial_option',
    'confirm',
    'focus_on_load',
  ],
  conversations_select: [
    'action_id',
    'placeholder',
    'initial_conversation',
    'default_to_current_conversation',
    'filter',
    'confirm',
  ],
  plain_text_input: ['action_id', 'initial_value', 'multiline', 'min_length', 'max_length', 'placeholder'],
}

function keyFaults(thing: Block, at: string): readonly string[] {
  const known = KEYS[String(thing.type)]
  if (!known) return [`${at} has the unknown type ${String(thing.type)}`]
  return Object.keys(thing)
    .filter((key) => !['type', 'block_id', ...known].includes(key))
    .map((key) => `${at}: a ${String(thing.type)} has no ${key}`)
}

function blockFaults(block: Block, at: string, allowed: readonly string[]): readonly string[] {
  if (!allowed.includes(String(block.type))) return [`${at}: no ${String(block.type)} here`]
  const elements = (block.elements ?? []) as readonly Block[]
  const id = block.block_id === undefined ? [] : lengthFaults(`${at} block_id`, block.block_id, 1, 255)
  const common = [...keyFaults(block, at), ...id]
  switch (block.type) {
    case 'section':
      return [
        ...common,
        ...(block.text === undefined ? [`${at} has no text`] : textFaults(at, block.text, 3000)),
        ...(block.accessory === undefined ? [] : elementFaults(block.accessory as Block, at)),
      ]
    case 'context':
      return [
        ...common,
        ...countFaults(at, elements, 10),
        ...elements.flatMap((element) => textFaults(at, element, 3000)),
      ]
    case 'actions':
      return [
        ...common,
        ...countFaults(at, elements, 25),
        ...elements.flatMap((element) => elementFaults(element, at)),
        ...uniqueFaults('action_id', elements),
      ]
    case 'input':
      return [
        ...common,
        ...textFaults(`${at} label`, block.label, 2000, true),
        ...(block.hint === undefined ? [] : textFaults(`${at} hint`, block.hint, 2000, true)),
        ...elementFaults(block.element as Block, at),
      ]
    default:
      return common
  }
}

function elementFaults(element: Block, at: string): readonly string[] {
  const common = [...keyFaults(element, at), ...lengthFaults(`${at} action_id`, element.action_id, 1, 255)]
  const placeholder =
    element.placeholder === undefined ? [] : textFaults(`${at} placeholder`, element.placeholder, 150, true)
  switch (element.type) {
    case 'button':
      return [
        ...common,
        ...textFaults(`${at} button`, element.text, 75, true),
        ...(element.value === undefined ? [] : lengthFaults(`${at} value`, element.value, 1, 2000)),
      ]
    case 'static_select':
      return [...common, ...placeholder, ...optionFaults(element, at)]
    case 'plain_text_input': {
      const most = Number(element.max_length ?? 3000)
      return [
        ...common,
        ...placeholder,
        ...(most < 1 || most > 3000 ? [`${at}: max_length ${most}`] : []),
        ...(element.initial_value === undefined
          ? []
          : lengthFaults(`${at} initial_value`, element.initial_value, 1, most)),
      ]
    }
    default:
      return [...common, ...placeholder]
  }
}

function optionFaults({ options = [], initial_option: initial }: Block, at: string): readonly string[] {
  const all = options as readonly Block[]
  const values = all.map(({ value }) => value)
  return [
    ...countFaults(`${at} options`, all, 100),
    ...all.flatMap(({ text, value }) => [
      ...textFaults(`${at} option`, text, 75, true),
      ...lengthFaults(`${at} option value`, value, 1, 150),
    ]),
    ...(new Set(values).size < values.length ? [`${at}: an option twice`] : []),
    ...(initial === undefined || all.some((each) => JSON.stringify(each) === JSON.stringify(initial))
      ? []
      : [`${at}: the initial option is none of the options`]),
  ]
}

function textFaults(at: string, text: unknown, most: number, isPlain = false): readonly string[] {
  const object = (text ?? {}) as Block
  const kind = isPlain ? ['plain_text'] : ['plain_text', 'mrkdwn']
  return [
    ...(kind.includes(String(object.type)) ? keyFaults(object, at) : [`${at} is no ${kind.join(' or ')}`]),
    ...lengthFaults(at, object.text, 1, most),
    ...(object.type === 'mrkdwn' ? markupFaults(at, String(object.text)) : []),
  ]
}

const lengthFaults = (at: string, text: unknown, least: number, most: number): readonly string[] => {
  if (typeof text !== 'string') return [`${at} is no text`]
  return text.length < least || text.length > most
    ? [`${at} has ${text.length} characters, not ${least} to ${most}`]
    : []
}

const countFaults = (at: string, all: readonly unknown[], most: number): readonly string[] =>
  all.length < 1 || all.length > most ? [`${at} has ${all.length} elements, not 1 to ${most}`] : []

function uniqueFaults(key: string, all: readonly Block[]): readonly string[] {
  const ids = all.map((each) => each[key]).filter((id) => id !== undefined)
  return new Set(ids).size < ids.length ? [`a ${key} is used twice`] : []
}

/** Whatever Slack would read as a mention, a link or an entity that nobody wrote; and code that a phone would wrap. */
function markupFaults(at: string, text: string): readonly string[] {
  const fences = text.split('```')
  const wide = fences
    .filter((_, index) => index % 2 === 1)
    .flatMap((code) => code.split('\n'))
    .map((line) => line.replace(/&(?:amp|lt|gt);/gu, '.'))
    .filter((line) => [...line].length > PHONE_COLUMNS)
  return [
    ...(/[<>]/u.test(text) ? [`${at}: < or > is not escaped`] : []),
    ...(/&(?!(?:amp|lt|gt);)/u.test(text) ? [`${at}: & is not escaped`] : []),
    ...(fences.length % 2 === 0 ? [`${at}: a code block is left open`] : []),
    ...wide.map((line) => `${at}: wider than a phone: ${line}`),
  ]
}
