import { chmodSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { dirname } from 'node:path'
import { pathToFileURL } from 'node:url'
import { isDeepStrictEqual } from 'node:util'
import { build, stop } from 'esbuild'
import { dropOldBundles, isBundled, putInPlace } from './bundles.mjs'

/** Packages with parts that are not JavaScript, or that start threads of their own: used from where they are installed. */
const APART = ['@resvg/resvg-js', 'better-sqlite3', 'fontkit', 'highs', 'pdfkit', 'pino', 'tinypool']

/** Bundles main, the workers and every command of `root` into `folder`, which is one of its own for these sources. */
export async function bundleSources(root, folder) {
  const all = dirname(folder)
  mkdirSync(all, { recursive: true })
  const made = mkdtempSync(`${all}/new-`)
  try {
    await bundleInto(root, made)
    // Whoever may read the sources may run from their bundle.
    chmodSync(made, 0o755)
    putInPlace(made, folder)
  } catch (error) {
    rmSync(made, { recursive: true, force: true })
    throw error
  } finally {
    // What bundled is a process of its own, larger than the bot; it would stay for as long.
    await stop()
  }
  isBundled(folder)
  dropOldBundles(folder)
}

async function bundleInto(root, folder) {
  const commands = readdirSync(`${root}commands`).map((file) => `commands/${file}`)
  await build({
    absWorkingDir: root,
    entryPoints: [
      'src/main.ts',
      'src/search/worker.ts',
      'src/painting/worker.ts',
      'src/printing/worker.ts',
      ...commands,
    ],
    outdir: folder,
    outbase: '.',
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    external: APART,
    sourcemap: 'linked',
    plugins: [withConfig(await readConfig(root, folder))],
    // What is bundled of older packages still asks for `require`.
    banner: {
      js: "import { createRequire as bundledRequire } from 'node:module'; const require = bundledRequire(import.meta.url)",
    },
    logLevel: 'warning',
  })
}

/** What each file of config/ says that is without faults, by its text's name: YAML takes long to read at every start. */
async function readConfig(root, folder) {
  const reader = `${folder}/readConfig.mjs`
  await build({
    absWorkingDir: root,
    entryPoints: ['src/config/source.ts'],
    outfile: reader,
    bundle: true,
    packages: 'external',
    format: 'esm',
    platform: 'node',
  })
  const { nameOf, readSource } = await import(pathToFileURL(reader).href)
  rmSync(reader)
  return readdirSync(`${root}config`).flatMap((name) => {
    const file = `${root}config/${name}`
    try {
      const { value } = readSource(file)
      const asRead = JSON.parse(JSON.stringify(value))
      return isDeepStrictEqual(asRead, value) ? [[nameOf(readFileSync(file, 'utf8')), value]] : []
    } catch {
      // The start will say what is wrong with it, and in which line.
      return []
    }
  })
}

/** Puts what has been read of config/ in the place of the module that holds nothing. */
const withConfig = (entries) => ({
  name: 'config',
  setup: ({ onLoad }) =>
    onLoad({ filter: /[\\/]config[\\/]readBefore\.ts$/ }, () => ({
      loader: 'js',
      contents: `export const readBefore = new Map(JSON.parse(${JSON.stringify(JSON.stringify(entries))}))`,
    })),
})
