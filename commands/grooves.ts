import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import { count, first, length } from '../src/bot/option.ts'
import { defaultSheet } from '../src/bot/completePlan.ts'
import { groovesPicture } from '../src/bot/picturesOfCuts.ts'
import { grooveSentence, panelGrooves } from '../src/bot/plannedGrooves.ts'
import { planned } from '../src/bot/plannedSurround.ts'
import type { Context } from '../src/bot/context.ts'
import { Refusal } from '../src/bot/refusal.ts'
import type { Figure, Picture, Table } from '../src/bot/reply.ts'
import type { Show } from '../src/bot/show.ts'
import { stockSize } from '../src/bot/stockSize.ts'
import { type Length, toMillimetres } from '../src/core/measure/length.ts'
import { type GrooveObstacle, type Grooves, layGrooves } from '../src/core/panelling/grooves.ts'
import type { Plan } from '../src/core/plan.ts'

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
      project && (!input.panel || !input.thickness || !(input.count || input.pitch))
        ? planned(project.choices, context).plan
        : undefined
    const kerf = input.kerf ?? settled.kerf
    const usual = input.thickness || plan ? undefined : usualSheet(context)
    const thickness = input.thickness ?? usual?.thickness
    const panels = panelsToGroove({ ...input, kerf, thickness }, plan)
    const [main] = panels
    if (!main) throw new RangeError('there is always a panel')
    const { laid } = main
    return {
      answer: [
        `${laid.count} ${laid.count === 1 ? 'groove' : 'grooves'} ${show.length(laid.depth, 'into', true)} deep`,
        ...panels.map((panel) => fenceWords(panel, laid.count, panels.length > 2, show)),
      ].join('; '),
      cautions: context.cautions({ grooves: laid.count, grooveDepth: toMillimetres(laid.depth) }),
      tables: panels.map((panel) => fenceTable(panel, show)),
      pictures: groovePictures(panels, { ...input, kerf, thickness }, plan, show),
      notes: [
        `a third of the thickness deep; never deeper than half, ${show.length(laid.deepest, 'into', true)}`,
        input.stiles || (!input.panel && input.stiles === undefined)
          ? 'boards equal over what shows between the stiles'
          : 'boards equal over the whole panel (stiles= for what shows)',
        ...panels.flatMap((panel) => marginLine(panel, show)),
        ...planLine(input, plan, show),
        ...(usual
          ? [`${usual.name} taken as ${stockSize(usual.thickness, show)} thick (measure yours: thickness=)`]
          : []),
        `groove ${stockSize(kerf, show)} wide, one pass of the blade (kerf=)`,
      ],
      figures: {
        ...groovesFigures(laid),
        ...(input.panel
          ? {}
          : { panels: panels.map(({ name, laid: each }) => ({ panel: name, ...groovesFigures(each) })) }),
      },
    }
  },
})

interface Asked {
  readonly panel?: Length | undefined
  readonly count?: number | undefined
  readonly pitch?: Length | undefined
  readonly kerf: Length
  readonly thickness?: Length | undefined
  readonly stiles?: Length | undefined
}

/** The sheet that panels are cut from where nobody has said. */
function usualSheet({ settings, settled, reference }: Context) {
  const name = settings.usual[settled.region].sheet
  return { name, thickness: defaultSheet(name, { ...settled, stock: reference.stock }).thickness }
}

/** Each panel at the fence; two at the most. */
function groovePictures(
  panels: readonly Panel[],
  asked: Asked,
  plan: Plan | undefined,
  show: Show,
): readonly Picture[] {
  const { kerf, panel } = asked
  const thickness = asked.thickness ?? plan?.spec.sheet
  return panels.slice(0, 2).flatMap(({ name, laid }) => {
    const length = panel ?? plan?.faces.find((face) => face?.name === name)?.panel
    if (length === undefined || thickness === undefined) return []
    return [groovesPicture({ name, length, thickness }, kerf, laid, show)]
  })
}

interface Panel {
  /** Empty for a panel that was typed. */
  readonly name: string
  readonly laid: Grooves
}

/** The panel that was typed, else the side and the end panels of the channel's plan. */
function panelsToGroove(asked: Asked, plan: Plan | undefined): readonly Panel[] {
  const { panel, pitch, kerf, stiles } = asked
  if (panel === undefined && plan === undefined)
    throw new Refusal(
      'invalid',
      'how wide is the panel, across the grooves? Write it first, such as 23 7/8in',
    )
  const thickness = asked.thickness ?? plan?.spec.sheet
  if (thickness === undefined) throw new RangeError('a panel without a plan has the thickness of its sheet')
  const ofPlan = panel === undefined && plan?.faces.some(({ grooves }) => grooves > 0)
  const count = asked.count ?? (pitch || ofPlan ? undefined : plan?.spec.grooves || undefined)
  if (count === undefined && pitch === undefined && !ofPlan)
    throw new Refusal(
      'invalid',
      'how many grooves? Add count=5, or the distance between them as pitch=2 1/2in',
    )
  const terms = { count, pitch, kerf, thickness, stiles }
  if (panel === undefined && plan)
    return together(
      panelGrooves(plan, terms).map(({ face, laid }) => ({
        name: face,
        laid: sound(laid, `${face} panels: `),
      })),
    )
  const equalOver = stiles ? 'between stiles' : 'panel'
  const laid = layGrooves({ ...terms, panel: panel as Length, equalOver, stile: stiles })
  return [{ name: '', laid: sound(laid, '') }]
}

/** Panels with the same fences are set up once: `side and front`. */
function together(panels: readonly Panel[]): readonly Panel[] {
  const merged: Panel[] = []
  for (const panel of panels) {
    const at = merged.findIndex(({ laid }) => JSON.stringify(laid) === JSON.stringify(panel.laid))
    const same = merged[at]
    if (same) merged[at] = { ...same, name: `${same.name} and ${panel.name}` }
    else merged.push(panel)
  }
  return merged
}

function sound(laid: Grooves | GrooveObstacle, where: string): Grooves {
  if (laid.status === 'impossible') throw new Refusal('invalid', `${where}${grooveSentence(laid)}`)
  return laid
}

/** `usual` is how many grooves the first panel has; shortly where there are many panels to tell of. */
function fenceWords({ name, laid }: Panel, usual: number, shortly: boolean, show: Show): string {
  const fence = show.length(laid.settings[0]?.fence ?? laid.depth, 'mark', true)
  const boards = shortly ? '' : `, boards ${show.length(laid.boardWidth, 'mark', true)} wide`
  const first = `first fence ${fence}${boards}`
  if (name === '') return first
  return `${name} panels ${laid.count === usual ? '' : `${laid.count}, `}${first}`
}

function fenceTable({ name, laid }: Panel, { unit }: Show): Table {
  const which = name === '' ? 'Fence' : `${name.charAt(0).toUpperCase()}${name.slice(1)} panels: fence`
  const turn = laid.count > 1 ? '; turn the panel end for end for the second groove' : ''
  return {
    title: `${which} to nearest tooth (${unit})${turn}`,
    columns: ['Fence', 'Grooves'],
    rows: laid.settings.map(({ fence, grooves }) => [{ length: fence, fine: true }, grooves.join(' and ')]),
  }
}

const marginLine = ({ name, laid }: Panel, show: Show): readonly string[] =>
  laid.unevenMargins
    ? [
        `${name === '' ? 'the margins' : `the margins of the ${name} panels`} are ${show.length(laid.margin)}, unlike the boards; another pitch, or count=, evens them`,
      ]
    : []

/** What came from the channel's plan. */
function planLine(input: Omit<Asked, 'kerf'>, plan: Plan | undefined, show: Show): readonly string[] {
  if (!plan) return []
  if (!input.panel) return ["the panels of this channel's project"]
  const taken = [
    input.thickness ? '' : `${stockSize(plan.spec.sheet, show)} thick`,
    input.count || input.pitch ? '' : `${plan.spec.grooves} grooves`,
  ].filter((word) => word !== '')
  return [`${taken.join(' and ')}, from this channel's project`]
}

const groovesFigures = ({
  centres,
  fences,
  boardWidth,
  depth,
}: Grooves): Readonly<Record<string, Figure>> => ({
  centres: centres.map(toMillimetres),
  fences: fences.map(toMillimetres),
  boardWidth: toMillimetres(boardWidth),
  depth: toMillimetres(depth),
})
