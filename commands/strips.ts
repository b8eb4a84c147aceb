import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { readNeed } from '../src/bot/need.ts'
import { board, first, length, words } from '../src/bot/option.ts'
import { ripsPicture } from '../src/bot/picturesOfCuts.ts'
import { boardsOfPlan, boardWords } from '../src/bot/planBoards.ts'
import {
  type BoardOfPlan,
  boardOfPlan,
  isNear,
  stripsOfPlan,
  usualBoardLength,
} from '../src/bot/plannedStrips.ts'
import { planned } from '../src/bot/plannedSurround.ts'
import { Refusal } from '../src/bot/refusal.ts'
import type { Rips as PlanRips } from '../src/bot/ripTable.ts'
import { sawKerf } from '../src/bot/sawKerf.ts'
import type { Show } from '../src/bot/show.ts'
import { stockSize } from '../src/bot/stockSize.ts'
import { type Length, toMillimetres } from '../src/core/measure/length.ts'
import type { BoardRead } from '../src/core/measure/readBoard.ts'
import { type BoardCount, boardsFor, type StripNeed } from '../src/core/panelling/boards.ts'
import { type Rips, ripSettings } from '../src/core/panelling/rips.ts'
import { countStrips, type StripCount } from '../src/core/panelling/strips.ts'
import type { Plan } from '../src/core/plan.ts'

export default defineCommand({
  name: 'strips',
  summary: 'How many strips a board gives, with kerf counted, and each fence setting',
  examples: [
    'strips 2x6 rip=1/2in',
    'strips 2x6x8 rip=1/2in need=40',
    'strips 38x140 rip=12mm kerf=2.4mm need=60m length=2.4m',
    'strips',
  ],
  options: z.strictObject({
    board: first(board('the board to rip, by name or by measured section')).optional(),
    rip: length('strip thickness, what the fence would set', '1/2in').optional(),
    kerf: length('what the blade takes', '1/8in').optional(),
    need: words('how many strips, or how much length of strip in all', '40').optional(),
    length: length('length of the boards', '8ft').optional(),
    safe: length('narrowest piece you leave between blade and fence', '2in').optional(),
  }),
  run: async (input, context) => {
    const { show, settings, settled, project } = context
    const plan = project && planned(project.choices, context).plan
    const laid = plan && !input.board ? (await boardsOfPlan(plan, context)).rips : []
    const taken = input.board
      ? { board: input.board, from: '' }
      : boardOfLayout(laid, input.length, plan, context)
    const rip = input.rip ?? plan?.spec.strip ?? settings.usual[settled.region].strip
    const kerf = sawKerf(input.kerf, show) ?? settled.kerf
    const safe = input.safe ?? settings.safeRip
    const { width } = taken.board
    const counted = countStrips({ board: width, strip: rip, kerf })
    if (counted.status === 'impossible' || counted.count === 0) {
      throw new Refusal(
        'invalid',
        `a board ${show.length(width)} wide gives no strip of ${show.length(rip)}; rip less, or take a wider board`,
      )
    }
    const whole = counted.count === 1 && counted.spare === 0
    const rips = ripSettings({ board: width, strip: rip, kerf, safe })
    const asked = { ...input, board: taken.board, kerf }
    const isLaid = !input.rip && !input.length && kerf === settled.kerf
    const needed =
      typedNeed(asked, context) ??
      (isLaid && laid.length > 0 ? laidNeed(laid) : plan && planNeed(plan, asked, rip, context))
    const buy = needed && boardsFor(needed.need, Math.max(1, counted.safeCount))
    const bought = buy?.status === 'counted' ? buy : undefined
    return {
      answer: answer(taken.board, counted, rip, bought, show),
      cautions: whole
        ? []
        : context.cautions({ ripWidth: toMillimetres(rip), pieceAtFence: toMillimetres(rips.left) }),
      tables: [...fenceTable(rips, show), ...(isLaid ? otherTables(laid.slice(1), show) : [])],
      pictures: whole ? [] : ripsPicture(taken.board, { strip: rip, kerf, rips }, show),
      notes: [
        taken.from,
        whole
          ? 'the board is the strip: nothing is ripped'
          : `kerf ${stockSize(kerf, show)}; ${spareWords(counted, show)}`,
        tightLine(counted, show),
        stopLine(rips, counted, safe, show),
        bought ? needLine(bought, counted) : handLine(taken.board, counted),
        needed?.from ?? '',
        input.rip
          ? ''
          : `strips ${stockSize(rip, show)} thick${plan ? " from this channel's project" : ''} (rip=)`,
      ].filter((line) => line !== ''),
      figures: {
        perBoard: counted.count,
        safePerBoard: counted.safeCount,
        spare: toMillimetres(counted.spare),
        boards: bought?.boards ?? null,
        board: taken.board.name ?? null,
        width: toMillimetres(width),
        settings: rips.settings.map(toMillimetres),
      },
    }
  },
})

interface Asked {
  readonly board: BoardRead
  readonly kerf: Length
  readonly rip?: Length | undefined
  readonly need?: string | undefined
  readonly length?: Length | undefined
}

/** What is needed, and a line on where that comes from. */
interface Needed {
  readonly need: StripNeed
  readonly from: string
}

function typedNeed(asked: Asked, { settled, reference }: Context): Needed | undefined {
  const boardLength = lengthOf(asked)
  if (asked.need === undefined) return undefined
  return { need: readNeed(asked.need, boardLength, { ...settled, stock: reference.stock }), from: '' }
}

function lengthOf({ board, length }: Asked): Length | undefined {
  if (board.length !== undefined && length !== undefined && board.length !== length) {
    throw new Refusal(
      'invalid',
      'the length of the boards is given twice, in the board and as length=; keep one',
    )
  }
  return length ?? board.length
}

/** The board that the layout of the plan takes most of; the plan's own where there is no layout. */
function boardOfLayout(
  rips: readonly PlanRips[],
  asked: Length | undefined,
  plan: Plan | undefined,
  context: Context,
): BoardOfPlan {
  const [first] = rips
  if (!first) return boardOfPlan(plan, context)
  const { thickness, width, length = asked } = { ...first.board, ...(asked && { length: asked }) }
  return {
    board: { status: 'read', thickness, width, length, name: first.label, units: context.show.units },
    from: `${boardWords(rips)}: the boards that "layout" and "shopping" take for this channel's plan (board=)`,
  }
}

/** The strips that the layout takes of the first kind of board. */
const laidNeed = ([first]: readonly PlanRips[]): Needed => ({
  need: { strips: first?.strips ?? 0 },
  from: '',
})

/** The fences of the other kinds of board that the layout takes. */
const otherTables = (rips: readonly PlanRips[], { unit }: Show) =>
  rips.map(({ label, steps }) => ({
    title: `${label}: fence to nearest tooth (${unit})`,
    columns: ['Cut', 'Fence'],
    rows: steps.map(({ setting }, cut) => [cut + 1, { length: setting, fine: true }]),
  }))

/** What the plan's strips take, where they are what this board is ripped to. */
function planNeed(plan: Plan, asked: Asked, rip: Length, context: Context): Needed | undefined {
  const { show } = context
  if (!isNear(asked.board.thickness, plan.spec.width) || !isNear(rip, plan.spec.strip)) return undefined
  const typed = lengthOf(asked)
  const boardLength = typed ?? usualBoardLength(plan, context)
  const strips = boardLength && stripsOfPlan(plan, boardLength, asked.kerf)
  if (boardLength === undefined || strips === undefined) return undefined
  const long = `${show.mark(boardLength)} ${show.unit} long${typed ? '' : ' (length=)'}`
  return {
    need: { strips },
    from: `an estimate for this channel's plan, from boards ${long}; "layout" proves it`,
  }
}

function answer(
  board: BoardRead,
  { count, safeCount, spare }: StripCount,
  rip: Length,
  bought: BoardCount | undefined,
  show: Show,
): string {
  const called = board.name ?? `${show.mark(board.thickness)} x ${show.length(board.width)}`
  const each = `${count} ${count === 1 ? 'strip' : 'strips'} of ${stockSize(rip, show)} from each ${called}`
  const exact = spare === 0 && count > 1 ? `, but count on ${safeCount}: nothing is spare` : ''
  const verb = count === 1 && spare === 0 ? 'Take' : 'Rip'
  return bought ? `${verb} ${bought.boards} ${boards(bought.boards)}: ${each}${exact}` : `${each}${exact}`
}

const boards = (count: number): string => (count === 1 ? 'board' : 'boards')

const fenceTable = ({ settings }: Rips, { unit }: Show) =>
  settings.length === 0
    ? []
    : [
        {
          title: `Fence to nearest tooth (${unit}); the strip falls free on the other side`,
          columns: ['Cut', 'Fence'],
          rows: settings.map((setting, cut) => [cut + 1, { length: setting, fine: true }]),
        },
      ]

function spareWords({ spare, offcut }: StripCount, show: Show): string {
  if (spare === 0) return 'nothing is spare'
  const said = `${show.length(spare, 'into', true)} is spare`
  return offcut === 0
    ? `${said}, which one more cut turns to dust`
    : `${said}, of which one more cut leaves ${show.length(offcut, 'into', true)}`
}

const tightLine = ({ tight, spare }: StripCount, show: Show): string =>
  tight && spare > 0
    ? `tight: ${show.length(spare, 'mark', true)} spare is less than most edges need to clean up`
    : ''

/** Where the fence list ends before the strips do. */
function stopLine({ settings, left, count }: Rips, counted: StripCount, safe: Length, show: Show): string {
  if (count >= counted.count || (counted.count === 1 && counted.spare === 0)) return ''
  const least = `${show.mark(safe, 'cover')} ${show.unit}`
  return settings.length === 0
    ? `no cut leaves ${least} at the fence (safe=): use a push block or a jig for every one`
    : `the fence list stops with ${show.length(left, 'mark', true)} at the fence (safe=${least}); take the rest with a push block or a jig`
}

function needLine({ strips, spareStrips }: BoardCount, { safeCount }: StripCount): string {
  const needed = strips === 1 ? '1 strip needed' : `${strips} strips needed`
  const more = spareStrips === 1 ? '1 more comes out' : `${spareStrips} more come out`
  return `${needed}, ${more}; reckoned with ${Math.max(1, safeCount)} a board`
}

/** `5 2x6x8` says how many there are. */
const handLine = ({ count, name = 'such boards' }: BoardRead, { safeCount }: StripCount): string =>
  count === undefined || count === 1
    ? ''
    : `${count} ${name} give ${count * safeCount} strips, at ${safeCount} a board`
