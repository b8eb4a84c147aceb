import { z } from 'zod'
import type { Money } from '../../core/measure/money.ts'
import { beginOrganising } from '../beginOrganising.ts'
import { defineAction } from '../command.ts'
import type { Context } from '../context.ts'
import { fewCautions } from '../fewCautions.ts'
import { choice, count, first, money, words, yes } from '../option.ts'
import { overlay } from '../planChoices.ts'
import { choicesFrom } from '../planOptions.ts'
import { quoted, Refusal } from '../refusal.ts'
import type { Notice, Reply } from '../reply.ts'
import { namedChangeOptions } from './changeOptions.ts'
import { forEverybody } from './forEverybody.ts'
import {
  current,
  FIRST_PLAN,
  fillPlaces,
  type Group,
  groupOf,
  MOST_MEMBERS,
  MOST_PLANS,
  organisersOnly,
  planName,
  unlocked,
} from './group.ts'
import { groupFigures, kitCautions, kitNames } from './groupReply.ts'
import { mergedList, problemLines, type WorkedKit, workChoices, workKit, workKits } from './kits.ts'
import { reposted, withNotice } from './posting.ts'
import { centsOf } from './sameMoney.ts'
import { standing } from './standing.ts'

const PLACES = 20

/** What an organiser may set of a group, when it opens and later. */
const terms = {
  date: words('when, as people say it', 'Saturday 9 May, 10:00').optional(),
  places: count('how many may take part', 1, MOST_MEMBERS).optional(),
  spare: count('spare strips, in percent of each row, rounded up', 0, 100).optional(),
  share: choice('how what is bought for all is shared', ['evenly', 'by size']).optional(),
  deposit: money('what everybody pays ahead', '10').optional(),
}

interface Terms {
  readonly title?: string | undefined
  readonly date?: string | undefined
  readonly places?: number | undefined
  readonly spare?: number | undefined
  readonly share?: Group['share'] | undefined
  readonly deposit?: Money | undefined
}

const withTerms = (group: Group, { title, date, places, spare, share, deposit }: Terms): Group =>
  fillPlaces({
    ...group,
    title: title?.slice(0, 60) ?? group.title,
    ...(date !== undefined && { date: date.slice(0, 60) }),
    places: places ?? group.places,
    spare: spare ?? group.spare,
    share: share ?? group.share,
    deposit: deposit?.cents ?? group.deposit,
  })

export const open = defineAction({
  summary: 'Open a group build from the plan of this channel',
  options: z.strictObject({ title: first(words('what it is called', 'Spring planters')), ...terms }),
  run: async ({ title, ...input }, context) => {
    const { project } = context
    if (!project)
      throw new Refusal(
        'invalid',
        'a group builds from a plan: start one first, such as: project start 17in x 13in height=15in',
      )
    await beginOrganising(context)
    if (input.deposit) await centsOf(input.deposit, context)
    const { after } = await groupOf(context).change((kept) => {
      if (kept)
        throw new Refusal(
          'invalid',
          `there is a group here already, ${quoted(kept.title)}; "group close" ends it`,
        )
      return withTerms(
        {
          title: title.slice(0, 60),
          opened: context.request.at.toISOString(),
          places: PLACES,
          locked: false,
          ...(project.units && { units: project.units }),
          plans: {
            [FIRST_PLAN]: { ...project.choices, region: project.choices.region ?? context.settled.region },
          },
          members: [],
          nextKit: 1,
          needs: [],
          brought: [],
          spare: 0,
          share: 'evenly',
          deposit: 0,
          done: [],
        },
        input,
      )
    })
    const reply = await standing(after, context)
    return {
      ...reply,
      answer: `Open: ${reply.answer}`,
      notes: [
        'join with "group join", with your own size if it is another: group join object=14in round',
        ...(reply.notes ?? []),
      ],
    }
  },
})

export const set = defineAction({
  summary: 'Change the title, date, places, spares, shares or deposit',
  options: z.strictObject({ ...terms, title: words('what it is called', 'Spring planters').optional() }),
  run: async (input, context) => {
    await organisersOnly(context, 'changes what a group is set to')
    if (Object.values(input).every((value) => value === undefined))
      throw new Refusal(
        'invalid',
        'what is to be set? Add title=, date=, places=, spare=, share= or deposit=',
      )
    if (input.deposit) await centsOf(input.deposit, context)
    const everybody = await forEverybody(context)
    const edited = await groupOf(context).change((kept) => {
      const group = current(kept)
      return reposted(withTerms(input.spare === undefined ? group : unlocked(group), input), everybody)
    })
    const reply = await standing(edited.after, context)
    const said = {
      ...reply,
      answer: `Set. ${reply.answer}`,
      notes: [...moreThanPlaces(edited.after), ...(reply.notes ?? [])],
    }
    return withNotice(said, edited, everybody)
  },
})

/** Nobody loses the place they have. */
function moreThanPlaces({ members, places }: Group): readonly string[] {
  const taken = members.filter(({ waiting }) => !waiting).length
  return taken > places
    ? [`all ${taken} keep the place they have; nobody moves up until fewer than ${places} are left`]
    : []
}

export const plan = defineAction({
  summary: 'Change the shared plan, or add one beside it; says whom that changes',
  options: z.strictObject({
    plan: first(words('which of the shared plans; a new name adds one', FIRST_PLAN)).optional(),
    ...namedChangeOptions,
  }),
  run: async ({ plan: typed = FIRST_PLAN, ...input }, context) => {
    await organisersOnly(context, 'changes the shared plan')
    if (!/^\s*[\p{L}\p{N}][\p{L}\p{N} -]{0,19}\s*$/u.test(typed))
      throw new Refusal(
        'invalid',
        `${quoted(typed)} is no name for a plan; take letters and numbers, 20 at most, such as: group plan low height=9in`,
      )
    const changes = choicesFrom(input)
    if (Object.values(changes).every((value) => value === undefined))
      throw new Refusal('invalid', 'what changes? Add an option, such as: group plan sheet=18mm')
    const everybody = await forEverybody(context)
    const edited = await groupOf(context).change((kept) => {
      const group = unlocked(current(kept))
      const name = planName(group, typed)
      const known = Object.hasOwn(group.plans, name) ? group.plans[name] : undefined
      if (!known && Object.keys(group.plans).length >= MOST_PLANS)
        throw new Refusal('invalid', `a group has ${MOST_PLANS} plans at most`)
      const base = known ?? group.plans[FIRST_PLAN] ?? {}
      return reposted({ ...group, plans: { ...group.plans, [name]: overlay(base, changes) } }, everybody)
    })
    const { before, after } = edited
    const reply = whomItChanges(before, after, planName(after, typed), context)
    return withNotice(reply, edited, everybody)
  },
})

function whomItChanges(was: Group | undefined, group: Group, name: string, context: Context): Reply {
  const worked = workKits(group, context)
  // Those who wait are told as well: what they build when they get a place has changed too.
  const everyKit = (of: Group) => of.members.map((member) => workKit(of, member, context))
  const before = was ? everyKit(was) : []
  const isNew = was !== undefined && !Object.hasOwn(was.plans, name)
  const { refusal } = workChoices(group.plans[name] ?? {}, context)
  const builtAs = (kit: WorkedKit | undefined) => JSON.stringify(kit?.worked?.plan ?? null)
  const changed = everyKit(group).filter(
    (kit) => builtAs(kit) !== builtAs(before.find(({ member }) => member.kit === kit.member.kit)),
  )
  const numbers = changed.map(({ member }) => member.kit)
  const broken = changed.filter(({ problem }) => problem).map(({ member }) => member.kit)
  const merged = mergedList(group, worked)
  const cautions = fewCautions(kitCautions(worked, context))
  return {
    answer: isNew
      ? `New plan ${name} beside ${Object.keys(was.plans).join(', ')}: group join plan=${name}`
      : numbers.length === 0
        ? `Plan ${name} changed; no kit is built otherwise for it`
        : `Plan ${name} changed; ${numbers.length === 1 ? 'one kit is' : `${numbers.length} kits are`} built otherwise now: ${kitNames(numbers)}`,
    cautions: cautions.cautions,
    notes: [
      ...(refusal ? [`plan ${name} cannot be built as it stands: ${refusal.message}`] : []),
      ...(broken.length > 0 ? [`no longer possible: ${kitNames(broken)}`] : []),
      ...problemLines(worked),
    ],
    buttons: [{ label: 'The list', line: 'group list' }, ...cautions.buttons],
    figures: { ...groupFigures(group, worked, merged), changed: numbers, broken },
    audience: 'channel',
  }
}

export const close = defineAction({
  summary: 'End the group and delete all that is kept of it',
  options: z.strictObject({ sure: yes('say yes to delete for good').optional() }),
  run: async ({ sure }, context) => {
    await organisersOnly(context, 'closes a group')
    const group = current(await groupOf(context).read())
    if (!sure)
      return {
        answer: `This deletes the group ${quoted(group.title)} with its ${group.members.length} members, for good. To go on: group close sure=yes`,
        buttons: [{ label: 'Delete for good', line: 'group close sure=yes' }],
        figures: { deleted: 0 },
      }
    const [last] = await groupOf(context).history(1)
    const deleted = await groupOf(context).forget()
    return {
      answer: `Closed. Nothing of the group ${quoted(group.title)} is left`,
      figures: { deleted },
      ...closingNotice(group, last?.revision ?? 0),
    }
  },
})

/** What takes the place of a list that is up, so that nobody cuts by it or joins from it. */
const closingNotice = ({ posted, title, opened }: Group, revision: number): { readonly notice?: Notice } =>
  posted
    ? {
        notice: {
          name: 'group',
          revision: revision + 1,
          since: opened,
          reply: {
            answer: `${title} is closed. Its list, last version ${posted.version}, is kept no more`,
            figures: {},
            audience: 'channel',
          },
        },
      }
    : {}
