import { z } from 'zod'
import { defineAction, defineVerbs } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { choice, first, words } from '../src/bot/option.ts'
import { HELD_NAMES, NO_ORGANISERS, type Organisers, organises, personOf } from '../src/bot/organisers.ts'
import { Refusal } from '../src/bot/refusal.ts'
import type { Reply } from '../src/bot/reply.ts'

const MOST = 50

const show = defineAction({
  summary: 'Who organises this channel, and what only they change',
  options: z.strictObject({}),
  run: async (_input, context) => replyTo((await context.organisers.read()) ?? NO_ORGANISERS, context),
})

const add = defineAction({
  summary: 'Make somebody an organiser',
  options: z.strictObject({ person: first(words('who', '@sam')) }),
  run: ({ person }, context) => {
    const id = personOf(person)
    return change(context, (kept) => {
      if (kept.people.length >= MOST)
        throw new Refusal('invalid', `there are ${MOST} organisers, the most there can be`)
      return { ...kept, people: [...new Set([...kept.people, id])] }
    })
  },
})

const remove = defineAction({
  summary: 'Take somebody off the list of organisers',
  options: z.strictObject({ person: first(words('who', '@sam')) }),
  run: ({ person }, context) => {
    const id = personOf(person)
    return change(context, (kept) => {
      if (!kept.people.includes(id))
        throw new Refusal('invalid', `${id} is not on the list; "organisers" shows it`)
      const people = kept.people.filter((listed) => listed !== id)
      if (people.length === 0 && kept.held.length > 0 && context.request.managesChannel === undefined)
        throw new Refusal(
          'invalid',
          'somebody must be left who may change what is held; open it first, or add another',
        )
      return { ...kept, people }
    })
  },
})

const thing = () => first(choice('what of the channel', ['all', ...HELD_NAMES]))

const hold = defineAction({
  summary: 'Let only organisers change it',
  options: z.strictObject({ what: thing() }),
  run: ({ what }, context) =>
    change(context, (kept) => ({
      // Whoever is the first to hold something back has to be able to open it again.
      people: context.request.managesChannel
        ? kept.people
        : [...new Set([...kept.people, context.request.user])],
      held: HELD_NAMES.filter((name) => what === 'all' || name === what || kept.held.includes(name)),
    })),
})

const open = defineAction({
  summary: 'Let everybody change it again',
  options: z.strictObject({ what: thing() }),
  run: ({ what }, context) =>
    change(context, (kept) => ({
      ...kept,
      held: kept.held.filter((name) => what !== 'all' && name !== what),
    })),
})

/** Changes the list, which organisers do; where there is none yet and the platform knows of no roles, anybody may begin. */
async function change(context: Context, edit: (kept: Organisers) => Organisers): Promise<Reply> {
  const { after } = await context.organisers.change((kept = NO_ORGANISERS) => {
    const { request } = context
    const begins = kept.people.length === 0 && request.managesChannel === undefined
    if (!begins && !organises(request, kept))
      throw new Refusal(
        'invalid',
        'only an organiser, or whoever manages this channel, changes the list; ask one of them',
      )
    return edit(kept)
  })
  return replyTo(after, context)
}

async function replyTo({ people, held }: Organisers, { nameOf }: Context): Promise<Reply> {
  const names = await Promise.all(people.map(nameOf))
  return {
    answer:
      held.length === 0 ? 'Everybody changes everything here' : `Only organisers change: ${held.join(', ')}`,
    notes: [
      `organisers: ${names.length === 0 ? 'nobody is listed' : names.join(', ')}`,
      'whoever may manage the channel is one as well, where the chat service says so',
    ],
    figures: { organisers: people, held },
  }
}

export default defineVerbs({
  name: 'organisers',
  summary: 'Who organises this channel, and what only they change: add, remove, hold, open',
  examples: ['organisers', 'organisers add @sam', 'organisers hold project', 'organisers open all'],
  verbs: { show, add, remove, hold, open },
  fallback: 'show',
})
