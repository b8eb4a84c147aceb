import type { Solver } from '../../../../src/core/cutting/linearProgram.ts'
import type { LengthProblem } from '../../../../src/core/cutting/problem.ts'

interface Arc {
  readonly name: string
  readonly from: number
  readonly to: number
}

/**
 * The arc flow model of Valerio de Carvalho (Annals of Operations Research 86, 1999) for several stock lengths: a bar
 * is a path along its length, a part an arc as long as the part and its kerf. Patterns do not come into it.
 */
function arcsOf(problem: LengthProblem, longest: number): Arc[] {
  const arcs: Arc[] = []
  problem.parts.forEach((part, place) => {
    const size = part.length + problem.kerf
    for (let from = 0; from + size <= longest; from++)
      arcs.push({ name: `p${place}_${from}`, from, to: from + size })
  })
  for (let from = 0; from < longest; from++) arcs.push({ name: `w_${from}`, from, to: from + 1 })
  return arcs
}

const sum = (names: readonly string[], sign: string): string =>
  names.map((name) => ` ${sign} ${name}`).join('')

function modelOf(problem: LengthProblem): string {
  const ends = problem.stock.map((stock) => stock.length - problem.trim + problem.kerf)
  const longest = Math.max(...ends)
  const arcs = arcsOf(problem, longest)
  const bars = problem.stock.map((_, place) => `b${place}`)
  const lines = [
    `Minimize cost:${problem.stock.map((stock, place) => ` + ${stock.price} b${place}`).join('')}`,
    'Subject To',
  ]
  for (let point = 0; point <= longest; point++) {
    const into = arcs.filter((arc) => arc.to === point).map((arc) => arc.name)
    const out = arcs.filter((arc) => arc.from === point).map((arc) => arc.name)
    const opened = point === 0 ? bars : []
    const closed = bars.filter((_, place) => ends[place] === point)
    lines.push(` n${point}:${sum(into, '+')}${sum(opened, '+')}${sum(out, '-')}${sum(closed, '-')} = 0`)
  }
  problem.parts.forEach((part, place) => {
    const made = arcs.filter((arc) => arc.name.startsWith(`p${place}_`)).map((arc) => arc.name)
    lines.push(` d${place}:${sum(made, '+')} >= ${part.count}`)
  })
  problem.stock.forEach((stock, place) => {
    if (stock.onHand !== undefined) lines.push(` h${place}: + b${place} <= ${stock.onHand}`)
  })
  lines.push('General', [...arcs.map((arc) => arc.name), ...bars].join(' '), 'End')
  return lines.join('\n')
}

/** The least cost by an integer programme; undefined when it says that there is none. */
export function leastByModel(solver: Solver, problem: LengthProblem): number | undefined {
  const result = solver.solve(modelOf(problem), { output_flag: false, mip_rel_gap: 0 })
  return result.Status === 'Optimal' ? Math.round(result.ObjectiveValue) : undefined
}
