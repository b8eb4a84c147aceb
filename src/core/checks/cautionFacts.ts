import type { FinishKind } from '../quantities/product.ts'

/** What is left open in a box: the answer that a stopped request waits for. */
export const OPENINGS = ['none', 'top', 'sides', 'both'] as const
export type Opening = (typeof OPENINGS)[number]

/** What a command says about its answer, so that the cautions can be picked. A fact left out is not known. */
export interface Facts {
  /** Strip to be ripped, as the rip fence sets it, mm. */
  readonly ripWidth?: number | undefined
  /** Narrowest piece left between blade and fence, mm. */
  readonly pieceAtFence?: number | undefined
  /** Shortest piece to be crosscut, mm. */
  readonly pieceLength?: number | undefined
  /** Steepest saw setting, degrees from square. */
  readonly mitre?: number | undefined
  readonly grooves?: number | undefined
  /** mm. */
  readonly grooveDepth?: number | undefined
  /** mm. */
  readonly bradLength?: number | undefined
  /** All that the brad passes through, mm. */
  readonly stackThickness?: number | undefined
  /** Of the shop, degrees Celsius. */
  readonly temperature?: number | undefined
  /** Coats of finish. */
  readonly coats?: number | undefined
  /** Saw cuts in all. */
  readonly cuts?: number | undefined
  /** Level at the ear, dBA. */
  readonly noise?: number | undefined
  /** Heaviest thing that is lifted in one piece, kg. */
  readonly weight?: number | undefined
  /** Of the finished thing, mm. */
  readonly height?: number | undefined
  /** Its narrower base, mm. */
  readonly base?: number | undefined
  readonly crosscut?: boolean | undefined
  /** A full sheet is cut up. */
  readonly sheetCut?: boolean | undefined
  readonly brads?: boolean | undefined
  readonly glue?: boolean | undefined
  /** Sawing or sanding enough to fill the air. */
  readonly dust?: boolean | undefined
  /** Wood that had another life. */
  readonly scrap?: boolean | undefined
  /** Lumber treated against rot. */
  readonly treated?: boolean | undefined
  /** An electric cord goes in or out. */
  readonly cord?: boolean | undefined
  readonly finishKind?: FinishKind | undefined
  /** The sheet or wood by name. */
  readonly material?: string | undefined
  /** What the box is for, in the words typed. */
  readonly object?: string | undefined
  readonly open?: Opening | undefined
}

export type FactName = keyof Facts
export type FactKind = 'length' | 'number' | 'flag' | 'text' | 'finish' | 'opening'

/** What each fact holds: the config is checked against it. */
export const FACT_KINDS: Readonly<Record<FactName, FactKind>> = {
  ripWidth: 'length',
  pieceAtFence: 'length',
  pieceLength: 'length',
  mitre: 'number',
  grooves: 'number',
  grooveDepth: 'length',
  bradLength: 'length',
  stackThickness: 'length',
  temperature: 'number',
  coats: 'number',
  cuts: 'number',
  noise: 'number',
  weight: 'number',
  height: 'length',
  base: 'length',
  crosscut: 'flag',
  sheetCut: 'flag',
  brads: 'flag',
  glue: 'flag',
  dust: 'flag',
  scrap: 'flag',
  treated: 'flag',
  cord: 'flag',
  finishKind: 'finish',
  material: 'text',
  object: 'text',
  open: 'opening',
}
