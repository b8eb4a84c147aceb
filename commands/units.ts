import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import { choice, first, length, words, yes } from '../src/bot/option.ts'
import { type Preferences, settle, shownIn } from '../src/bot/preferences.ts'
import { Refusal, quoted } from '../src/bot/refusal.ts'
import { sawKerf } from '../src/bot/sawKerf.ts'
import { type Length, toMillimetres } from '../src/core/measure/length.ts'
import type { UnitSystem } from '../src/core/measure/reading.ts'
import { showLength, showMiss } from '../src/core/measure/show.ts'
import { showCaliper } from '../src/core/measure/showCaliper.ts'
import { REGIONS } from '../src/core/stock/stock.ts'

const TAPES = { '1/16': 16, '1/32': 32, '1/64': 64 } as const

export default defineCommand({
  name: 'units',
  summary: 'Inch or metric, tape, kerf and region; for you, or for the channel',
  examples: [
    'units',
    'units inch tape=1/32',
    'units metric for=channel',
    'units kerf=3/32 region=UK for=channel',
  ],
  options: z.strictObject({
    system: first(words('inch or metric', 'metric')).optional(),
    tape: choice('the finest mark on the tape', ['1/16', '1/32', '1/64']).optional(),
    kerf: length('what the saw blade takes', '1/8in').optional(),
    region: choice('where the wood is bought', lowerCase(REGIONS)).optional(),
    reset: yes('back to the channel’s, or to the settings of the bot').optional(),
    for: choice('whose: yours or the channel’s', ['me', 'channel']).optional(),
  }),
  run: async ({ system, tape, kerf, region, reset = false, for: whose }, context) => {
    const { preferences, settings, show } = context
    const typed = readSystem(system)
    const anew = reset || typed.reset === true
    const owner = whose ?? typed.owner ?? 'me'
    const changes: Preferences = {
      ...(typed.units && { units: typed.units }),
      ...(tape && { tape: TAPES[tape] }),
      ...(sawKerf(kerf, show) && { kerf }),
      ...(region && { region: REGIONS.find((name) => name.toLowerCase() === region) }),
    }
    const document = owner === 'me' ? preferences.person : preferences.channel
    const changed = anew || Object.keys(changes).length > 0
    if (changed) await document.change((kept) => ({ ...(anew ? {} : kept), ...changes }))
    const [person, channel] = await Promise.all([preferences.person.read(), preferences.channel.read()])
    const now = settle(owner === 'me' ? (person ?? {}) : {}, channel ?? {}, settings)
    const kerfShown = kerfWords(now.kerf, shownIn(now, undefined))
    return {
      answer: `${changed ? 'Set' : 'Now'} for ${owner === 'me' ? 'you' : 'the channel'}: ${now.units ?? 'units not settled'}, tape 1/${now.tape} in, kerf ${kerfShown}, region ${now.region}`,
      notes: [
        ...(now.units ? [] : ['a bare number is asked about until you say inch or metric']),
        ...(owner === 'channel' && changed
          ? ['what a person sets for themselves goes before the channel']
          : []),
      ],
      figures: {
        units: now.units ?? null,
        tape: now.tape,
        kerf: toMillimetres(now.kerf),
        region: now.region,
        for: owner,
      },
    }
  },
})

/** On an inch mark where it is one, else as a calliper reads it: `3/32 in`, `3.18 mm`. */
const kerfWords = (kerf: Length, units: UnitSystem): string => {
  const tape = { units, tape: 64, millimetreStep: 0.5 } as const
  return showMiss(kerf, tape) === '' ? showLength(kerf, tape) : showCaliper(kerf, units)
}

/** What stands first, in words. */
interface SystemTyped {
  readonly units?: 'inch' | 'metric' | undefined
  readonly owner?: 'me' | 'channel' | undefined
  readonly reset?: boolean
}

/** `inch`, `metric`, `reset`, and the same with `for me` or `for the channel` behind it, as people say it. */
function readSystem(text: string | undefined): SystemTyped {
  if (text === undefined) return {}
  const said =
    /^(?:(?:(in|inch|inches|imperial)|(mm|cm|metric)|(reset))\b)?\s*(?:for\s+(?:the\s+)?(me|channel))?$/iu.exec(
      text,
    )
  if (!said)
    throw new Refusal(
      'invalid',
      `cannot read ${quoted(text)} as units; write inch or metric, then for=me or for=channel`,
    )
  const [, inch, metric, reset, owner] = said
  return {
    units: inch ? 'inch' : metric ? 'metric' : undefined,
    owner: owner?.toLowerCase() as SystemTyped['owner'],
    reset: reset !== undefined,
  }
}

function lowerCase<const Names extends readonly string[]>(names: Names) {
  return names.map((name) => name.toLowerCase()) as unknown as readonly ['us', 'uk', 'au', 'eu']
}
