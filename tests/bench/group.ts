import { stdout } from 'node:process'
import { parseArgs } from 'node:util'
import type { Response } from '../../src/bot/request.ts'
import { openRoom, type Room } from '../room.ts'
import { renderers } from '../platforms/renderers.ts'
import { rendersResponse } from '../platforms/renders.ts'
import type { Bench } from './bench.ts'
import { layTable, median, showTime } from './table.ts'

const OPTIONS = {
  members: { type: 'string', default: '60' },
  times: { type: 'string', default: '25' },
} as const

const ORGANISER = { user: 'organiser', name: 'Organiser' }

/** Boxes with all there is to them: some 35 parts each, in about as many sizes as people have ideas. */
const PLAN =
  'project start 17in x 13in height=15in sheet=1/2in braces=all lid=overlapping handle=strip bottom=cleats'

const joinLine = (index: number): string =>
  `group join object=${14 + (index % 13) / 2}in x ${10 + (index % 7) / 2}in height=${12 + (index % 4)}in`

/** Asks one line `times` times. */
async function repeat(room: Room, line: string, times: number) {
  const took: number[] = []
  let response: Response | undefined
  for (let index = 0; index < times; index += 1) {
    const from = performance.now()
    response = await room.ask(line, ORGANISER)
    took.push(performance.now() - from)
  }
  return { line, took, response }
}
type Asked = Awaited<ReturnType<typeof repeat>>

/** What a platform would refuse of an answer, and of what it puts up for the channel; a refusal is a fault as well. */
function faultsOf({ line, response }: Asked): readonly string[] {
  if (!response?.ok) return [`${line}: ${response?.error ?? 'not asked'}`]
  const { notice } = response.reply
  const shown = [response, ...(notice ? [{ ...response, reply: notice.reply }] : [])]
  return shown
    .flatMap((each) => rendersResponse(each, renderers))
    .flatMap(({ platform, faults }) => faults.map((fault) => `${line}, ${platform}: ${fault}`))
}

const figure = ({ response }: Asked, name: string): number =>
  response?.ok ? Number(response.reply.figures[name]) : Number.NaN

const row = ({ line, took }: Asked, aim: string): string[] => [
  line,
  showTime(median(took)),
  showTime(Math.max(...took)),
  aim,
]

/** A group of sixty: its list, its layout, its post. */
export const bench: Bench = {
  summary:
    'a group build of 60 members, about 2000 parts: the list, the layout, and the post on every platform',
  async run(words) {
    const { values } = parseArgs({ args: [...words], options: OPTIONS })
    const members = Number(values.members)
    const times = Number(values.times)
    const room = await openRoom()
    await room.reply(PLAN, ORGANISER)
    await room.reply(`group open Bench places=${members}`, ORGANISER)
    for (let index = 0; index < members; index += 1)
      await room.reply(joinLine(index), { user: `member${index}`, name: `Member ${index}` })
    for (let index = 0; index < 20; index += 1)
      await room.reply(`group need thing ${index} count=9`, ORGANISER)
    const post = await repeat(room, 'group post', 1)
    const quick = [
      await repeat(room, 'group list', times),
      await repeat(room, 'group', times),
      await repeat(room, 'group needs', times),
      await repeat(room, 'group stations', times),
      await repeat(room, 'group progress', times),
    ]
    // The threads that search are there already, as they are in a bot that has answered before.
    await room.reply('layout', ORGANISER)
    const layout = await repeat(room, 'group layout', 1)
    const money = await repeat(room, 'group money', 1)
    // What nobody has asked for yet: every kit is worked out anew.
    const plan = await repeat(room, 'group plan height=14in clearance=5/8in', 1)
    await room.close()
    const rows = [
      ...quick.map((asked) => row(asked, asked.line === 'group list' ? '50 ms' : '')),
      row(post, ''),
      row(plan, ''),
      row(layout, '5 s'),
      row(money, '5 s'),
    ]
    stdout.write(`${layTable(['', 'median', 'longest', 'aim under'], rows)}\n`)
    const [list] = quick
    stdout.write(
      `${list ? figure(list, 'parts') : 0} parts; layout: ${figure(layout, 'sheets')} sheets, ${figure(layout, 'boards')} boards, ${(100 * figure(layout, 'gap')).toFixed(2)} % over the bound (aim 1 %)\n`,
    )
    const faults = [...quick, post, plan, layout, money].flatMap(faultsOf)
    for (const fault of faults) stdout.write(`${fault}\n`)
    return faults.length
  },
}
