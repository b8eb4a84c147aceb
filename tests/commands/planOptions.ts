import { z } from 'zod'
import { type OptionRow, optionTable } from '../../src/bot/option.ts'
import { planOptions } from '../../src/bot/planOptions.ts'
import type { Room } from '../room.ts'

/** Every option of a plan, from the table that the commands read; a new one is among them by itself. */
export const PLAN_OPTIONS: readonly OptionRow[] = optionTable(z.strictObject(planOptions))

const BOX =
  '17in x 13in height=15in clearance=1/2in sheet=12mm strip=1/2in corner=captured braces=all grooves=3 fit=1/32in'
const CLOSED = `${BOX} lid=inset handle=notch bottom=feet drain=1/2in spacing=4in cord=2in x 1in cordin=side gap=1/16in`

/** A plan in which an option can matter, where that is not the closed box. */
const BASES: Readonly<Record<string, string>> = {
  board: `${BOX} corner=butted`.replace('corner=captured ', ''),
  open: BOX,
  front: BOX,
  'front-brace': `${BOX} front=12in`,
  'front-grooves': `${BOX} front=12in`,
}
export const baseOf = (option: string): string => BASES[option] ?? `${CLOSED} width=1 1/2in`

/** Values other than those of the base; an option that is not here gets one by its kind. */
const VALUES: Readonly<Record<string, string>> = {
  object: '18in x 13 3/4in',
  height: '16in',
  clearance: '3/4in',
  sheet: '9mm',
  strip: '7/16in',
  width: '1 5/8in',
  board: '1x4',
  corner: 'cleated',
  braces: 'none',
  grooves: '4',
  fit: '1/16in',
  open: 'sides',
  front: '12in',
  'front-brace': 'no',
  'front-grooves': '1',
  lid: 'none',
  handle: 'strip',
  bottom: 'cleats',
  drain: '3/4in',
  spacing: '3in',
  cord: '2in x 1 1/2in',
  cordin: 'end',
  gap: '1/8in',
}

/** A change of an option, as it is typed. */
export function changeOf({ name, first, choices, type, minimum = 0, example = '' }: OptionRow): string {
  const value =
    VALUES[name] ??
    choices?.[1] ??
    (type === 'integer' ? `${minimum + 1}` : type === 'boolean' ? 'yes' : example)
  return first ? `project change ${value}` : `project change ${name}=${value}`
}

/** All that a person is shown, times left out; a refusal is its sentence. */
export async function shown(room: Room, line: string): Promise<string> {
  const response = await room.ask(line)
  if (!response.ok) return `${response.kind}: ${response.error}`
  return JSON.stringify(response.reply, (key, value: unknown) => (key === 'milliseconds' ? 0 : value))
}
