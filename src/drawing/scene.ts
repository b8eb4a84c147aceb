/** A point of a scene, in its own units, right and down from its upper left corner. */
export type Point = readonly [x: number, y: number]

/** How a line or an outline is drawn; what each means on the page is the painter's to say. */
export type Stroke = 'outline' | 'thin' | 'dashed' | 'dimension' | 'cut'

/** What a shape is filled with; never the only thing that tells two shapes apart. */
export type Fill = 'none' | 'sheet' | 'strip' | 'offcut' | 'paper' | 'ink'

/** One shape of a picture, as data. */
export type Shape =
  | {
      readonly shape: 'polygon'
      readonly points: readonly Point[]
      readonly fill: Fill
      readonly stroke?: Stroke
    }
  | { readonly shape: 'line'; readonly points: readonly Point[]; readonly stroke: Stroke }
  | {
      readonly shape: 'text'
      readonly at: Point
      readonly text: string
      readonly size: number
      readonly anchor?: 'start' | 'middle' | 'end'
      /** Degrees, turning to the right. */
      readonly turn?: number
      readonly bold?: boolean
    }

/** A picture as data: true to scale, without colours or files. Whoever paints it gives it both. */
export interface Scene {
  readonly width: number
  readonly height: number
  readonly shapes: readonly Shape[]
}
