/**
 * What the room keeps of what was said, so that it is still there after a reload or a restart. Entries come back as they
 * were written, through JSON and back; whoever reads them checks their shape.
 */
export interface Transcript {
  /** Keeps an entry at the end of a channel; it takes the place of an earlier one with the same id. */
  readonly append: (channel: string, entry: { readonly id: string }) => Promise<void>
  /** The newest `count` entries of a channel that `wanted` says yes to, oldest first. */
  readonly recent: (
    channel: string,
    count: number,
    wanted: (entry: unknown) => boolean,
  ) => Promise<readonly unknown[]>
  /** Deletes the entries of a channel that `wanted` says yes to, for good; says how many there were. */
  readonly forget: (channel: string, wanted: (entry: unknown) => boolean) => Promise<number>
  /** The channels in which something was said. */
  readonly channels: () => Promise<readonly string[]>
  /** Keeps the content of a picture or a file, and gives the name it is kept by; the same content has the same name. */
  readonly keepContent: (content: Uint8Array) => Promise<string>
  /** Undefined when nothing is kept by this name. */
  readonly readContent: (name: string) => Promise<Uint8Array | undefined>
}
