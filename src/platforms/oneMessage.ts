import type { Reply } from '../bot/reply.ts'

const FILE = 'cautions.txt'

/**
 * A reply that fits one message, as a notice has to: where not even answer and cautions do, the last cautions are in a file,
 * whole, and the message says so. `fits` must hold for less where it holds for more.
 */
export function inOneMessage(reply: Reply, fits: (reply: Reply) => boolean): Reply {
  if (fits(reply)) return reply
  const all = reply.cautions ?? []
  return withCautions(
    reply,
    mostOf(all.length, (count) => fits(withCautions(reply, count))),
  )
}

/** The most of `count` for which `fits` holds, 0 where it holds for none; it must hold for less where it holds for more. */
export function mostOf(count: number, fits: (count: number) => boolean): number {
  let [low, high] = [0, count]
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if (fits(middle)) low = middle
    else high = middle - 1
  }
  return low
}

function withCautions(reply: Reply, count: number): Reply {
  const all = reply.cautions ?? []
  const lost = all.length - count
  const [first] = all
  if (!first || lost === 0) return reply
  const more = { ...first, text: `${lost} more ${lost === 1 ? 'caution' : 'cautions'} in the file ${FILE}` }
  const content = `${all.map(({ text }) => text).join('\n')}\n`
  return {
    ...reply,
    cautions: [...all.slice(0, count), more],
    files: [{ name: FILE, type: 'text/plain', content }, ...(reply.files ?? [])],
  }
}
