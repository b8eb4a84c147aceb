import fc from 'fast-check'
import { expect } from 'vitest'
import type { DocumentKey, Revision, Store } from '../../src/bot/state.ts'

/** A document as plain arrays: what any store must agree with. */
export class DocumentModel {
  readonly kept: number
  log: Revision[] = []
  /** The edits in force and those that redo can reach, and how many of them are in force. */
  edits: { readonly body: unknown; readonly revision: Revision }[] = []
  depth = 0
  /** The shallowest edit that is still kept. */
  oldest = 0
  constructor(kept: number) {
    this.kept = kept
  }
  get revision(): number {
    return this.log.length
  }
  get body(): unknown {
    return this.bodyAt(this.depth)
  }
  bodyAt(depth: number): unknown {
    return depth === 0 ? undefined : this.edits[depth - 1]?.body
  }
  add(way: Revision['way'], at: Date): Revision {
    const revision = { revision: this.revision + 1, at, way, ...signature(way, this.revision) }
    this.log.push(revision)
    return revision
  }
  /** To be called once the depth is the new one. */
  prune(): void {
    this.oldest = Math.max(this.oldest, this.depth - this.kept)
  }
  /** The depth that undo or redo leads to, if it leads anywhere. */
  target(way: 'undo' | 'redo'): number | undefined {
    const depth = this.depth + (way === 'undo' ? -1 : 1)
    const reachable = depth === 0 || (depth >= Math.max(1, this.oldest) && depth <= this.edits.length)
    return reachable ? depth : undefined
  }
}

const signature = (way: string, number: number) => ({ user: `U${number % 3}`, command: `${way} ${number}` })
const timeOf = (model: DocumentModel) => new Date(Date.UTC(2026, 0, 1) + model.revision * 1000)

interface Real {
  readonly store: Store
  readonly key: DocumentKey
}
type Step = fc.AsyncCommand<DocumentModel, Real, false>

const step = (name: string, run: (model: DocumentModel, real: Real) => Promise<void>): Step => ({
  check: () => true,
  toString: () => name,
  run,
})

const change = (body: unknown): Step =>
  step(`change(${JSON.stringify(body)})`, async (model, { store, key }) => {
    const at = timeOf(model)
    const expected = model.revision
    const author = signature('edit', model.revision)
    const revision = model.add('edit', at)
    model.edits = [...model.edits.slice(0, model.depth), { body: JSON.parse(JSON.stringify(body)), revision }]
    model.depth += 1
    model.prune()
    expect(await store.change(key, expected, body, author, at)).toEqual({
      status: 'changed',
      revision: model.revision,
    })
  })

const changeStale = (distance: number): Step =>
  step(`changeStale(${distance})`, async (model, { store, key }) => {
    const { revision } = model
    const result = await store.change(
      key,
      revision + distance,
      'stale',
      signature('edit', revision),
      timeOf(model),
    )
    expect(result).toEqual({ status: 'conflict', revision })
  })

const move = (way: 'undo' | 'redo'): Step =>
  step(way, async (model, { store, key }) => {
    const at = timeOf(model)
    const target = model.target(way)
    const author = signature(way, model.revision)
    const result = await store[way](key, author, at)
    if (target === undefined) {
      expect(result).toEqual({ status: 'nothing' })
      return
    }
    const revised = model.edits[Math.max(target, model.depth) - 1]?.revision
    model.depth = target
    model.add(way, at)
    model.prune()
    expect(result).toEqual({ status: 'changed', revision: model.revision, body: model.body, revised })
  })

const forget = step('forget', async (model, { store, key }) => {
  const gone = await store.forget(key)
  expect(gone).toBeGreaterThanOrEqual(Math.min(model.revision, model.kept))
  expect(gone).toBeLessThanOrEqual(Math.min(model.revision, 3 * model.kept + 1))
  Object.assign(model, new DocumentModel(model.kept))
})

const look = (most: number): Step =>
  step(`look(${most})`, async (model, { store, key }) => {
    expect(await store.read(key)).toEqual({ revision: model.revision, body: model.body })
    const newest = [...model.log].reverse().slice(0, Math.min(most, model.kept))
    expect(await store.history(key, most)).toEqual(newest)
  })

/** Any run of changes, stale changes, undos, redos, looks and deletions. */
export const steps = fc.commands<DocumentModel, Real, false>(
  [
    fc.jsonValue().map(change),
    fc.integer({ min: 0, max: 9 }).map(change),
    fc.constantFrom(-1, 1, 7).map(changeStale),
    ...Array.from({ length: 3 }, () => fc.constant(move('undo'))),
    ...Array.from({ length: 2 }, () => fc.constant(move('redo'))),
    fc.integer({ min: 1, max: 12 }).map(look),
    fc.constant(forget),
  ],
  { maxCommands: 60, size: 'max' },
)
