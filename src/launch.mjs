// Starts the bot from one bundle in place of some hundred TypeScript files, which is several times as quick. Every state of the
// sources has a bundle of its own, made when it is first started from, so that nobody ever has to think of it.
import { createHash } from 'node:crypto'
import { readdirSync, statSync } from 'node:fs'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { isBundled } from './bundles.mjs'

const root = fileURLToPath(new URL('..', import.meta.url))

/** A name for the sources, the config and the list of packages as they are: it changes with every file that does. */
function nameOfSources() {
  const files = ['src', 'commands', 'config'].flatMap((folder) =>
    readdirSync(root + folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => `${entry.parentPath}/${entry.name}`),
  )
  const hash = createHash('sha256')
  for (const file of [...files, `${root}package-lock.json`].sort()) {
    const { mtimeMs, size } = statSync(file)
    hash.update(`${file} ${mtimeMs} ${size}\n`)
  }
  return hash.digest('hex').slice(0, 32)
}

/** What to run: the bundle, or where none can be written the sources themselves, which take longer to start. */
async function prepare() {
  const folder = `${root}.build/${nameOfSources()}/`
  const main = `${folder}src/main.js`
  if (isBundled(folder)) return main
  try {
    const { bundleSources } = await import('./bundle.mjs')
    await bundleSources(root, folder)
    return main
  } catch (error) {
    if (!['EACCES', 'EPERM', 'EROFS'].includes(error.code)) throw error
    const { register } = await import('tsx/esm/api')
    register()
    return `${root}src/main.ts`
  }
}

await import(pathToFileURL(await prepare()).href)
