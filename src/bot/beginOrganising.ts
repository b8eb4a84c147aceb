import type { Context } from './context.ts'
import { NO_ORGANISERS, organises } from './organisers.ts'
import { Refusal } from './refusal.ts'

/**
 * What only organisers begin makes the first who begins it one, where nobody organises the channel yet and the platform
 * knows of no roles. Throws a Refusal where others organise it.
 */
export async function beginOrganising({ organisers, request }: Context): Promise<void> {
  const kept = (await organisers.read()) ?? NO_ORGANISERS
  if (organises(request, kept)) return
  if (kept.people.length > 0 || request.managesChannel !== undefined)
    throw new Refusal('invalid', 'only an organiser begins this; "organisers" lists them')
  await organisers.change((now = NO_ORGANISERS) => ({ ...now, people: [...now.people, request.user] }))
}
