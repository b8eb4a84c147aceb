import { z } from 'zod'
import { defineAction, defineVerbs } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { type CutList, cutListSchema, type Listed, partsOfPlan } from '../src/bot/cutList.ts'
import { listTables } from '../src/bot/cutListReply.ts'
import { choice, count, first, length, words, yes } from '../src/bot/option.ts'
import { planned } from '../src/bot/plannedSurround.ts'
import { readParts } from '../src/bot/readParts.ts'
import { quoted, Refusal } from '../src/bot/refusal.ts'
import type { Reply } from '../src/bot/reply.ts'
import { didYouMean } from '../src/bot/suggest.ts'
import { toMillimetres } from '../src/core/measure/length.ts'

const EMPTY: CutList = { parts: [] }
const kept = (context: Context) => context.ofChannel('cutlist', cutListSchema)

const add = defineAction({
  summary: 'Add parts: one, or a pasted list with one on each line (or parted by ;)',
  options: z.strictObject({
    list: first(words('parts as you would write them', '4x 23 15/16 x 18 ply')),
    grain: yes('the grain runs along the length, so they may not be turned').optional(),
    later: yes('cut to fit on the day, not ahead').optional(),
  }),
  run: async ({ list: typed, grain = false, later = false }, context) => {
    let said: readonly string[] = []
    const { after } = await kept(context).change((list = EMPTY) => {
      const { parts, notes } = readParts(typed, { grain, later }, list.parts, context)
      said = notes
      return { parts: [...list.parts, ...parts] }
    })
    return listing(after.parts, context, 'Added', said)
  },
})

const change = defineAction({
  summary: 'Change a part',
  options: z.strictObject({
    label: first(words('its label', 'A')),
    count: count('how many', 1, 10_000).optional(),
    length: length('its length', '24in').optional(),
    width: length('its width', '12in').optional(),
    thickness: length('its thickness', '15/32in').optional(),
    grain: yes('the grain runs along the length').optional(),
    when: choice('cut now, or to fit on the day', ['now', 'day']).optional(),
  }),
  run: async ({ label, when, ...changes }, context) => {
    const given = Object.entries(changes).filter(([, value]) => value !== undefined)
    if (given.length === 0 && !when)
      throw new Refusal('invalid', `what changes about ${quoted(label)}? Add an option, such as count=4`)
    const { after } = await kept(context).change((list = EMPTY) => {
      const found = findPart(label, list.parts)
      const changed = { ...found, ...Object.fromEntries(given), ...(when && { later: when === 'day' }) }
      return { parts: list.parts.map((part) => (part === found ? changed : part)) }
    })
    return listing(after.parts, context, 'Changed')
  },
})

const remove = defineAction({
  summary: 'Take a part off the list',
  options: z.strictObject({ label: first(words('its label', 'A')) }),
  run: async ({ label }, context) => {
    const { after } = await kept(context).change((list = EMPTY) => {
      const found = findPart(label, list.parts)
      return { parts: list.parts.filter((part) => part !== found) }
    })
    return listing(after.parts, context, 'Removed')
  },
})

const plan = defineAction({
  summary: 'Take the parts of this channel’s plan, in place of what is listed',
  options: z.strictObject({}),
  run: async (_input, context) => {
    if (!context.project)
      throw new Refusal(
        'invalid',
        'this channel has no project yet; begin one with: project start 17in x 13in height=15in',
      )
    const parts = [...partsOfPlan(planned(context.project.choices, context).plan)]
    await kept(context).change(() => ({ parts }))
    return listing(parts, context, 'Taken from the plan')
  },
})

const list = defineAction({
  summary: 'What is on the list',
  options: z.strictObject({}),
  run: async (_input, context) => {
    const parts = (await kept(context).read())?.parts ?? []
    if (parts.length > 0) return listing(parts, context, 'Cut list')
    if (!context.project) {
      return {
        answer: 'The cut list is empty. Add parts: cutlist add 4x 24in x 12in',
        figures: { parts: [] },
      }
    }
    return listing(
      partsOfPlan(planned(context.project.choices, context).plan),
      context,
      'The parts of this channel’s plan',
    )
  },
})

const clear = defineAction({
  summary: 'Empty the list; undo brings it back',
  options: z.strictObject({}),
  run: async (_input, context) => {
    await kept(context).change(() => EMPTY)
    return listing([], context, 'Emptied')
  },
})

const undo = defineAction({
  summary: 'Take the last change of the list back',
  options: z.strictObject({}),
  run: async (_input, context) => {
    const moved = await kept(context).undo()
    if (!moved) throw new Refusal('invalid', 'there is nothing to undo in this cut list')
    return listing(moved.body?.parts ?? [], context, `Undone: "${moved.revision.command}"`)
  },
})

function findPart(label: string, parts: readonly Listed[]): Listed {
  const found = parts.find((part) => part.label.toLowerCase() === label.toLowerCase())
  if (found) return found
  const labels = parts.map((part) => part.label)
  throw new Refusal('invalid', `no part is called ${quoted(label)}.${didYouMean(label, labels)}`)
}

function listing(
  parts: readonly Listed[],
  context: Context,
  said: string,
  read: readonly string[] = [],
): Reply {
  const pieces = parts.reduce((sum, part) => sum + part.count, 0)
  return {
    answer: `${said}: ${pieces} ${pieces === 1 ? 'part' : 'parts'} in ${parts.length} ${parts.length === 1 ? 'row' : 'rows'}`,
    tables: listTables(parts, context.show),
    notes: [
      ...read,
      ...parts
        .filter(({ grain }) => grain)
        .map(({ label }) => `${label}: grain along the length, not turned`),
      ...parts
        .filter(({ later }) => later)
        .map(({ label, name }) => `${label}${name ? ` ${name}` : ''}: cut to fit on the day`),
    ],
    buttons: parts.length > 0 ? [{ label: 'Layout', line: 'layout' }] : [],
    figures: {
      parts: parts.map(({ length: long, width, thickness, ...part }) => ({
        ...part,
        name: part.name ?? null,
        length: toMillimetres(long),
        width: width === undefined ? null : toMillimetres(width),
        thickness: thickness === undefined ? null : toMillimetres(thickness),
      })),
    },
  }
}

export default defineVerbs({
  name: 'cutlist',
  summary: 'The channel’s parts to cut: add, change, remove, paste a list, or take them from the plan',
  examples: ['cutlist add 4x 23 15/16in x 18in ply; 2 @ 4 ft', 'cutlist', 'cutlist clear'],
  verbs: { list, add, change, remove, plan, clear, undo },
  fallback: 'list',
})
