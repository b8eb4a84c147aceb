import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type CautionRule,
  cautionsFor,
  rulesAbout,
  stopsFor,
  TASKS,
} from '../../../src/core/checks/caution.ts'
import { type Condition, meets } from '../../../src/core/checks/cautionCondition.ts'
import { FACT_KINDS, type FactName, type Facts, OPENINGS } from '../../../src/core/checks/cautionFacts.ts'
import { shippedRules as rules } from './shippedRules.ts'

const idsFor = (facts: Facts): readonly string[] => cautionsFor(facts, rules).map(({ id }) => id)

/** What a person asks, the facts of the answer, the cautions in order. */
const JOBS: readonly (readonly [string, Facts, readonly string[]])[] = [
  [
    '1/4 in strips, 1 1/2 in left',
    { ripWidth: 6.35, pieceAtFence: 38.1 },
    ['fence-block', 'rip-thin', 'manual'],
  ],
  ['1/4 in strips off a wide board', { ripWidth: 6.35, pieceAtFence: 300 }, ['rip-thin', 'manual']],
  ['battens off a 2x6', { ripWidth: 38.1, pieceAtFence: 100 }, ['fence-stick', 'manual']],
  ['a wide rip', { ripWidth: 200, pieceAtFence: 600 }, ['manual']],
  [
    'crosscut blocks',
    { crosscut: true, pieceLength: 203.2 },
    ['fence-and-gauge', 'crosscut-small', 'manual'],
  ],
  ['crosscut rails', { crosscut: true, pieceLength: 900 }, ['fence-and-gauge', 'manual']],
  ['six grooves', { grooves: 6, grooveDepth: 4 }, ['groove-guard', 'manual']],
  ['a deep groove', { grooves: 1, grooveDepth: 12 }, ['groove-guard', 'groove-deep', 'manual']],
  ['a brace cut at 54', { mitre: 54.1 }, ['steep-angle', 'manual']],
  ['a brace cut at 28', { mitre: 28.5 }, ['manual']],
  ['brads', { brads: true }, ['nail-gun']],
  [
    'brads through both parts',
    { brads: true, bradLength: 25, stackThickness: 25 },
    ['brad-through', 'nail-gun'],
  ],
  ['brads that stay in', { brads: true, bradLength: 20, stackThickness: 25 }, ['nail-gun']],
  ['oil', { finishKind: 'oil', coats: 2 }, ['oily-rags', 'fumes']],
  ['shellac', { finishKind: 'solvent' }, ['fumes']],
  ['water poly', { finishKind: 'water', coats: 3 }, []],
  ['paint in a cold shed', { finishKind: 'water', coats: 2, temperature: 7 }, ['finish-cold']],
  ['glue at 45 F', { glue: true, temperature: 7.2 }, ['glue-cold']],
  ['glue, nobody said how warm', { glue: true }, ['glue-label']],
  ['glue in a warm room', { glue: true, temperature: 21 }, []],
  ['a birch sheet of 36.7 kg', { weight: 36.7, sheetCut: true }, ['lift-two', 'full-sheet', 'manual']],
  ['a sheet of 19 kg', { weight: 19 }, ['lift-help']],
  ['a panel of 6 kg', { weight: 6 }, []],
  ['old boards', { scrap: true }, ['old-paint', 'scrap-metal']],
  ['treated rails', { treated: true }, ['treated-cutting']],
  [
    'a treated raised bed',
    { treated: true, object: 'raised beds' },
    ['planter-load', 'wet-edges', 'treated-food', 'treated-cutting'],
  ],
  ['MDF', { material: '18mm MDF', dust: true }, ['dust-board', 'wood-dust']],
  ['sanding', { dust: true }, ['wood-dust']],
  ['a long day at the saw', { cuts: 60 }, ['noise']],
  ['a loud saw', { noise: 95 }, ['noise']],
  ['a quiet saw', { noise: 80, cuts: 8 }, []],
  ['a tall box', { height: 1500, base: 400 }, ['tip-over']],
  ['a box three times its base', { height: 1200, base: 400 }, []],
  ['a tree', { object: 'Christmas tree' }, ['tree-heat', 'blocked-exit', 'cord', 'wet-edges']],
  ['a planter', { object: 'two planters', open: 'top' }, ['planter-load', 'wet-edges']],
  ['a candle box', { object: 'candles' }, ['candle']],
  ['a battery lantern box', { object: 'battery-powered lanterns', open: 'top' }, []],
  ['a cat tree', { object: 'cat tree' }, []],
  ['a socket set', { object: 'socket set' }, []],
  ['a lamp', { object: 'desk lamp' }, ['cord']],
  ['a cord', { cord: true }, ['cord']],
  ['a server', { object: 'server' }, ['cord', 'warm-air']],
  ['a hall bench', { object: 'hall bench' }, ['blocked-exit']],
  ['a gas meter', { object: 'gas meter' }, ['licensed']],
  ['a generator, both open', { object: 'generator', open: 'both' }, ['exhaust-away']],
  ['a wood stove, both open', { object: 'wood stove', open: 'both' }, ['heat-distance']],
  ['a space heater, top open', { object: 'space heater', open: 'top' }, ['heat-distance']],
  ['a boiler, both open', { object: 'boiler', open: 'both' }, ['heat-distance', 'licensed']],
  ['a wheelie bin', { object: 'wheelie bin', height: 1100, base: 600 }, []],
]

/** What the box is for, what is left open, the rule that stops the answer. */
const STOPS: readonly (readonly [string, Facts['open'], string | undefined])[] = [
  ['generator', undefined, 'stop-exhaust'],
  ['generators', 'none', 'stop-exhaust'],
  ['portable generater', 'top', 'stop-exhaust'],
  ['Generator', 'sides', 'stop-exhaust'],
  ['generator', 'both', undefined],
  ['boat engine', 'none', 'stop-exhaust'],
  ['fire engine bed', 'none', undefined],
  ['toy engine next to a generator', 'none', 'stop-exhaust'],
  ['wood burner', 'none', 'stop-flame'],
  ['log-burner', 'top', 'stop-flame'],
  ['wood-burning stove', 'none', 'stop-flame'],
  ['pizza oven', 'none', 'stop-flame'],
  ['firepit', 'none', 'stop-flame'],
  ['fire pit', 'both', undefined],
  ['BBQ', 'none', 'stop-flame'],
  ['play stove', 'none', undefined],
  ['stove in the play room', 'none', 'stop-flame'],
  ['speaker grill', 'none', undefined],
  ['water heater', 'none', 'stop-fuel'],
  ['water heater', 'top', 'stop-fuel'],
  ['combi boiler', 'none', 'stop-fuel'],
  ['AC unit', 'none', 'stop-outdoor-unit'],
  ['a/c', 'none', 'stop-outdoor-unit'],
  ['A.C. condenser', 'top', 'stop-outdoor-unit'],
  ['air-conditioner', 'sides', 'stop-outdoor-unit'],
  ['airconditioner', 'none', 'stop-outdoor-unit'],
  ['heat pump', 'none', 'stop-outdoor-unit'],
  ['heatpumps', 'both', undefined],
  ['ac adapter', 'none', undefined],
  ['C clamps', 'none', undefined],
  ['space heater', 'none', 'stop-heater'],
  ['heater', 'sides', 'stop-heater'],
  ['heater', 'top', undefined],
  ['radiators', 'none', 'stop-heater'],
  ['home theater', 'none', undefined],
  ['heather', 'none', undefined],
  ['battery bank', 'none', 'stop-battery'],
  ['batteries', 'sides', 'stop-battery'],
  ['battery powered lantern', 'none', undefined],
  ['solar inverter', 'none', 'stop-electric-heat'],
  ['phone charger', 'sides', undefined],
  ['dryer vent', 'none', 'stop-dryer'],
  ['tumble dryer', 'top', 'stop-dryer'],
  ['hair dryer', 'none', undefined],
  ['propane tank', 'none', 'stop-gas'],
  ['gas bottles', 'top', 'stop-gas'],
  ['gas cylinder', 'sides', 'stop-gas'],
  ['gas meter', 'none', 'stop-gas'],
  ['gas meter', 'both', undefined],
  ['brazier', 'none', 'stop-flame'],
  ['halogen lamp', 'none', 'stop-heater'],
  ['heat lamp', 'sides', 'stop-heater'],
  ['desk lamp', 'none', undefined],
  ['candles', 'none', 'stop-candle'],
  ['candle', 'sides', 'stop-candle'],
  ['candle', 'top', undefined],
  ['unlit candles', 'none', undefined],
  ['led candle', 'none', undefined],
  ['air compressor', 'none', 'stop-warm-machine'],
  ['fridge', 'none', 'stop-warm-machine'],
  ['chest freezer', 'none', 'stop-warm-machine'],
  ['server', 'none', 'stop-warm-machine'],
  ['server', 'sides', undefined],
  ['fridge magnets', 'none', undefined],
  ['idea generator trophy', 'none', undefined],
  ['generator trophy', 'none', undefined],
  ['trophy beside a generator', 'none', 'stop-exhaust'],
  ['heater-coloured planter', 'none', undefined],
  ['grill-pattern planter', 'none', undefined],
  ['grill with a pattern', 'none', 'stop-flame'],
  ['stove-pipe hat', 'none', undefined],
  ['stove pipe', 'none', 'stop-flame'],
  ['christmas tree', 'none', undefined],
  ['wheelie bin', 'none', undefined],
]

describe('the shipped cautions', () => {
  it.each(JOBS)('%s', (_, facts, ids) => {
    expect(idsFor(facts)).toEqual(ids)
  })

  it.each(STOPS)('a box round a %s, open %s: %s', (object, open, id) => {
    expect(stopsFor({ object, open, ripWidth: 6, sheetCut: true }, rules)?.id).toBe(id)
  })

  it('has no rule that no job reaches', () => {
    const reached = new Set([...JOBS.flatMap(([, , ids]) => ids), ...STOPS.map(([, , id]) => id)])
    expect(rules.filter(({ id }) => !reached.has(id)).map(({ id }) => id)).toEqual([])
  })

  it('has no alternative in a rule that no job reaches', () => {
    const asked = [
      ...JOBS.map(([, facts]) => facts),
      ...STOPS.map(([object, open]): Facts => ({ object, open })),
    ]
    const missed = rules.flatMap(({ id, when }) =>
      when.filter((set) => !asked.some((facts) => meets(facts, set))).map((set) => [id, Object.keys(set)]),
    )
    expect(missed).toEqual([])
  })

  it.each(TASKS)('has something to say about %s', (task) => {
    const about = rulesAbout(task, rules)
    expect(about.length).toBeGreaterThan(0)
    expect(about.every(({ tasks }) => tasks.includes(task))).toBe(true)
  })

  it('names every word in a rule that the word alone sets off', () => {
    const missed = rules.flatMap((rule) =>
      wordsOf(rule).filter((object) => {
        const facts: Facts = { object, treated: true, material: object }
        return rule.stops ? !stopsFor(facts, [rule]) : cautionsFor(facts, [rule]).length === 0
      }),
    )
    expect(missed).toEqual([])
  })

  it('stops until exactly the openings that the text offers', () => {
    for (const rule of rules.filter(({ stops }) => stops)) {
      const [object] = wordsOf(rule)
      const offered = [...rule.text.matchAll(/\bopen=(\w+)/g)].map(([, opening]) => opening)
      const enough = OPENINGS.filter((open) => !stopsFor({ object, open }, [rule]))
      expect(offered, rule.id).toEqual(enough)
    }
  })

  it('puts the generic line last, once, and only at the saw', () => {
    expect(rules.at(-1)?.id).toBe('manual')
    expect(idsFor({ ripWidth: 30, mitre: 50, crosscut: true, grooves: 3 }).at(-1)).toBe('manual')
    expect(idsFor({ glue: true, brads: true, finishKind: 'oil' })).not.toContain('manual')
  })
})

describe('thresholds', () => {
  it.each([
    [25.39, ['rip-thin', 'manual']],
    [25.4, ['manual']],
  ])('a strip of %s mm', (ripWidth, ids) => {
    expect(idsFor({ ripWidth })).toEqual(ids)
  })

  it.each([
    [50.79, ['fence-block', 'manual']],
    [50.8, ['fence-stick', 'manual']],
    [152.39, ['fence-stick', 'manual']],
    [152.4, ['manual']],
  ])('%s mm at the fence', (pieceAtFence, ids) => {
    expect(idsFor({ pieceAtFence })).toEqual(ids)
  })

  it.each([
    [16, []],
    [16.1, ['lift-help']],
    [25, ['lift-help']],
    [25.1, ['lift-two']],
  ])('a lift of %s kg', (weight, ids) => {
    expect(idsFor({ weight })).toEqual(ids)
  })

  it.each([
    [45, ['manual']],
    [45.1, ['steep-angle', 'manual']],
  ])('a mitre of %s degrees', (mitre, ids) => {
    expect(idsFor({ mitre })).toEqual(ids)
  })
})

describe('picking rules', () => {
  const someFacts = fc.record(
    Object.fromEntries(
      (Object.keys(FACT_KINDS) as FactName[]).map((name) => [name, anyValue(FACT_KINDS[name])]),
    ),
    { requiredKeys: [] },
  ) as fc.Arbitrary<Facts>

  it('says nothing when nothing is known', () => {
    expect(cautionsFor({}, rules)).toEqual([])
    expect(stopsFor({}, rules)).toBeUndefined()
    expect(cautionsFor({ open: 'none', crosscut: false, grooves: 0 }, rules)).toEqual([])
  })

  it('keeps the order of the file, says none twice, and leaves stops apart', () => {
    fc.assert(
      fc.property(someFacts, (facts) => {
        const places = idsFor(facts).map((id) => rules.findIndex((rule) => rule.id === id))
        expect(places).toEqual([...new Set(places)].sort((a, b) => a - b))
        expect(places.some((place) => rules[place]?.stops)).toBe(false)
      }),
    )
  })

  it('does not depend on facts that no rule asks about', () => {
    fc.assert(
      fc.property(someFacts, (facts) => {
        const { object: _object, ...others } = facts
        const objectRules = rules.filter((rule) => rule.when.every((set) => set.object))
        expect(cautionsFor(others, objectRules)).toEqual([])
      }),
    )
  })

  it('says the same sentence once, even from two rules', () => {
    const [rule] = rules.filter(({ id }) => id === 'rip-thin') as [CautionRule]
    expect(cautionsFor({ ripWidth: 5 }, [rule, { ...rule, id: 'again' }, rule])).toHaveLength(1)
  })

  it('files a caution under the first task of its rule', () => {
    expect(cautionsFor({ scrap: true }, rules).map(({ task }) => task)).toEqual(['scrap', 'scrap'])
  })
})

const wordsOf = (rule: CautionRule): readonly string[] =>
  rule.when.flatMap((set) => (Object.values(set) as Condition[]).flatMap(({ words }) => words ?? []))

function anyValue(kind: (typeof FACT_KINDS)[FactName]): fc.Arbitrary<unknown> {
  if (kind === 'length' || kind === 'number') return fc.double({ min: 0, max: 400, noNaN: true })
  if (kind === 'flag') return fc.boolean()
  if (kind === 'finish') return fc.constantFrom('oil', 'water', 'solvent')
  if (kind === 'opening') return fc.constantFrom(...OPENINGS)
  return fc.constantFrom('bin', 'AC unit', 'tree', 'MDF', 'planter', 'gas stove', '')
}
