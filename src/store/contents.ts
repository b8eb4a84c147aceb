import { createHash, randomUUID } from 'node:crypto'
import { access, mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises'

const NAME = /^[0-9a-f]{64}$/u

/** Pictures and files by what they hold: each lies in `folder` under its SHA-256, so that the same content is kept once. */
export async function openContents(folder: string) {
  await mkdir(folder, { recursive: true })
  return {
    keep: async (content: Uint8Array): Promise<string> => {
      const name = createHash('sha256').update(content).digest('hex')
      const isKnown = await access(`${folder}/${name}`).then(
        () => true,
        () => false,
      )
      if (isKnown) return name
      // Under another name first, so that nobody ever reads half of it.
      const whole = `${folder}/${randomUUID()}.new`
      await writeFile(whole, content)
      await rename(whole, `${folder}/${name}`)
      return name
    },
    read: async (name: string): Promise<Uint8Array | undefined> =>
      NAME.test(name) ? readFile(`${folder}/${name}`).catch(() => undefined) : undefined,
    names: (): Promise<readonly string[]> => readdir(folder),
    forget: async (names: readonly string[]): Promise<void> => {
      await Promise.all(names.map((name) => rm(`${folder}/${name}`, { force: true })))
    },
  }
}

/** The names of contents that stand in a text. */
export const contentsIn = (text: string): ReadonlySet<string> => new Set(text.match(/[0-9a-f]{64}/gu))
