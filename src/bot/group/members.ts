import { z } from 'zod'
import { kitLabel } from '../../core/group/mergeParts.ts'
import { defineAction } from '../command.ts'
import type { Context } from '../context.ts'
import { fewCautions } from '../fewCautions.ts'
import { first, words, yes } from '../option.ts'
import { overlay, type PlanChoices } from '../planChoices.ts'
import { choicesFrom, planOptions } from '../planOptions.ts'
import { partTables, planAnswer, planFigures, sawNotes, sizeNotes } from '../planReply.ts'
import { priceBook } from '../prices.ts'
import { quoted, Refusal } from '../refusal.ts'
import type { Reply } from '../reply.ts'
import { didYouMean } from '../suggest.ts'
import { changeOptions } from './changeOptions.ts'
import { forEverybody } from './forEverybody.ts'
import {
  current,
  FIRST_PLAN,
  fillPlaces,
  type Group,
  groupOf,
  type Member,
  MOST_MEMBERS,
  memberOf,
  planName,
  unlocked,
  withMember,
} from './group.ts'
import { groupFigures } from './groupReply.ts'
import { builderOf, kitNumber, whichKit } from './kitNumber.ts'
import { mergedList, type WorkedKit, workKit, workKits } from './kits.ts'
import { reposted, withNotice } from './posting.ts'

const whichPlan = words('which of the shared plans', FIRST_PLAN).optional()

/** A plan the group has. Throws a Refusal that lists them. */
function planNamed(group: Group, typed: string): string {
  const name = planName(group, typed)
  if (Object.hasOwn(group.plans, name)) return name
  const names = Object.keys(group.plans)
  throw new Refusal(
    'invalid',
    `there is no plan ${quoted(name)} in this group; there is ${names.join(', ')}.${didYouMean(name, names)}`,
  )
}

/** A kit that can be built. Throws a Refusal with the reason where it cannot, so that none such is ever kept. */
function sound(group: Group, member: Member, context: Context): WorkedKit {
  const kit = workKit(group, member, context)
  if (kit.refusal) throw kit.refusal
  return kit
}

export const join = defineAction({
  summary: 'Take a place, with your own size or options where they differ from the plan',
  options: z.strictObject({ ...planOptions, plan: whichPlan }),
  run: async ({ plan = FIRST_PLAN, ...input }, context) => {
    const { user } = context.request
    const changes = onlyGiven(choicesFrom(input))
    const everybody = await forEverybody(context)
    const edited = await groupOf(context).change((kept) => {
      const group = unlocked(current(kept))
      const own = group.members.find((member) => member.user === user)
      if (own)
        throw new Refusal(
          'invalid',
          `you have ${kitLabel(own.kit)} already; "group change" changes it, "group leave" gives it up`,
        )
      if (group.members.length >= MOST_MEMBERS)
        throw new Refusal('invalid', `the waiting list is full: a group has ${MOST_MEMBERS} people at most`)
      const member = {
        user,
        kit: group.nextKit,
        plan: planNamed(group, plan),
        changes,
        waiting: true,
        paid: 0,
      }
      sound(group, member, context)
      return reposted(
        fillPlaces({ ...group, members: [...group.members, member], nextKit: group.nextKit + 1 }),
        everybody,
      )
    })
    const { after } = edited
    const member = memberOf(after, user)
    const said = member.waiting ? 'Waiting for a place' : 'You have a place'
    return withNotice(kitCard(after, member, context, said), edited, everybody)
  },
})

export const change = defineAction({
  summary: 'Change your own kit; a later change of the shared plan still reaches the rest of it',
  options: z.strictObject({
    ...changeOptions,
    plan: whichPlan,
    anew: yes('take the plan as it is, without what you changed before').optional(),
  }),
  run: async ({ plan, anew = false, ...input }, context) => {
    const { user } = context.request
    const changes = onlyGiven(choicesFrom(input))
    if (plan === undefined && !anew && Object.keys(changes).length === 0)
      throw new Refusal('invalid', 'what changes? Add an option, such as: group change height=16in')
    const everybody = await forEverybody(context)
    const edited = await groupOf(context).change((kept) => {
      const group = unlocked(current(kept))
      const { kit } = memberOf(group, user)
      const next = withMember(group, kit, (member) => {
        const changed = {
          ...member,
          plan: plan === undefined ? member.plan : planNamed(group, plan),
          changes: anew ? changes : overlay(member.changes, changes),
        }
        sound(group, changed, context)
        return changed
      })
      return reposted(next, everybody)
    })
    return withNotice(
      kitCard(edited.after, memberOf(edited.after, user), context, 'Changed'),
      edited,
      everybody,
    )
  },
})

export const leave = defineAction({
  summary: 'Give up your place; what is kept of you here is deleted',
  options: z.strictObject({
    kit: first(words('the kit of somebody who does not come, as an organiser', 'K07')).optional(),
  }),
  run: async ({ kit: typed }, context) => {
    const kit = typed === undefined ? undefined : kitNumber(typed)
    const organises = await context.isOrganiser()
    const everybody = await forEverybody(context)
    let gone: Member | undefined
    const edited = await groupOf(context).change((kept) => {
      const group = current(kept)
      gone = kit === undefined ? memberOf(group, context.request.user) : builderOf(group, kit)
      if (gone.user !== context.request.user && !organises)
        throw new Refusal('invalid', 'only an organiser takes somebody else off the list')
      return reposted(fillPlaces(without(group, gone)), everybody)
    })
    const { before, after } = edited
    // What was kept of the one who left is in every earlier revision too.
    await groupOf(context).trim()
    const label = kitLabel(gone?.kit ?? 0)
    const worked = workKits(after, context)
    const moved = after.members.filter(
      ({ kit: own, waiting }) => !waiting && before?.members.some((was) => was.kit === own && was.waiting),
    )
    const reply: Reply = {
      answer:
        gone?.user === context.request.user
          ? `You have left, and nothing of you is kept here; ${label} goes to nobody`
          : `${label} is off the list, and nothing of its owner is kept here; ${label} goes to nobody`,
      notes: [
        ...moved.map((next) => `${kitLabel(next.kit)} moves up from the waiting list`),
        ...(gone?.paid
          ? [`${(await priceBook(context)).show(gone.paid)} was marked as paid: settle that`]
          : []),
      ],
      figures: { ...groupFigures(after, worked, mergedList(after, worked)), kit: gone?.kit ?? 0 },
    }
    return withNotice(reply, edited, everybody)
  },
})

/** The group without this member and all that is theirs. What they ticked off of other kits stays done, by nobody. */
const without = (group: Group, { user, kit }: Member): Group => ({
  ...group,
  members: group.members.filter((member) => member.kit !== kit),
  needs: group.needs.map((need) => ({
    ...need,
    claims: need.claims.filter((claim) => claim.user !== user),
  })),
  brought: group.brought.filter((each) => each.user !== user),
  done: group.done
    .filter((tick) => tick.kit !== kit)
    .map((tick) => (tick.user === user ? { ...tick, user: '' } : tick)),
})

export const kit = defineAction({
  summary: 'One kit: yours, or the one with this number',
  options: z.strictObject({ kit: first(whichKit).optional() }),
  run: async ({ kit: typed }, context) => {
    const group = current(await groupOf(context).read())
    const member =
      typed === undefined ? memberOf(group, context.request.user) : builderOf(group, kitNumber(typed))
    return kitCard(group, member, context, '')
  },
})

const onlyGiven = (choices: PlanChoices): PlanChoices =>
  Object.fromEntries(Object.entries(choices).filter(([, value]) => value !== undefined))

/** All that one member needs for one kit, in private. */
function kitCard(group: Group, member: Member, context: Context, said: string): Reply {
  const { show, settled } = context
  const name = kitLabel(member.kit)
  const { worked, problem, cautions } = workKit(group, member, context)
  const state = said === '' ? '' : `${said}. `
  if (!worked)
    return {
      answer: `${state}${name} cannot be built as it stands: ${problem}`,
      buttons: [{ label: 'The group', line: 'group' }],
      figures: { kit: member.kit, waiting: member.waiting, sound: false },
    }
  const { plan, cut, warnings, assumptions } = worked
  const few = fewCautions(cautions)
  return {
    answer: `${state}${name}: ${planAnswer(plan, show)}`,
    cautions: few.cautions,
    tables: partTables(plan, show, cut),
    notes: [
      `write ${name} and the letter on every part: ${cut.map(({ label }) => `${name}-${label}`).join(', ')}`,
      ...sizeNotes(plan, show),
      ...warnings,
      ...sawNotes(plan, show, settled.kerf),
      ...assumptions,
    ],
    buttons: [
      { label: 'The group', line: 'group' },
      { label: 'Who brings what', line: 'group needs' },
      ...few.buttons,
    ],
    figures: { ...planFigures(plan), kit: member.kit, waiting: member.waiting, sound: true },
  }
}
