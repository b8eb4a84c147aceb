import { kitLabel, type MergedPart } from '../../core/group/mergeParts.ts'
import type { Context } from '../context.ts'
import { partsOfPlan } from '../cutList.ts'
import type { Group } from '../group/group.ts'
import type { WorkedKit } from '../group/kits.ts'
import { boxPicture } from '../pictures.ts'
import { sizeNotes } from '../planReply.ts'
import type { Show } from '../show.ts'
import { partTable } from './cutListSection.ts'
import type { Block, Label, Section } from './handout.ts'
import { labelsOf } from './labels.ts'
import { points } from './points.ts'

/** What kit pages are made from. */
export interface KitsPrinted {
  readonly group: Group
  readonly worked: readonly WorkedKit[]
  readonly merged: readonly MergedPart[]
  /** What each person is called, by their id. */
  readonly names: ReadonlyMap<string, string>
  readonly show: Show
  readonly context: Context
}

/** A page for each kit that can be built: whose it is, its parts with the row of the list they come from, what its owner brings. */
export async function kitSections(printed: KitsPrinted): Promise<readonly Section[]> {
  const { worked, names, show, context } = printed
  const rows = rowsByOwner(printed.merged)
  const drawn = new Map<string, Block>()
  const sections: Section[] = []
  for (const { member, worked: kit } of worked) {
    if (!kit) continue
    // Sixty boxes take a second to draw: others are answered in between.
    await new Promise((resolve) => setImmediate(resolve))
    const number = kitLabel(member.kit)
    const parts = partsOfPlan({ parts: kit.cut }).map((part) => ({
      ...part,
      whose: rows.get(`${number}-${part.label}`) ?? '',
    }))
    sections.push({
      title: `${number}  ${names.get(member.user) ?? member.user}`,
      onNewPage: true,
      blocks: [
        partTable(`Write ${number} and the letter on every part`, parts, show, {
          boxes: 'Got',
          whose: 'From row',
        }),
        ...points([...bringLines(printed.group, member.user), ...sizeNotes(kit.plan, show)]),
        boxOf(kit.plan, drawn, context),
      ],
    })
  }
  return sections
}

/** The row of the list that each part of each kit belongs to: `K07-B` to `G3`. */
const rowsByOwner = (merged: readonly MergedPart[]): ReadonlyMap<string, string> =>
  new Map(
    merged.flatMap(({ label, owners }) => owners.map((owner): [string, string] => [owner.label, label])),
  )

/** One picture for all kits that are alike, so that it is drawn once. */
function boxOf(
  plan: NonNullable<WorkedKit['worked']>['plan'],
  drawn: Map<string, Block>,
  { show, settled }: Context,
): Block {
  const key = JSON.stringify([plan.spec, plan.parts])
  const known = drawn.get(key)
  if (known) return known
  const { alt, scene } = boxPicture(plan, show, settled.kerf)
  const block: Block = { block: 'picture', alt, scene, tallest: 0.42 }
  drawn.set(key, block)
  return block
}

/** What one member has said they bring. */
function bringLines({ needs, brought }: Group, user: string): readonly string[] {
  const things = [
    ...needs.flatMap(({ name, claims }) =>
      claims.filter((claim) => claim.user === user).map(({ count }) => `${count} ${name}`),
    ),
    ...brought
      .filter((each) => each.user === user)
      .map(({ item }) => `${item.onHand ?? 1} ${item.name ?? item.kind} (${item.label})`),
  ]
  return things.length === 0 ? [] : [`brings: ${things.join(', ')}`]
}

/** A label for each piece of each kit, in the order of the kits, then those of the spares, which are nobody's. */
export function kitLabels({ worked, merged, names, show }: Omit<KitsPrinted, 'context'>): readonly Label[] {
  const own = worked.flatMap(({ member, worked: kit }) =>
    kit
      ? labelsOf(partsOfPlan({ parts: kit.cut }), show, {
          prefix: `${kitLabel(member.kit)}-`,
          whose: names.get(member.user) ?? member.user,
        })
      : [],
  )
  const spares = merged
    .filter(({ spare }) => spare > 0)
    .flatMap(({ names: what, spare, label, material, ...part }) =>
      labelsOf(
        [
          {
            ...part,
            label: `${label}-S`,
            count: spare,
            grain: false,
            name: what.join(', '),
            ...(material !== undefined && { material }),
          },
        ],
        show,
        { whose: 'spare' },
      ),
    )
  return [...own, ...spares]
}
