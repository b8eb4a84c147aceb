import { mkdtempSync, readdirSync, renameSync, rmSync } from 'node:fs'
import { build } from 'esbuild'

/** Packages with parts that are not JavaScript, or that start threads of their own: used from where they are installed. */
const APART = ['@resvg/resvg-js', 'better-sqlite3', 'highs', 'pino', 'tinypool']

/**
 * Bundles main, both workers and every command of `root` into `folder`, which changes in one step: another process
 * that starts at the same moment finds the whole of the old bundle or the whole of the new one.
 */
export async function bundleSources(root, folder) {
  const made = mkdtempSync(`${root}.bundle-`)
  try {
    await bundleInto(root, made)
    rmSync(folder, { recursive: true, force: true })
    renameSync(made, folder)
  } catch (error) {
    rmSync(made, { recursive: true, force: true })
    // Somebody else has just put the same bundle there.
    if (!['ENOTEMPTY', 'EEXIST'].includes(error.code)) throw error
  }
}

async function bundleInto(root, folder) {
  const commands = readdirSync(`${root}commands`).map((file) => `commands/${file}`)
  await build({
    absWorkingDir: root,
    entryPoints: ['src/main.ts', 'src/search/worker.ts', 'src/painting/worker.ts', ...commands],
    outdir: folder,
    outbase: '.',
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    external: APART,
    sourcemap: 'linked',
    // What is bundled of older packages still asks for `require`.
    banner: {
      js: "import { createRequire as bundledRequire } from 'node:module'; const require = bundledRequire(import.meta.url)",
    },
    logLevel: 'warning',
  })
}
