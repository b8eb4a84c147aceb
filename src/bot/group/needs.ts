import { z } from 'zod'
import { defineAction } from '../command.ts'
import type { Context } from '../context.ts'
import { counted } from '../cutListReply.ts'
import { count, first, money, sheet, words, yes } from '../option.ts'
import { quoted, Refusal } from '../refusal.ts'
import type { Button, Cell, Reply } from '../reply.ts'
import { readStockPiece } from '../stockPiece.ts'
import { didYouMean } from '../suggest.ts'
import {
  current,
  type Group,
  groupOf,
  MOST_BROUGHT,
  MOST_NEEDS,
  memberOf,
  type Need,
  organisersOnly,
} from './group.ts'
import { groupFigures, missing, namesOf } from './groupReply.ts'
import { mergedList, workKits } from './kits.ts'
import { neededByKits, withTaken } from './neededByKits.ts'
import { centsOf } from './sameMoney.ts'
import { findThing, isSameThing, readThing } from './thing.ts'

/** Things that are named in the first line and offered as taps at once. */
const MOST_BUTTONS = 5

export const needs = defineAction({
  summary: 'Who brings what: what nobody brings yet stands first',
  options: z.strictObject({ kits: yes('put there what all kits take, as an organiser').optional() }),
  run: async ({ kits = false }, context) => {
    const group = current(await groupOf(context).read())
    if (!kits) return needsReply(group, context, '')
    await organisersOnly(context, 'says what is needed')
    const taken = await neededByKits(context)
    const { after } = await groupOf(context).change((kept) => withTaken(current(kept), taken))
    return needsReply(
      after,
      context,
      `On the list is what ${counted(after.members.filter(({ waiting }) => !waiting).length, 'kit')} take`,
    )
  },
})

export const need = defineAction({
  summary: 'Put something on the list of what is needed, or change how much',
  options: z.strictObject({
    what: first(words('what', 'clamps')),
    count: count('how many', 1, 1000).optional(),
    cost: money('what all of it costs, where it is bought for everybody', '12.50').optional(),
    off: yes('it is not needed after all').optional(),
  }),
  run: async ({ what, count: many, cost, off = false }, context) => {
    await organisersOnly(context, 'says what is needed')
    const cents = cost && (await centsOf(cost, context))
    let name = ''
    const { after } = await groupOf(context).change((kept) => {
      const group = current(kept)
      if (off) {
        const row = findNeed(group, what)
        name = row.name
        return { ...group, needs: group.needs.filter((each) => each !== row) }
      }
      const isKnown = group.needs.some((each) => isSameThing(each.name, what))
      const thing = isKnown || many !== undefined ? { name: what, count: many } : readThing(what)
      const known = group.needs.find((each) => isSameThing(each.name, thing.name))
      name = known?.name ?? thing.name.slice(0, 60).trim()
      if (!known && group.needs.length >= MOST_NEEDS)
        throw new Refusal('invalid', `the list has ${MOST_NEEDS} rows, the most it takes`)
      const row: Need = {
        name,
        count: thing.count ?? known?.count ?? 1,
        cost: cents ?? known?.cost,
        claims: known?.claims ?? [],
        ...(known?.ofKits && { ofKits: true }),
      }
      return {
        ...group,
        needs: known ? group.needs.map((each) => (each === known ? row : each)) : [...group.needs, row],
      }
    })
    return needsReply(after, context, `${off ? 'Off the list' : 'Needed'}: ${name}`)
  },
})

export const claim = defineAction({
  summary: 'Say that you bring something, or some of it',
  options: z.strictObject({
    what: first(words('what', 'clamps')),
    count: count('how many of them; all that nobody brings yet where it is left out', 1, 1000).optional(),
  }),
  run: async ({ what, count: many }, context) => {
    const { user } = context.request
    const organises = await context.isOrganiser()
    let name = ''
    // The edit runs again on the newer state when somebody else was faster, so the second of two is told who was first.
    const { after } = await groupOf(context).change((kept) => {
      const group = current(kept)
      if (!organises) memberOf(group, user)
      const meant = claimed(group, what, many)
      name = meant.row.name
      const left = missing(meant.row)
      if (left === 0 || (meant.count ?? 0) > left)
        throw new Refusal('invalid', takenSentence(meant.row, left, user))
      const own = meant.row.claims.find((each) => each.user === user)
      const brings = { user, count: (own?.count ?? 0) + (meant.count ?? left) }
      return withNeed(group, meant.row, [...meant.row.claims.filter((each) => each !== own), brings])
    })
    const row = findNeed(after, name)
    const own = row.claims.find((each) => each.user === user)?.count ?? 0
    return needsReply(
      after,
      context,
      `You bring ${row.count === 1 ? row.name : `${own} of ${row.count} ${row.name}`}`,
    )
  },
})

/** The row that is meant, and how many of it: `clamps`, `2 clamps`, `clamps x2` or `clamps 2`. */
function claimed(group: Group, what: string, many: number | undefined) {
  const row = findThing(group.needs, what)
  const [, before = '', last] = /^(.*\S)\s+([1-9]\d{0,3})$/u.exec(what.trim()) ?? []
  if (row || many !== undefined) return { row: row ?? findNeed(group, what), count: many }
  const read = readThing(what)
  const thing = read.count === undefined && last !== undefined ? { name: before, count: Number(last) } : read
  return { row: findNeed(group, thing.name), count: thing.count }
}

const takenSentence = ({ name, claims }: Need, left: number, user: string): string => {
  if (left > 0) return `only ${left} of ${quoted(name)} are not brought yet; claim ${left} or fewer`
  return claims.some((each) => each.user === user) && claims.length === 1
    ? `you bring all of ${quoted(name)} already`
    : `${quoted(name)} is taken: somebody was faster. "group needs" shows what is still open`
}

export const drop = defineAction({
  summary: 'Say that you do not bring it after all: something that is needed, or stock by its label',
  options: z.strictObject({ what: first(words('what', 'clamps')) }),
  run: async ({ what }, context) => {
    const organises = await context.isOrganiser()
    const { after } = await groupOf(context).change((kept) => {
      const group = current(kept)
      const isNeed = findThing(group.needs, what) !== undefined
      return isNeed ? withoutClaim(group, what, context) : withoutBrought(group, what, organises, context)
    })
    return needsReply(after, context, `Not brought after all: ${what}`)
  },
})

function withoutClaim(group: Group, what: string, { request }: Context): Group {
  const row = findNeed(group, what)
  const claims = row.claims.filter((each) => each.user !== request.user)
  if (claims.length === row.claims.length)
    throw new Refusal('invalid', `you have not said that you bring ${quoted(row.name)}`)
  return withNeed(group, row, claims)
}

/** An organiser may take anybody's stock off the list. */
function withoutBrought(group: Group, label: string, organises: boolean, { request }: Context): Group {
  const found = group.brought.find(({ item }) => item.label.toLowerCase() === label.trim().toLowerCase())
  if (!found) findNeed(group, label)
  if (!found || (found.user !== request.user && !organises))
    throw new Refusal('invalid', `you bring nothing that is called ${quoted(label)}`)
  return { ...group, brought: group.brought.filter((each) => each !== found) }
}

export const bring = defineAction({
  summary: 'Bring sheets or boards: the layout uses them first, at no cost',
  options: z.strictObject({
    piece: first(words('a board such as 2x4x8, or a sheet such as 4ft x 8ft', '3 @ 2x4x8')),
    sheet: sheet('what the sheet is, for its thickness').optional(),
    count: count('how many', 1, 1000).optional(),
  }),
  run: async (input, context) => {
    const { user } = context.request
    const organises = await context.isOrganiser()
    const { piece, note } = readStockPiece(input.piece, input.sheet, context)
    const { after } = await groupOf(context).change((kept) => {
      const group = current(kept)
      if (!organises) memberOf(group, user)
      if (group.brought.length >= MOST_BROUGHT)
        throw new Refusal(
          'invalid',
          `the list of what members bring has ${MOST_BROUGHT} rows, the most it takes`,
        )
      const label = freeLabel(group)
      const item = { ...piece, label, price: 0, onHand: input.count ?? piece.onHand ?? 1 }
      return { ...group, brought: [...group.brought, { user, item }] }
    })
    const item = after.brought.at(-1)?.item
    const said = item ? `You bring ${item.onHand ?? 1} x ${item.name ?? item.kind}, ${item.label}` : ''
    const reply = await needsReply(after, context, said)
    return note ? { ...reply, notes: [note, ...(reply.notes ?? [])] } : reply
  },
})

/** The next label that no other sheet or board of a member has: M1, M2 ... */
function freeLabel({ brought }: Group): string {
  const taken = new Set(brought.map(({ item }) => item.label))
  for (let number = 1; ; number += 1) if (!taken.has(`M${number}`)) return `M${number}`
}

/** The row of this name. Throws a Refusal that says what there is. */
function findNeed({ needs: rows }: Group, name: string): Need {
  const found = findThing(rows, name)
  if (found) return found
  const names = rows.map((row) => row.name)
  throw new Refusal(
    'invalid',
    `${quoted(name)} is not on the list of what is needed.${didYouMean(name, names)}`,
  )
}

const withNeed = (group: Group, row: Need, claims: Need['claims']): Group => ({
  ...group,
  needs: group.needs.map((each) => (each === row ? { ...row, claims } : each)),
})

/** Who brings what; what nobody brings yet first, each a tap away. */
async function needsReply(group: Group, context: Context, said: string): Promise<Reply> {
  const worked = workKits(group, context)
  const users = [...group.needs.flatMap(({ claims }) => claims), ...group.brought].map(({ user }) => user)
  const names = await namesOf(users, context)
  const open = group.needs.filter((row) => missing(row) > 0)
  const covered = group.needs.filter((row) => missing(row) === 0)
  const who = ({ claims }: Need) =>
    claims.map(({ user, count: many }) => `${names.get(user)}${many > 1 ? ` ${many}` : ''}`).join(', ') || '-'
  const buttons: readonly Button[] = open
    .slice(0, MOST_BUTTONS)
    .map((row) => ({ label: `I bring ${row.name}`, line: `group claim ${row.name}` }))
  return {
    answer: `${said === '' ? '' : `${said}. `}${openWords(open, group.needs.length)}`,
    tables: [
      {
        title: 'Nobody brings yet',
        columns: ['What', 'No', 'So far'],
        rows: open.map((row): Cell[] => [row.name, missing(row), who(row)]),
      },
      {
        title: 'Taken care of',
        columns: ['What', 'No', 'Who'],
        rows: covered.map((row): Cell[] => [row.name, row.count, who(row)]),
      },
      {
        title: 'Stock that members bring',
        columns: ['', 'No', 'What', 'Who'],
        rows: group.brought.map(({ user, item }): Cell[] => [
          item.label,
          item.onHand ?? 1,
          item.name ?? item.kind,
          names.get(user) ?? '',
        ]),
      },
    ].filter((table) => table.rows.length > 0),
    buttons: [...buttons, { label: 'The group', line: 'group' }],
    figures: {
      ...groupFigures(group, worked, mergedList(group, worked)),
      needs: group.needs.map((row) => ({ name: row.name, count: row.count, missing: missing(row) })),
    },
    audience: 'channel',
  }
}

function openWords(open: readonly Need[], all: number): string {
  if (all === 0)
    return 'Nothing is on the list of what is needed yet; an organiser adds to it with "group need clamps count=8", or what the kits take with "group needs kits=yes"'
  if (open.length === 0) return 'Everything that is needed is brought'
  const said = open.slice(0, MOST_BUTTONS).map((row) => row.name)
  const more = open.length - said.length
  return `${counted(open.length, 'thing')} still open: ${said.join(', ')}${more > 0 ? ` and ${more} more` : ''}`
}
