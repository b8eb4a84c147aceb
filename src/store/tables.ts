/** What is kept, one row a revision; rows are added and pruned, and only a forgotten person is ever written out of one. */
export interface RevisionRow {
  platform: string
  workspace: string
  kind: string
  id: string
  /** Counts from 1 within the document. */
  number: number
  /** UTC, as `2026-03-01T12:00:00.000Z`, so that text order is time order. */
  at: string
  /** Empty once forgotten. */
  author: string
  command: string
  way: 'edit' | 'undo' | 'redo'
  /** How many edits lead to what this revision shows; 0 is the empty document. */
  depth: number
  /** The depth that redo can reach from here. */
  top: number
  /** JSON text; null is the empty document. */
  body: string | null
}

/** An event that a platform has delivered. */
export interface EventRow {
  id: string
  at: string
}

/** The tables by name, as the migrations make them. */
export interface Tables {
  revisions: RevisionRow
  events: EventRow
}
