import { z } from 'zod'
import { STATIONS } from '../../core/group/stations.ts'
import type { Context } from '../context.ts'
import type { Document } from '../document.ts'
import { planChoicesSchema } from '../planChoices.ts'
import { Refusal } from '../refusal.ts'
import { stockItemSchema } from '../shopStock.ts'

/** People in one group, the waiting list with them. */
export const MOST_MEMBERS = 100
export const MOST_NEEDS = 60
export const MOST_PLANS = 10
/** Rows that members together may bring to the stock. */
export const MOST_BROUGHT = 100

/** The plan that a group opens with. */
export const FIRST_PLAN = 'main'

const person = z.string().min(1).max(100)
const shortText = z.string().min(1).max(60)

/** One who builds. The kit number is theirs for good; nobody else gets it after they leave. */
export const memberSchema = z.strictObject({
  user: person,
  kit: z.int().min(1),
  plan: shortText,
  /** What is theirs, laid over the shared plan: a later change of that plan still reaches them. */
  changes: planChoicesSchema,
  waiting: z.boolean(),
  /** In cents, as an organiser has marked it. */
  paid: z.int().min(0),
})
export type Member = z.output<typeof memberSchema>

/** Something that is needed on the day, and who brings how much of it. */
export const needSchema = z.strictObject({
  name: shortText,
  count: z.int().min(1).max(1000),
  /** Of all of it, in cents, where it is bought for everybody. */
  cost: z.int().min(0).optional(),
  claims: z.array(z.strictObject({ user: person, count: z.int().min(1) })),
  /** Put there because the kits take it, and gone when they no longer do. */
  ofKits: z.boolean().optional(),
})
export type Need = z.output<typeof needSchema>

/** Whole numbers by name (posting.ts): how many there are of each row, and a number for what each kit is. */
const rowsSchema = z.record(z.string(), z.int())

/** What was put up last, and how it differs from the version before. */
const postedSchema = z.strictObject({
  version: z.int().min(1),
  at: z.iso.datetime(),
  rows: rowsSchema,
  kits: rowsSchema,
  /** The same of the version before; empty for the first. */
  before: z.strictObject({ rows: rowsSchema, kits: rowsSchema }),
})

/** A group build as the channel keeps it. */
export const groupSchema = z.strictObject({
  title: shortText,
  /** Groups opened by an earlier version do not have it. */
  opened: z.iso.datetime().optional(),
  /** As the organiser wrote it. */
  date: shortText.optional(),
  places: z.int().min(1).max(MOST_MEMBERS),
  locked: z.boolean(),
  units: z.enum(['inch', 'metric']).optional(),
  plans: z.record(shortText, planChoicesSchema),
  members: z.array(memberSchema).max(MOST_MEMBERS),
  nextKit: z.int().min(1),
  needs: z.array(needSchema).max(MOST_NEEDS),
  /** Stock that members bring, at no cost. */
  brought: z.array(z.strictObject({ user: person, item: stockItemSchema })).max(MOST_BROUGHT),
  /** Spare strips, in percent of each row. */
  spare: z.int().min(0).max(100),
  /** How what is bought for everybody is shared. */
  share: z.enum(['evenly', 'by size']),
  /** In cents, a head. */
  deposit: z.int().min(0),
  done: z.array(
    z.strictObject({
      kit: z.int(),
      station: z.enum(STATIONS),
      user: person.or(z.literal('')),
      at: z.iso.datetime(),
      /** Of the numbers that the kit had there (textNumber.ts). */
      print: z.int(),
    }),
  ),
  posted: postedSchema.optional(),
})
export type Group = z.output<typeof groupSchema>

export const groupOf = (context: Context): Document<Group> => context.ofChannel('group', groupSchema)

/** The group of the channel. Throws a Refusal where there is none. */
export const current = (group: Group | undefined): Group => {
  if (group) return group
  throw new Refusal(
    'invalid',
    'there is no group in this channel; an organiser opens one with "group open", once the channel has a project',
  )
}

/** Throws a Refusal unless the person organises the channel. */
export async function organisersOnly(context: Context, what: string): Promise<void> {
  if (await context.isOrganiser()) return
  throw new Refusal('invalid', `only an organiser ${what}; "organisers" lists them`)
}

/** The member who asks. Throws a Refusal where they have not joined. */
export function memberOf({ members }: Group, user: string): Member {
  const member = members.find((each) => each.user === user)
  if (member) return member
  throw new Refusal('invalid', 'you have not joined this group; do so with "group join"')
}

/** Throws a Refusal while an organiser holds the list as it is. */
export function unlocked(group: Group): Group {
  if (!group.locked) return group
  throw new Refusal(
    'invalid',
    'the list of this group is locked; ask an organiser, who can unlock it with "group lock off=yes"',
  )
}

/** The name of a shared plan as it was typed, or as it is kept where only its capitals differ. */
export function planName({ plans }: Group, typed: string): string {
  const name = typed.trim()
  return Object.keys(plans).find((known) => known.toLowerCase() === name.toLowerCase()) ?? name
}

/** `change` made to the member with this kit, and to nobody else. */
export const withMember = (group: Group, kit: number, change: (member: Member) => Member): Group => ({
  ...group,
  members: group.members.map((member) => (member.kit === kit ? change(member) : member)),
})

/** The first on the waiting list move up while there are places; nobody does while the list is locked. */
export function fillPlaces(group: Group): Group {
  if (group.locked) return group
  let free = group.places - group.members.filter(({ waiting }) => !waiting).length
  const members = group.members.map((member) => {
    if (!member.waiting || free <= 0) return member
    free -= 1
    return { ...member, waiting: false }
  })
  return { ...group, members }
}
