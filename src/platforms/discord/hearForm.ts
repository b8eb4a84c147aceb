import { ComponentType, type ModalSubmitInteraction } from 'discord.js'
import { readCustomId } from './customId.ts'
import type { Desk } from './desk.ts'
import { givenIn, LINE_FIELD, lineSaying } from './form.ts'
import { type Asked, respond } from './respond.ts'

/** Answers a form that was filled in. */
export const hearForm = (interaction: ModalSubmitInteraction, desk: Desk): Promise<void> =>
  respond(interaction, askedBy(interaction, desk), desk)

async function askedBy(interaction: ModalSubmitInteraction, { parts, forms }: Desk): Promise<Asked> {
  const press = readCustomId(interaction.customId)
  if (!press) return undefined
  const filled = filledIn(interaction)
  const whole = filled.find(([name]) => name === LINE_FIELD)
  if (whole) return { invocation: { line: whole[1] }, line: whole[1] }
  const line = await forms.lineOf(press)
  const given = line === undefined ? undefined : givenIn(line, parts.commands)
  if (!given) return undefined
  const all = { ...given, options: { ...given.options, ...Object.fromEntries(filled) } }
  const { command, verb, options } = all
  return {
    invocation: { command, options, ...(verb !== undefined && { verb }) },
    line: lineSaying(all),
  }
}

/** What was filled in; a field left empty counts as not said. */
const filledIn = ({ fields }: ModalSubmitInteraction): readonly (readonly [string, string])[] =>
  [...fields.fields.values()].flatMap((field): readonly (readonly [string, string])[] => {
    if (field.type === ComponentType.TextInput)
      return field.value.trim() === '' ? [] : [[field.customId, field.value]]
    if (field.type !== ComponentType.StringSelect) return []
    const [value] = field.values
    return value === undefined ? [] : [[field.customId, value]]
  })
