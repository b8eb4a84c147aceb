import { z } from 'zod'
import { kitLabel, type MergedPart } from '../../core/group/mergeParts.ts'
import { nanometres } from '../../core/measure/length.ts'
import { defineAction } from '../command.ts'
import type { Edited } from '../document.ts'
import { yes } from '../option.ts'
import type { Notice, Reply } from '../reply.ts'
import type { Show } from '../show.ts'
import { type ForEverybody, forEverybody, inWords } from './forEverybody.ts'
import { current, fillPlaces, type Group, groupOf, organisersOnly } from './group.ts'
import { groupFigures, kitNames } from './groupReply.ts'
import { mergedList, workKits } from './kits.ts'
import { groupList } from './list.ts'
import { numberOf } from './textNumber.ts'

/** Changes that are said of a new version; of more the list itself tells. */
const MOST_CHANGES = 8

/** What a version is compared with the next by: how many of each row, and a number for what each kit is made of. */
interface Listing {
  readonly rows: Record<string, number>
  readonly kits: Record<string, number>
}

/** What a row looks like on the bench: nanometres, and the names of the part. */
const lookOf = ({ from, length, width, thickness, material = '', later, names }: MergedPart): string =>
  JSON.stringify([from, length, width, thickness, material, later, names.join(', ')])

/** The same read back. */
function readLook(row: string) {
  const [from, length, width, thickness, , , names] = JSON.parse(row) as [
    MergedPart['from'],
    number,
    number,
    number,
    string,
    boolean,
    string,
  ]
  return { from, length, width, thickness, names }
}

/** What a part is cut from, but for its material: sheets of one thickness, strips of one section. */
const sectionOf = ({ from, thickness, width }: ReturnType<typeof readLook>): string =>
  JSON.stringify(from === 'sheet' ? [from, thickness] : [from, thickness, width])

function listingOf(group: Group, everybody: ForEverybody): Listing {
  const worked = workKits(group, everybody(group))
  return {
    rows: Object.fromEntries(
      mergedList(group, worked).map((part) => [lookOf(part), part.count + part.spare]),
    ),
    kits: Object.fromEntries(
      worked.map(({ member, worked: kit }) => [
        kitLabel(member.kit),
        numberOf(JSON.stringify(kit?.cut ?? null)),
      ]),
    ),
  }
}

/** The group with the next version posted, where the list is not what was posted last, or nothing was and `first` is set. */
function posted(group: Group, everybody: ForEverybody, first: boolean): Group {
  if (!group.posted && !first) return group
  const now = listingOf(group, everybody)
  const before = group.posted ? { rows: group.posted.rows, kits: group.posted.kits } : { rows: {}, kits: {} }
  if (group.posted && changesOf(before.rows, now.rows).length + changesOf(before.kits, now.kits).length === 0)
    return group
  return {
    ...group,
    posted: {
      version: (group.posted?.version ?? 0) + 1,
      at: everybody(group).request.at.toISOString(),
      ...now,
      before,
    },
  }
}

/** To be made of every change of a group: a list that is up already gets its next version. */
export const reposted = (group: Group, everybody: ForEverybody): Group => posted(group, everybody, false)

interface Change {
  readonly row: string
  /** Undefined where it was not there. */
  readonly was: number | undefined
  readonly is: number | undefined
}

const changesOf = (
  before: Readonly<Record<string, number>>,
  now: Readonly<Record<string, number>>,
): readonly Change[] =>
  [...new Set([...Object.keys(before), ...Object.keys(now)])]
    .map((row) => ({ row, was: before[row], is: now[row] }))
    .filter(({ was, is }) => was !== is)

/** `reply` with the posted list beside it, where it is another than before. */
export function withNotice(
  reply: Reply,
  { before, after, revision }: Edited<Group>,
  everybody: ForEverybody,
): Reply {
  const isSame =
    after.posted?.version === before?.posted?.version &&
    after.locked === before?.locked &&
    after.date === before?.date &&
    after.title === before?.title
  return isSame ? reply : { ...reply, ...noticeOf(after, revision, everybody) }
}

function noticeOf(group: Group, revision: number, everybody: ForEverybody): { readonly notice?: Notice } {
  if (!group.posted) return {}
  const context = everybody(group)
  const worked = workKits(group, context)
  const reply = inWords(groupList(group, worked, mergedList(group, worked), context), context.show)
  const { version, at } = group.posted
  return {
    notice: {
      name: 'group',
      revision,
      since: group.opened,
      reply: {
        ...reply,
        answer: `${group.title}${group.date ? `, ${group.date}` : ''}. ${reply.answer}`,
        notes: [
          `version ${version} of ${at.slice(0, 16).replace('T', ' ')} UTC${group.locked ? ', locked: this is what is cut' : ''}`,
          ...changeLines(group, context.show),
          ...(reply.notes ?? []),
        ],
        buttons: [
          ...(group.locked ? [] : [{ label: 'Join', line: 'group join' }]),
          { label: 'My kit', line: 'group kit' },
          { label: 'Who brings what', line: 'group needs' },
        ],
        audience: 'channel',
      },
    },
  }
}

/** `changed since v3: K02 changed, K04 new; side panel 18 x 12 in 2, none before; ...` */
function changeLines({ posted: last }: Group, show: Show): readonly string[] {
  if (!last || last.version === 1) return []
  const kits = changesOf(last.before.kits, last.kits)
  const which = (what: string, is: (change: Change) => boolean) => {
    const found = kits.filter(is).map(({ row }) => Number(row.slice(1)))
    return found.length > 0 ? [`${kitNames(found)} ${what}`] : []
  }
  const who = [
    ...which('changed', ({ was, is }) => was !== undefined && is !== undefined),
    ...which('new', ({ was }) => was === undefined),
    ...which('gone', ({ is }) => is === undefined),
  ]
  const rows = changesOf(last.before.rows, last.rows)
  const looks = rows.map(({ row }) => readLook(row))
  const thick = new Set(looks.map(sectionOf)).size > new Set(looks.map(({ from }) => from)).size
  const said = rows.slice(0, MOST_CHANGES).map((each) => changeWords(each, show, thick))
  const more = rows.length - said.length
  const sizes = [...said, ...(more > 0 ? [`and ${more} more sizes`] : [])]
  return [
    `changed since v${last.version - 1}: ${who.length > 0 ? who.join('; ') : 'how many are spare'}`,
    ...(sizes.length > 0 ? [`so in the list: ${sizes.join('; ')}`] : []),
  ]
}

/** `thick` says how thick it is as well, for where that is what has changed. */
function changeWords({ row, was, is }: Change, show: Show, thick: boolean): string {
  const { from, length, width, thickness, names } = readLook(row)
  const sides = from === 'sheet' ? [length, width] : [length]
  const sized = sides.map((side) => show.mark(nanometres(side), 'into')).join(' x ')
  const section = (from === 'sheet' ? [thickness] : [thickness, width]).map((side) =>
    show.mark(nanometres(side), 'mark', true),
  )
  const of = thick ? ` of ${section.join(' x ')}` : ''
  return `${names} ${sized} ${show.unit}${of} ${is ?? 'none'}, ${was === undefined ? 'none before' : `was ${was}`}`
}

export const post = defineAction({
  summary: 'Put the list up for the whole channel; from then on it is edited in place when it changes',
  options: z.strictObject({}),
  run: async (_input, context) => {
    await organisersOnly(context, 'posts the list')
    const everybody = await forEverybody(context)
    const { after, revision } = await groupOf(context).change((kept) =>
      posted(current(kept), everybody, true),
    )
    const worked = workKits(after, context)
    return {
      answer: `Version ${after.posted?.version} is up${after.locked ? ', and locked' : ''}`,
      notes: after.locked ? [] : ['"group lock" keeps the list as it is, once it is final'],
      buttons: [{ label: 'Lock it', line: 'group lock' }],
      figures: groupFigures(after, worked, mergedList(after, worked)),
      ...noticeOf(after, revision, everybody),
    }
  },
})

export const lock = defineAction({
  summary: 'Keep the list as it is: nobody joins or changes a kit any more',
  options: z.strictObject({ off: yes('let people join and change again').optional() }),
  run: async ({ off = false }, context) => {
    await organisersOnly(context, 'locks the list')
    const everybody = await forEverybody(context)
    const edited = await groupOf(context).change((kept) =>
      reposted(fillPlaces({ ...current(kept), locked: !off }), everybody),
    )
    const { after } = edited
    const worked = workKits(after, context)
    const reply: Reply = {
      answer: off ? 'Unlocked: people may join and change their kits' : 'Locked: the list stays as it is',
      figures: { ...groupFigures(after, worked, mergedList(after, worked)), locked: !off },
      audience: 'channel',
    }
    return withNotice(reply, edited, everybody)
  },
})
