/** What the room in the browser takes and shows. A page can be as long as it likes, so replies are never cut. */
export const limits = {
  /** Characters of a person's name, and of a channel's. */
  nameLength: 40,
  channelLength: 32,
  /** Bytes of one request: the longest line that is read, in any script, with room to spare. */
  bodyBytes: 16_384,
  /** Entries of a channel that a page shows when it opens. */
  entriesShown: 100,
  /** Milliseconds between two looks at what stands in channels with an open page; of so many looks one is at all channels. */
  lookPause: 2000,
  looksAtOpen: 30,
  /** What may be typed next, offered at once. */
  completions: 25,
  /** Pages that may be open at once. */
  pages: 200,
  /** Bytes that may wait for a page that does not read them, before it has to connect anew. */
  bytesWaiting: 4_194_304,
  /** Lines that one address may send in a minute, and requests of every kind. */
  linesPerMinute: 120,
  requestsPerMinute: 1200,
} as const
