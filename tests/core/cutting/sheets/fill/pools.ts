import type { Pool } from '../../../../../src/core/cutting/sheets/fill/tile.ts'
import { type Job, readJob } from '../../../../../src/core/cutting/sheets/job.ts'
import { readSizes } from '../../../../../src/core/cutting/sheets/packing.ts'

/** Length, width and how many. */
export type Rectangle = readonly [length: number, width: number, count: number]

/** A job of parts that may be turned, on one sheet, without kerf. */
export const jobOf = (parts: readonly Rectangle[], length: number, width: number): Job =>
  readJob({
    parts: parts.map(([long, wide, count], index) => ({
      id: `P${index}`,
      length: long,
      width: wide,
      count,
      turnable: true,
    })),
    stock: [{ id: 'sheet', length, width, price: 1 }],
    kerf: 0,
    trim: 0,
    keepable: 1,
  })

/** All parts of a job, each worth its area. */
export const poolOf = (job: Job): Pool => {
  const sizes = readSizes(job)
  return { sizes, left: Int32Array.from(job.parts, (part) => part.count), worth: sizes.area }
}
