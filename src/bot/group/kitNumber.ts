import { kitLabel } from '../../core/group/mergeParts.ts'
import { words } from '../option.ts'
import { quoted, Refusal } from '../refusal.ts'
import type { Group, Member } from './group.ts'

/** A kit, by its number or as it is written on its parts. */
export const whichKit = words('its number', 'K07')

/** `7`, `K07`, `kit 7`. Throws a Refusal where it is none of these. */
export function kitNumber(typed: string): number {
  const [, digits] = /^\s*(?:kit\s*)?k?\s*0*([1-9]\d{0,4})\s*$/iu.exec(typed) ?? []
  if (digits !== undefined) return Number(digits)
  throw new Refusal('invalid', `cannot read ${quoted(typed)} as a kit; write its number, such as 7 or K07`)
}

/** The member who builds this kit. Throws a Refusal where nobody does. */
export function builderOf({ members }: Group, kit: number): Member {
  const member = members.find((each) => each.kit === kit)
  if (member) return member
  throw new Refusal('invalid', `there is no ${kitLabel(kit)} in this group`)
}
