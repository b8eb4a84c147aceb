import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { botFile } from '../../src/config/bot.ts'
import { readFiles } from '../../src/config/files.ts'
import { finishesFile } from '../../src/config/finishes.ts'
import { lumberFile } from '../../src/config/lumber.ts'
import { sheetsFile } from '../../src/config/sheets.ts'
import { ConfigError, readConfig } from '../../src/config.ts'

/** The project's own config folder. */
export const CONFIG = fileURLToPath(new URL('../../config', import.meta.url))

export const textOf = (file: string): string => readFileSync(join(CONFIG, file), 'utf8')

/** Does `work` in a copy of the config folder where `files` have other text; undefined leaves the file out. */
export function inCopy<Result>(
  files: Readonly<Record<string, string | undefined>>,
  work: (folder: string) => Result,
): Result {
  const folder = mkdtempSync(join(tmpdir(), 'battenbot-config-'))
  try {
    cpSync(CONFIG, folder, { recursive: true })
    for (const [file, text] of Object.entries(files))
      if (text === undefined) rmSync(join(folder, file))
      else writeFileSync(join(folder, file), text)
    return work(folder)
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** The lines of the ConfigError that a copy with `files` in it throws, the folder's name left out; none if it loads. */
export const problemsWith = (files: Readonly<Record<string, string | undefined>>): readonly string[] =>
  inCopy(files, (folder) => {
    try {
      readConfig(folder)
      return []
    } catch (error) {
      if (!(error instanceof ConfigError)) throw error
      return error.message.replaceAll(`${folder}/`, '').split('\n')
    }
  })

const SCHEMAS = { bot: botFile, lumber: lumberFile, sheets: sheetsFile, finishes: finishesFile }

/** The lines of the ConfigError that one file gives when `text` stands in it; none if it is read. */
export function problemsOf(name: keyof typeof SCHEMAS, text: string): readonly string[] {
  const folder = mkdtempSync(join(tmpdir(), 'battenbot-config-'))
  try {
    writeFileSync(join(folder, `${name}.yaml`), text)
    readFiles(folder, { [name]: SCHEMAS[name] })
    return []
  } catch (error) {
    if (!(error instanceof ConfigError)) throw error
    return error.message.replaceAll(`${folder}/`, '').split('\n')
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** `text` of a config file with `from`, which must stand in it once, replaced. */
export function edited(file: string, from: string | RegExp, to: string): string {
  const text = textOf(file)
  if (text.split(from).length !== 2) throw new Error(`${from} does not stand once in ${file}`)
  return text.replace(from, to)
}

/** The line of the first match of `wanted` in `text`, counted from 1. */
export const lineOf = (text: string, wanted: string | RegExp): number =>
  text.slice(0, text.search(wanted)).split('\n').length
