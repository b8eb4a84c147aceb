import { INCH } from '../measure/length.ts'
import type { Batch } from './order/batch.ts'
import type { NextId } from './order/bench.ts'
import type { Saw } from './order/blank.ts'
import type { CutOrder, SawStep } from './order/cutOrder.ts'
import { sequenceCuts } from './order/sequence.ts'
import type { BoardsToCut, SheetsToCut } from './order/stock.ts'
import { layBoards, laySheets } from './order/stock.ts'
import { findSwaps } from './order/swaps.ts'
import type { ShouldStop } from './problem.ts'

/** What is to be sawn, and how. Sizes in the unit of the problems. */
export interface SawingJob {
  readonly sheets?: SheetsToCut | undefined
  readonly lengths?: BoardsToCut | undefined
  /** A strip narrower than this never lies between fence and blade where it can be helped. */
  readonly safeWidth: number
  /** The finest mark of the tape. */
  readonly step: number
  /** Parts whose sides differ by this at most are easily swapped; 1/8 in without it. */
  readonly swapWithin?: number | undefined
}

const countFrom = (first: number): NextId => {
  let next = first
  return () => next++
}

const readStep = ({ move, cuts, remaining, waiting }: Batch, step: number): SawStep => ({
  setting: move.setting,
  mark: Math.round(move.setting / step) * step,
  kind: move.kind,
  of: move.of,
  cuts,
  remaining,
  waiting,
})

function readSaw({ sheets, lengths, safeWidth }: SawingJob, kerf: number): Saw {
  const keepable = {
    sheet: Math.max(1, sheets?.problem.keepable ?? 1),
    board: Math.max(1, lengths?.problem.keepable ?? 1),
  }
  return { kerf, safeWidth, keepable }
}

/**
 * The order of cutting: every setting of fence or stop with all the cuts it serves, as few settings as were found
 * without cutting a piece before it exists. Full sheets are broken down first; every cut leaves a sawn edge for the
 * next. Told to stop, it gives the order that it has, which it has from the first. A layout that names stock or parts
 * its problem does not have is the caller's bug and throws.
 */
export function orderCuts(job: SawingJob, shouldStop: ShouldStop = () => false): CutOrder {
  const { sheets, lengths, step, swapWithin = INCH / 8 } = job
  const sheetSaw = readSaw(job, sheets?.problem.kerf ?? 0)
  const boardSaw = readSaw(job, lengths?.problem.kerf ?? 0)
  const nextId = countFrom(0)
  const onBench = sheets === undefined ? [] : laySheets(sheets, sheetSaw, nextId)
  const boards = lengths === undefined ? [] : layBoards(lengths, boardSaw, nextId)
  // Sheets and boards go to different saws, so each has its own sequence.
  const batches = [
    ...sequenceCuts(sheetSaw, onBench, nextId, shouldStop),
    ...sequenceCuts(boardSaw, boards, nextId, shouldStop),
  ]
  const steps = batches.map((batch) => readStep(batch, step))
  const parts = [
    ...(sheets?.problem.parts ?? []),
    ...(lengths?.problem.parts ?? []).map((part) => ({ ...part, width: 0 })),
  ]
  return {
    steps,
    uncut: [...onBench, ...boards].filter(({ piece }) => piece.becomes === 'part').map(({ piece }) => piece),
    swaps: findSwaps(parts, swapWithin),
    figures: {
      settings: new Set(steps.map((one) => `${one.of} ${one.kind} ${one.setting}`)).size,
      steps: steps.length,
      cuts: steps.reduce((sum, one) => sum + one.cuts.length, 0),
    },
  }
}
