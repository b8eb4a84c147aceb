import type { WebClient } from '@slack/web-api'
import { describe, expect, it } from 'vitest'
import { createPeople, type Whereabouts } from '../../../src/platforms/slack/people.ts'

type Learnt = { readonly user: object } | Error

/** Slack as far as people go: what it says of them, and how often it was asked. */
function open(
  user: () => Promise<Learnt>,
  creator: () => Promise<string | undefined> = async () => undefined,
) {
  const clock = { hours: 0 }
  const asked = { user: 0, channel: 0 }
  const client = {
    users: {
      info: async () => {
        asked.user += 1
        const learnt = await user()
        if (learnt instanceof Error) throw learnt
        return learnt
      },
    },
    conversations: {
      info: async () => {
        asked.channel += 1
        return { channel: { creator: await creator() } }
      },
    },
  } as unknown as WebClient
  const people = createPeople(() => new Date(Date.UTC(2026, 2, 6, clock.hours)), 50)
  const know = (where: Partial<Whereabouts> = {}) =>
    people.know({ client, team: 'T1', channel: 'C1', user: 'U1', ...where })
  return { clock, asked, know }
}

const refusal = (error: string) => Object.assign(new Error(error), { data: { error } })

describe('a person in Slack', () => {
  it.each([
    [{ is_admin: true }, true],
    [{ is_owner: true }, true],
    [{}, false],
  ])('who is %j manages the channel: %s', async (user, manages) => {
    const { know } = open(async () => ({ user: { ...user, locale: 'de-DE' } }))
    expect(await know()).toEqual({ locale: 'de-DE', managesChannel: manages })
  })

  it('who made the channel manages it, and nobody another', async () => {
    const { know } = open(
      async () => ({ user: {} }),
      async () => 'U1',
    )
    expect(await know()).toEqual({ managesChannel: true })
    expect(await know({ user: 'U2' })).toEqual({ managesChannel: false })
  })

  it('manages their own conversation with the bot', async () => {
    const { know, asked } = open(async () => ({ user: {} }))
    expect(await know({ channel: 'D1' })).toEqual({ managesChannel: true })
    expect(asked.channel).toBe(0)
  })

  it('is asked about once an hour, also by many at a time', async () => {
    const { know, asked, clock } = open(async () => ({ user: { locale: 'de-DE' } }))
    await Promise.all([know(), know(), know()])
    expect(asked).toEqual({ user: 1, channel: 1 })
    clock.hours = 2
    await know()
    expect(asked).toEqual({ user: 2, channel: 2 })
  })

  it('is not asked about where the scope is missing, nor is anybody else there', async () => {
    const { know, asked, clock } = open(async () => refusal('missing_scope'))
    expect(await know({ name: 'ann' })).toEqual({ name: 'ann', managesChannel: false })
    await know({ user: 'U2' })
    expect(asked.user).toBe(1)
    await know({ team: 'T2' })
    expect(asked.user).toBe(2)
    clock.hours = 2
    await know()
    expect(asked.user).toBe(3)
  })

  it('has no roles where neither scope was granted, which is more than not to manage', async () => {
    const refuse = async () => refusal('missing_scope')
    const { know } = open(refuse, async () => {
      throw refusal('missing_scope')
    })
    expect([await know(), await know()]).toEqual([{}, {}])
  })

  it('is called as in Slack, before what the event says', async () => {
    const { know } = open(async () => ({ user: { profile: { display_name: '' }, real_name: 'Ann Smith' } }))
    expect(await know({ name: 'ann' })).toMatchObject({ name: 'Ann Smith' })
  })

  it('is asked about again after a failure that passes', async () => {
    let isDown = true
    const { know } = open(async () => (isDown ? refusal('internal_error') : { user: { locale: 'de-DE' } }))
    expect(await know()).toEqual({ managesChannel: false })
    isDown = false
    expect(await know()).toEqual({ locale: 'de-DE', managesChannel: false })
  })

  it('does not hold an answer up while Slack is slow', async () => {
    const { know } = open(() => new Promise(() => {}))
    expect(await know()).toEqual({ managesChannel: false })
  })
})
