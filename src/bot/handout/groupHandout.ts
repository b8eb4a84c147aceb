import type { Context } from '../context.ts'
import type { GroupParts, PooledStock } from '../group/cutting.ts'
import { layOutGroup } from '../group/cutting.ts'
import type { Group } from '../group/group.ts'
import { kitCautions } from '../group/groupReply.ts'
import { kitStepsOf } from '../group/kitSteps.ts'
import { asCutList, problemLines } from '../group/kits.ts'
import { standOf } from '../group/progress.ts'
import { searchTerms } from '../layoutJob.ts'
import { cutOrderReply } from '../sawnJob.ts'
import { showKept } from '../showKept.ts'
import { cautionSection, distinct } from './cautionSection.ts'
import { cutListSection, type PrintedPart } from './cutListSection.ts'
import type { Handout, Label, Paper } from './handout.ts'
import { type KitsPrinted, kitLabels, kitSections } from './kitSections.ts'
import { labelSection } from './labels.ts'
import { needSection } from './needSection.ts'
import { points } from './points.ts'
import { layoutSection, orderSection } from './sawSections.ts'
import { stationSection } from './stationSection.ts'
import { versionLine } from './version.ts'
import { whoseSection } from './whoseSection.ts'

/** What a group's handout is made of. */
export interface GroupPrinting {
  readonly parts: GroupParts
  readonly stock: PooledStock
  readonly names: ReadonlyMap<string, string>
  /** `list version 4`. */
  readonly version: string
  readonly paper: Paper
}

/** A handout of a group, and how many labels and saw settings it has. */
export interface GroupHandout {
  readonly handout: Handout
  readonly labels: readonly Label[]
  readonly settings: number
}

/** All kits on paper: one list with its owners, one layout, who brings what, a page a kit. The layout is searched for once. */
export async function groupHandout(
  { parts, stock, names, version, paper }: GroupPrinting,
  context: Context,
): Promise<GroupHandout> {
  const { group, worked, merged } = parts
  const { reference, request, settings, settled } = context
  const show = showKept(context, group.units)
  const terms = searchTerms(context)
  const job = await layOutGroup(parts, stock, { context, seconds: settings.search.seconds, terms })
  const order = await cutOrderReply(job, context, terms, undefined)
  const printed: KitsPrinted = { group, worked, merged, names, show, context }
  const labels = kitLabels(printed)
  const kits = kitStepsOf(worked, context)
  const cautions = distinct([...kitCautions(worked, context), ...(order.cautions ?? [])], reference.cautions)
  return {
    handout: {
      ...frontOf(group, version, context),
      paper,
      sections: [
        cutListSection(ownedParts(parts), show, points(problemLines(worked))),
        ...cautionSection(cautions, reference.cautions),
        layoutSection(job, stock.currency, show.length(settled.kerf, 'mark', true)),
        ...whoseSection(job, merged),
        orderSection(order, job),
        ...stationSection(kits, standOf(group, kits), show, context),
        ...needSection(group, names),
        ...(await kitSections(printed)),
        labelSection(labels),
      ],
      at: request.at,
    },
    labels,
    settings: Number(order.figures.settings),
  }
}

/** Title, subtitle and foot of whatever is printed for a group. */
export function frontOf(
  { title, date, units }: Group,
  version: string,
  context: Context,
): Pick<Handout, 'title' | 'subtitle' | 'foot'> {
  const line = versionLine(version, context.request.at)
  const { unit } = showKept(context, units)
  return {
    title: date === undefined ? title : `${title}, ${date}`,
    subtitle: `${line}. Lengths in ${unit === 'in' ? 'inches' : 'millimetres'}.`,
    foot: `${title}. ${line}`,
  }
}

/** The list of all kits, each row with whose its parts are; spares are counted with them and are nobody's. */
const ownedParts = ({ merged }: GroupParts): readonly PrintedPart[] =>
  asCutList(merged).map((part, index) => ({
    ...part,
    whose: [
      ...(merged[index]?.owners ?? []).map(({ label, count }) => (count === 1 ? label : `${count} ${label}`)),
      ...((merged[index]?.spare ?? 0) > 0 ? [`${merged[index]?.spare} spare`] : []),
    ].join(', '),
  }))
