import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import { board, first, length, words } from '../src/bot/option.ts'
import { readNeed } from '../src/bot/need.ts'
import { Refusal } from '../src/bot/refusal.ts'
import type { Show } from '../src/bot/show.ts'
import { type Length, toMillimetres } from '../src/core/measure/length.ts'
import { boardsFor } from '../src/core/panelling/boards.ts'
import { ripSettings } from '../src/core/panelling/rips.ts'
import { countStrips } from '../src/core/panelling/strips.ts'

export default defineCommand({
  name: 'strips',
  summary: 'How many strips a board gives, with kerf counted, and each fence setting',
  examples: [
    'strips 2x6 rip=1/2in',
    'strips 2x6x8 rip=1/2in need=40',
    'strips 38x140 rip=12mm kerf=2.4mm need=60m length=2.4m',
  ],
  options: z.strictObject({
    board: first(board('the board to rip, by name or by measured section')),
    rip: length('strip thickness, what the fence would set', '1/2in').optional(),
    kerf: length('what the blade takes', '1/8in').optional(),
    need: words('how many strips, or how much length of strip in all', '40').optional(),
    length: length('length of the boards', '8ft').optional(),
    safe: length('narrowest piece you leave between blade and fence', '2in').optional(),
  }),
  run: (input, context) => {
    const { show, settings, settled, project } = context
    const rip = input.rip ?? project?.choices.strip ?? settings.usual[settled.region].strip
    const kerf = input.kerf ?? settled.kerf
    const safe = input.safe ?? settings.safeRip
    const { width, name } = input.board
    const counted = countStrips({ board: width, strip: rip, kerf })
    if (counted.status === 'impossible' || counted.count === 0) {
      throw new Refusal(
        'invalid',
        `a board ${show.length(width)} wide gives no strip of ${show.length(rip)}; rip less, or take a wider board`,
      )
    }
    const { count, safeCount, spare, offcut, tight } = counted
    const rips = ripSettings({ board: width, strip: rip, kerf, safe })
    const boardLength = input.length ?? input.board.length
    const need =
      input.need === undefined
        ? undefined
        : readNeed(input.need, boardLength, { ...settled, stock: context.reference.stock })
    const buy = need && boardsFor(need, Math.max(1, safeCount))
    const called = name ?? `${show.mark(input.board.thickness)} x ${show.length(width)}`
    const each = `${count} ${count === 1 ? 'strip' : 'strips'} of ${show.length(rip)} from each ${called}`
    const exact = spare === 0 ? `, but count on ${safeCount}: nothing is spare` : ''
    return {
      answer:
        buy?.status === 'counted'
          ? `Rip ${buy.boards} ${buy.boards === 1 ? 'board' : 'boards'}: ${each}${exact}`
          : `${each}${exact}`,
      cautions: context.cautions({ ripWidth: toMillimetres(rip), pieceAtFence: toMillimetres(rips.left) }),
      tables: [
        {
          title: `Fence to nearest tooth (${show.unit}); the strip falls free on the other side`,
          columns: ['Cut', 'Fence'],
          rows: rips.settings.map((setting, cut) => [cut + 1, { length: setting, fine: true }]),
        },
      ],
      notes: [
        `kerf ${show.length(kerf, 'mark', true)}; ${spareWords(spare, offcut, show)}`,
        ...(tight && spare > 0
          ? [`tight: ${show.length(spare, 'mark', true)} spare is less than most edges need to clean up`]
          : []),
        ...(rips.count < count
          ? [
              `the fence list stops with ${show.length(rips.left, 'into')} at the fence (safe=${show.length(safe)}); take the rest with a push block or a jig`,
            ]
          : []),
        ...(buy?.status === 'counted'
          ? [
              `${buy.strips} strips needed, ${buy.spareStrips} more come out; reckoned with ${safeCount} a board`,
            ]
          : []),
        ...(input.rip
          ? []
          : [
              `strips ${show.length(rip)} thick${project?.choices.strip ? " from this channel's project" : ''} (rip=)`,
            ]),
      ],
      figures: {
        perBoard: count,
        safePerBoard: safeCount,
        spare: toMillimetres(spare),
        boards: buy?.status === 'counted' ? buy.boards : null,
        width: toMillimetres(width),
        settings: rips.settings.map(toMillimetres),
      },
    }
  },
})

function spareWords(spare: Length, offcut: Length, show: Show): string {
  if (spare === 0) return 'nothing is spare'
  const said = `${show.length(spare, 'into', true)} is spare`
  return offcut === 0
    ? `${said}, which one more cut turns to dust`
    : `${said}, of which one more cut leaves ${show.length(offcut, 'into', true)}`
}
