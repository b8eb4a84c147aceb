import { type Length, toMillimetres, ZERO } from '../measure/length.ts'
import { layGrooves } from '../panelling/grooves.ts'
import type { Part, Plan } from '../plan.ts'
import type { Cutout } from '../plan/part.ts'
import { sheetSteps } from './sheetSteps.ts'
import type { Setting, Step } from './step.ts'
import type { SawTerms } from './strips.ts'

const sheetParts = ({ parts }: Plan): readonly Part[] => parts.filter(({ material }) => material === 'sheet')

const longestFirst = (a: Part, b: Part): number => b.length - a.length

const piecesOf = (parts: readonly Part[]): number => parts.reduce((sum, { count }) => sum + count, 0)

/**
 * The panels out of the sheets: as the layout is cut where there is one, else ripped to their widths, each fence setting
 * once, and each kind cut to length.
 */
export function panelSteps(plan: Plan, { sheets }: SawTerms): readonly Step[] {
  const parts = sheetParts(plan)
  if (sheets) return sheetSteps(parts, sheets)
  const widths = [...new Set(parts.map(({ width }) => width))].sort((a, b) => b - a)
  const rips: Step = {
    id: 'break down sheets',
    stage: 'break down',
    parts,
    cuts: [],
    settings: widths.map((length): Setting => ({ what: 'rip fence', length })),
    work: piecesOf(parts),
    how: 'rip the sheets to these widths, the factory edge against the fence',
    facts: { sheetCut: true, dust: true },
  }
  const panels = parts.toSorted(longestFirst).map(
    (part): Step => ({
      id: `cut ${part.name}`,
      stage: 'cut panel',
      parts: [part],
      cuts: [part.label],
      settings: [{ what: 'stop', length: part.length }],
      work: part.count,
      how: 'square one end first; then every one against the same stop',
      facts: { sheetCut: true, crosscut: true },
    }),
  )
  return [rips, ...panels]
}

/** The grooves of each kind of panel that has some: boards equal over what shows between the stiles. */
export function grooveSteps(plan: Plan): readonly Step[] {
  const { sheet, kerf } = plan.spec
  return plan.faces.flatMap(({ name, count, panel, covered, grooves }): readonly Step[] => {
    if (grooves === 0) return []
    const asked = {
      panel,
      count: grooves,
      kerf,
      thickness: sheet,
      equalOver: 'between stiles',
      stile: covered,
    }
    const laid = layGrooves(asked as Parameters<typeof layGrooves>[0])
    if (laid.status === 'impossible') return []
    const fences = laid.settings.map(({ fence }): Setting => ({ what: 'groove fence', length: fence }))
    return [
      {
        id: `groove ${name} panel`,
        stage: 'groove',
        parts: plan.parts.filter((part) => part.name === `${name} panel`),
        cuts: [],
        settings: [{ what: 'blade height', length: laid.depth }, ...fences],
        work: count * grooves,
        how: 'try the depth on scrap; at each fence turn the panel end for end for the second groove',
        facts: { grooves, grooveDepth: toMillimetres(laid.depth) },
      },
    ]
  })
}

/** Slots, notches and holes, a step for each kind of them in each kind of panel. */
export const cutoutSteps = (plan: Plan): readonly Step[] =>
  plan.parts.flatMap((part) => {
    const kinds = new Map<string, readonly Cutout[]>()
    for (const cutout of part.cutouts ?? [])
      kinds.set(cutout.kind, [...(kinds.get(cutout.kind) ?? []), cutout])
    return [...kinds].map(([kind, cutouts]) => cutoutStep(part, kind, cutouts))
  })

const cutoutStep = (part: Part, kind: string, cutouts: readonly Cutout[]): Step => ({
  id: `${kind} in ${part.name}`,
  stage: 'cut out',
  parts: [part],
  cuts: [],
  settings: cutouts.flatMap(cutoutSettings),
  work: cutouts.reduce((sum, { parts, at }) => sum + parts * at.length, 0),
  how: cutouts.every(({ round }) => round)
    ? 'mark both ways, then drill with scrap beneath'
    : 'mark from the same end and edge on each panel, saw inside the line and try the fit',
  facts: { dust: true, ...(kind === 'cord notch' ? { cord: true } : {}) },
})

function cutoutSettings({ round, size, at }: Cutout): readonly Setting[] {
  const places = (of: 'along' | 'across'): readonly Length[] =>
    [...new Set(at.map((place) => place[of]))].filter((place) => of === 'along' || place > ZERO)
  return [
    ...(round
      ? [{ what: 'drill', length: size.along }]
      : [
          { what: 'as wide as', length: size.along },
          { what: 'as deep as', length: size.across },
        ]),
    ...places('along').map((length) => ({ what: round ? 'middle, from the end' : 'from the end', length })),
    ...places('across').map((length) => ({
      what: round ? 'middle, from the edge' : 'from the edge',
      length,
    })),
  ]
}
