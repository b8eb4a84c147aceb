import type { Length } from '../core/measure/length.ts'
import type { Plan } from '../core/plan.ts'
import type { Face } from '../core/panelling/face.ts'
import { braceOutline } from './brace.ts'
import type { Facing } from './scene.ts'
import { type Carried, partOf, type Place, type Solid } from './solids.ts'

/** Something on a panel of the box that is no block: a groove, a slot or notch, or a brace with its thickness. */
export interface Fixture {
  readonly kind: string
  /** The panel that it is on. */
  readonly on: Solid
  readonly outline: readonly Place[]
  /** From the outline into the wood. */
  readonly depth: Place
  readonly facing: Facing
  /** The block that holds it, for one that stands proud. */
  readonly solid?: Pick<Solid, 'low' | 'high'> | undefined
  readonly label?: string | undefined
}

interface FixtureAsked {
  readonly plan: Plan
  readonly grooves?: Readonly<Partial<Record<Face['name'], readonly Length[]>>> | undefined
}

/** Grooves, slots, notches and holes that can be seen on the front, the right end, the lid and the bottom, and every brace. */
export const panelFixtures = (asked: FixtureAsked, pulled: readonly Carried[]): readonly Fixture[] =>
  pulled.flatMap(({ name, solids }) => {
    const on = solids.find(({ part }) => part.name.endsWith('panel'))
    if (!on) return []
    if (name === 'lid' || name === 'bottom') return flatCutouts(on)
    const wall = wallOf(asked.plan, name, on)
    return [...(wall.seen ? [...grooveLines(asked, wall), ...cutouts(wall)] : []), ...brace(asked.plan, wall)]
  })

/** An upright panel, and where a place on its outer face is. */
interface Wall {
  readonly on: Solid
  readonly face: Face | undefined
  readonly seen: boolean
  readonly facing: Facing
  /** Along the panel from its end, up from the floor, and out of its face. */
  readonly at: (along: number, up: number, out: number) => Place
}

function wallOf(plan: Plan, name: Carried['name'], on: Solid): Wall {
  const isEnd = name === 'left end' || name === 'right end'
  const own = on.part.name.replace(' panel', '')
  const face = plan.faces.find((each) => each?.name === own)
  const { low, high } = on
  const outer = { 'left end': low[0], 'right end': high[0], front: low[1], back: high[1], lid: 0, bottom: 0 }[
    name
  ]
  const outward = name === 'left end' || name === 'front' ? -1 : 1
  return {
    on,
    face,
    seen: name === 'front' || name === 'right end',
    facing: isEnd ? 'right' : 'left',
    at: (along, up, out) =>
      isEnd
        ? [outer + outward * out, low[1] + along, low[2] + up]
        : [low[0] + along, outer + outward * out, low[2] + up],
  }
}

function grooveLines({ plan, grooves }: FixtureAsked, { on, face, facing, at }: Wall): readonly Fixture[] {
  const centres = (face && grooves?.[face.name]) ?? []
  const [foot, head] = [plan.spec.width, on.part.width - plan.spec.width]
  return centres.map((centre) => ({
    kind: 'groove',
    on,
    facing,
    outline: [at(centre, foot, 0), at(centre, head, 0)],
    depth: [0, 0, 0],
  }))
}

function cutouts({ on, facing, at }: Wall): readonly Fixture[] {
  return (on.part.cutouts ?? []).flatMap(({ kind, size, at: places }) =>
    places.map(({ along, across }) => ({
      kind,
      on,
      facing,
      outline: [
        at(along, across, 0),
        at(along + size.along, across, 0),
        at(along + size.along, across + size.across, 0),
        at(along, across + size.across, 0),
      ],
      depth: [0, 0, 0] as const,
    })),
  )
}

/** Of a round hole, as many corners as look round. */
const CORNERS = 24

/** Finger notches and drain holes, on the top of a panel that lies. */
const flatCutouts = (on: Solid): readonly Fixture[] =>
  (on.part.cutouts ?? []).flatMap(({ kind, size, round, at: places }) =>
    places.map(({ along, across }) => {
      const at = (x: number, y: number): Place => [on.low[0] + along + x, on.low[1] + across + y, on.high[2]]
      const turns = Array.from({ length: CORNERS }, (_, corner) => (2 * Math.PI * corner) / CORNERS)
      return {
        kind,
        on,
        facing: 'up' as const,
        outline: round
          ? turns.map((turn) => at((size.along / 2) * Math.cos(turn), (size.across / 2) * Math.sin(turn)))
          : [at(0, 0), at(size.along, 0), at(size.along, size.across), at(0, size.across)],
        depth: [0, 0, 0] as const,
      }
    }),
  )

function brace(plan: Plan, { on, face, facing, at }: Wall): readonly Fixture[] {
  if (!face?.brace) return []
  const { strip, width } = plan.spec
  const start = (face.panel - face.opening.width) / 2
  const outline = braceOutline({ opening: face.opening, strip: width, ...face.brace })
  const part = partOf(plan, `${face.name} brace`)
  const [one, other] = [
    at(start, width, 0),
    at(start + face.opening.width, width + face.opening.height, strip),
  ]
  const low: Place = [Math.min(one[0], other[0]), Math.min(one[1], other[1]), Math.min(one[2], other[2])]
  const high: Place = [Math.max(one[0], other[0]), Math.max(one[1], other[1]), Math.max(one[2], other[2])]
  const back = at(0, 0, 0)
  const front = at(0, 0, strip)
  // Seen from the front and the right: of the far walls the near face is the inner one.
  const isSeen = front[0] > back[0] || front[1] < back[1]
  const [near, away] = isSeen ? [strip, 0] : [0, strip]
  const [from, to] = [at(0, 0, near), at(0, 0, away)]
  return [
    {
      kind: `${face.name} brace`,
      on,
      facing,
      outline: outline.map(([x, y]) => at(start + x, width + y, near)),
      depth: [to[0] - from[0], to[1] - from[1], 0],
      solid: { low, high },
      label: part?.label,
    },
  ]
}
