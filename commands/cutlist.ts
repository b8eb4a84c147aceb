import { z } from 'zod'
import { defineAction, defineVerbs } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { type CutList, cutListOf, type Listed, withinBounds } from '../src/bot/cutList.ts'
import { counted, listTables, partFigure, partNotes } from '../src/bot/cutListReply.ts'
import { planList } from '../src/bot/layoutJob.ts'
import { choice, count, first, length, words, yes } from '../src/bot/option.ts'
import { readParts } from '../src/bot/readParts.ts'
import { quoted, Refusal } from '../src/bot/refusal.ts'
import type { Reply } from '../src/bot/reply.ts'
import { showKept } from '../src/bot/showKept.ts'
import { didYouMean } from '../src/bot/suggest.ts'
import { undoVerbs } from '../src/bot/undoVerbs.ts'

const EMPTY: CutList = { parts: [] }

/** What a change begins from: the list as kept, or the parts of the plan while nobody has made a list. */
const startOf = (context: Context): CutList =>
  context.project ? planList(context.project.choices, context) : EMPTY

const add = defineAction({
  summary: 'Add parts: one, or a pasted list with one on each line (or parted by ;)',
  options: z.strictObject({
    list: first(words('parts as you would write them', '4x 23 15/16 x 18 ply')),
    strip: length('crosscut them from strips so thick, ripped from boards', '1/2in').optional(),
    grain: yes('the grain runs along the length, so they may not be turned').optional(),
    later: yes('cut to fit on the day, not ahead').optional(),
  }),
  run: async ({ list: typed, strip, grain = false, later = false }, context) => {
    let said: readonly string[] = []
    const { after } = await cutListOf(context).change((list = startOf(context)) => {
      const { parts, notes, units } = readParts(typed, { strip, grain, later }, list.parts, context)
      said = notes
      return withinBounds({ ...list, parts: [...list.parts, ...parts], units: list.units ?? units })
    })
    return listing(after, context, 'Added', said)
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
    const { after } = await cutListOf(context).change((list = startOf(context)) => {
      const found = findPart(label, list.parts)
      const changed = { ...found, ...Object.fromEntries(given), ...(when && { later: when === 'day' }) }
      return withinBounds({ ...list, parts: list.parts.map((part) => (part === found ? changed : part)) })
    })
    return listing(after, context, 'Changed')
  },
})

const remove = defineAction({
  summary: 'Take a part off the list',
  options: z.strictObject({ label: first(words('its label', 'A')) }),
  run: async ({ label }, context) => {
    const { after } = await cutListOf(context).change((list = startOf(context)) => {
      const found = findPart(label, list.parts)
      return { ...list, parts: list.parts.filter((part) => part !== found) }
    })
    return listing(after, context, 'Removed')
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
    const taken = startOf(context)
    await cutListOf(context).change(() => taken)
    return listing(taken, context, 'Taken from the plan')
  },
})

const list = defineAction({
  summary: 'What is on the list',
  options: z.strictObject({}),
  run: async (_input, context) => {
    const kept = await cutListOf(context).read()
    if (kept && kept.parts.length > 0) return listing(kept, context, 'Cut list')
    if (context.project && !kept)
      return listing(startOf(context), context, 'The parts of this channel’s plan')
    const plan = context.project ? ', or take those of the plan: cutlist plan' : ''
    return {
      answer: `The cut list is empty. Add parts: cutlist add 4x 24in x 12in${plan}`,
      figures: { parts: [] },
    }
  },
})

const clear = defineAction({
  summary: 'Empty the list; undo brings it back',
  options: z.strictObject({}),
  run: async (_input, context) => {
    await cutListOf(context).change(() => EMPTY)
    return listing(EMPTY, context, 'Emptied')
  },
})

const { undo, redo } = undoVerbs({
  name: 'cut list',
  open: cutListOf,
  reply: (body, context, said) => listing(body ?? startOf(context), context, said),
})

function findPart(label: string, parts: readonly Listed[]): Listed {
  const found = parts.find((part) => part.label.toLowerCase() === label.toLowerCase())
  if (found) return found
  const labels = parts.map((part) => part.label)
  throw new Refusal('invalid', `no part is called ${quoted(label)}.${didYouMean(label, labels)}`)
}

function listing(
  { parts, units }: CutList,
  context: Context,
  said: string,
  read: readonly string[] = [],
): Reply {
  const pieces = parts.reduce((sum, part) => sum + part.count, 0)
  return {
    answer: `${said}: ${counted(pieces, 'part')} in ${counted(parts.length, 'row')}`,
    tables: listTables(parts, showKept(context, units), context.show),
    notes: [...read, ...partNotes(parts)],
    buttons: parts.length > 0 ? [{ label: 'Layout', line: 'layout' }] : [],
    figures: { parts: parts.map(partFigure) },
  }
}

export default defineVerbs({
  name: 'cutlist',
  summary: 'The channel’s parts to cut: add, change, remove, paste a list, or take them from the plan',
  examples: [
    'cutlist add 4x 23 15/16in x 18in ply; 2 @ 4 ft',
    'cutlist add 8x 23 15/16in 2x4 strip=1/2in',
    'cutlist',
    'cutlist clear',
  ],
  verbs: { list, add, change, remove, plan, clear, undo, redo },
  fallback: 'list',
})
