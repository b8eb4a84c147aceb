import type { Length } from '../core/measure/length.ts'
import type { SizeRead } from '../core/measure/readSize.ts'
import type { Role } from '../core/measure/role.ts'
import type { PlanChoices } from './planChoices.ts'
import { Refusal } from './refusal.ts'

/** What a box goes round: its outline on the floor, and how tall it is where that was said. */
export interface ObjectShape {
  readonly shape: NonNullable<PlanChoices['object']>
  readonly height: Length | undefined
}

/**
 * The outline and height of a size: by its labels where it has any (`29 hi x 46 wide x 18 deep`), else in the order typed.
 * What is longest in words comes first: length before width before depth. Throws a Refusal where the outline is not known.
 */
export function objectShape({ round, lengths, roles }: SizeRead): ObjectShape {
  const [first, second, third] = lengths
  if (first === undefined) throw new Refusal('invalid', 'the object has no size; write object=17in x 13in')
  if (roles) return labelled(lengths, roles)
  if (round) return { shape: { shape: 'round', diameter: first }, height: second }
  if (second === undefined) {
    throw new Refusal(
      'ambiguous',
      'one number for the object could be a square or a round one; write it as length x width, or add "round"',
    )
  }
  return { shape: { shape: 'rectangle', length: first, width: second }, height: third }
}

function labelled(lengths: readonly Length[], roles: readonly Role[]): ObjectShape {
  const twice = roles.find((role, at) => roles.indexOf(role) !== at)
  if (twice)
    throw new Refusal(
      'invalid',
      `two numbers of the object are both its ${twice}; write 46in wide x 18in deep x 29in high`,
    )
  const of = (role: Role) => lengths[roles.indexOf(role)]
  const diameter = of('diameter')
  if (diameter !== undefined) return roundShape(diameter, of('height') ?? of('depth'), lengths.length)
  const [length, width, depth] = (['length', 'width', 'depth'] as const)
    .map(of)
    .filter((side) => side !== undefined)
  if (length === undefined || width === undefined) {
    throw new Refusal(
      'invalid',
      'the object needs two sizes on the floor besides its height; write 46in wide x 18in deep x 29in high',
    )
  }
  return { shape: { shape: 'rectangle', length, width }, height: of('height') ?? depth }
}

function roundShape(diameter: Length, height: Length | undefined, numbers: number): ObjectShape {
  if (numbers > (height === undefined ? 1 : 2)) {
    throw new Refusal(
      'invalid',
      'a round object has a diameter and a height, and no other size; write 17in round x 15in high',
    )
  }
  return { shape: { shape: 'round', diameter }, height }
}
