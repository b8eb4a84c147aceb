/** A point of a scene, in its own units, right and down from its upper left corner. */
export type Point = readonly [x: number, y: number]

/** How a line or an outline is drawn; what each means on the page is the painter's to say. */
export type Stroke = 'outline' | 'thin' | 'dashed' | 'dimension' | 'groove' | 'cut' | 'pointer'

/**
 * What a shape is filled with; never the only thing that tells two shapes apart. `sheetCut` and `stripCut` are sections:
 * layers (level or upright) and end grain. `hatched` is a remainder to keep, `dotted` is waste.
 */
export type Fill =
  | 'none'
  | 'paper'
  | 'ink'
  | 'accent'
  | 'sheet'
  | 'strip'
  | 'sheetCut'
  | 'sheetCutUpright'
  | 'stripCut'
  | 'hatched'
  | 'dotted'

/** Which way a face of something in the round looks; the lower it is, the darker. */
export type Facing = 'up' | 'left' | 'right'

/** What a shape stands for, such as `side rail`, so that a picture can be read back. */
interface Named {
  readonly of?: string | undefined
}

export interface Polygon extends Named {
  readonly shape: 'polygon'
  readonly points: readonly Point[]
  readonly fill: Fill
  readonly stroke?: Stroke | undefined
  readonly facing?: Facing | undefined
}

export interface Line extends Named {
  readonly shape: 'line'
  readonly points: readonly Point[]
  readonly stroke: Stroke
}

export interface Text extends Named {
  readonly shape: 'text'
  /** The foot of the letters, at their start, middle or end. */
  readonly at: Point
  readonly text: string
  readonly size: number
  readonly anchor?: 'start' | 'middle' | 'end' | undefined
  /** Degrees, turning to the right: 0 or -90. */
  readonly turn?: 0 | -90 | undefined
  readonly bold?: boolean | undefined
  readonly tone?: 'soft' | 'accent' | undefined
  /** A rim of paper round the letters, against lines and hatching; there unless said otherwise. */
  readonly rim?: boolean | undefined
}

/** One shape of a picture, as data. */
export type Shape = Polygon | Line | Text

/** A picture as data: without colours or files. Whoever paints it gives it both. */
export interface Scene {
  readonly width: number
  readonly height: number
  readonly shapes: readonly Shape[]
  /** Units of the scene in one nanometre of what is drawn; undefined where it is not true to scale. */
  readonly scale?: number | undefined
}
