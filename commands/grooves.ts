import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import { count, first, length } from '../src/bot/option.ts'
import { planned } from '../src/bot/plannedSurround.ts'
import { Refusal } from '../src/bot/refusal.ts'
import { toMillimetres } from '../src/core/measure/length.ts'
import { type GrooveObstacle, layGrooves } from '../src/core/panelling/grooves.ts'

export default defineCommand({
  name: 'grooves',
  summary: 'Where decorative grooves go across a panel, and the fence for each',
  examples: [
    'grooves 23 7/8in count=5 thickness=15/32in',
    'grooves 600mm pitch=65mm thickness=12mm kerf=2.4mm',
    'grooves 18in count=3 thickness=1/2in stiles=1in',
  ],
  options: z.strictObject({
    panel: first(length('the panel, across the grooves', '23 7/8in')).optional(),
    count: count('how many grooves', 1, 100).optional(),
    pitch: length('from groove to groove, in place of a count', '2 1/2in').optional(),
    kerf: length('width of the groove: what the blade takes', '1/8in').optional(),
    thickness: length('true thickness of the panel', '15/32in').optional(),
    stiles: length('how much each stile covers: boards come out equal over what shows between them', '1in', {
      zero: true,
    }).optional(),
  }),
  run: (input, context) => {
    const { show, settled, project } = context
    const plan =
      project && (!input.panel || !input.thickness) ? planned(project.choices, context).plan : undefined
    const side = plan?.faces[1]
    const panel = input.panel ?? side?.panel
    const thickness = input.thickness ?? plan?.spec.sheet
    const stiles = input.stiles ?? (input.panel ? undefined : side?.covered)
    const wanted = input.count ?? (input.pitch ? undefined : plan?.spec.grooves || undefined)
    if (panel === undefined)
      throw new Refusal(
        'invalid',
        'how wide is the panel, across the grooves? Write it first, such as 23 7/8in',
      )
    if (thickness === undefined)
      throw new Refusal(
        'invalid',
        'how thick is the panel really? Add thickness=15/32in, so that no groove goes too deep',
      )
    if (wanted === undefined && input.pitch === undefined)
      throw new Refusal(
        'invalid',
        'how many grooves? Add count=5, or the distance between them as pitch=2 1/2in',
      )
    const kerf = input.kerf ?? settled.kerf
    const laid = layGrooves({
      panel,
      count: wanted,
      pitch: input.pitch,
      kerf,
      thickness,
      equalOver: stiles ? 'between stiles' : 'panel',
      stile: stiles,
    })
    if (laid.status === 'impossible') throw new Refusal('invalid', sentence(laid))
    return {
      answer: `${laid.count} grooves ${show.length(laid.depth, 'into', true)} deep; first fence ${show.length(laid.settings[0]?.fence ?? laid.depth, 'mark', true)}, boards ${show.length(laid.boardWidth, 'mark', true)} wide`,
      cautions: context.cautions({ grooves: laid.count, grooveDepth: toMillimetres(laid.depth) }),
      tables: [
        {
          title: `Fence to nearest tooth (${show.unit}); turn the panel end for end for the second groove`,
          columns: ['Fence', 'Grooves'],
          rows: laid.settings.map(({ fence, grooves }) => [
            { length: fence, fine: true },
            grooves.join(' and '),
          ]),
        },
      ],
      notes: [
        `a third of the thickness deep; never deeper than half, ${show.length(laid.deepest, 'into', true)}`,
        stiles
          ? 'boards equal over what shows between the stiles'
          : 'boards equal over the whole panel (stiles= for what shows)',
        ...(laid.unevenMargins
          ? [
              `the margins are ${show.length(laid.margin)}, unlike the boards; another pitch, or count=, evens them`,
            ]
          : []),
        ...(input.panel ? [] : ["a side panel of this channel's project"]),
        `groove ${show.length(kerf, 'mark', true)} wide, one pass of the blade (kerf=)`,
      ],
      figures: {
        centres: laid.centres.map(toMillimetres),
        fences: laid.fences.map(toMillimetres),
        boardWidth: toMillimetres(laid.boardWidth),
        depth: toMillimetres(laid.depth),
      },
    }
  },
})

function sentence(obstacle: GrooveObstacle): string {
  switch (obstacle.kind) {
    case 'meet':
      return `the grooves would run into each other or off the panel; ${obstacle.most} fit at most with this blade`
    case 'pitchTooWide':
      return 'not one groove fits at that pitch; make pitch= smaller, or give count=1'
    case 'notPositive':
      return 'the stiles leave nothing of the panel to groove; make stiles= smaller'
  }
}
