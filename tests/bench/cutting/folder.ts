import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import type { Entry, Instance } from './instance.ts'
import { readEntry } from './instance.ts'

function listFiles(folder: string): string[] {
  return readdirSync(folder)
    .toSorted()
    .map((name) => join(folder, name))
    .flatMap((path) =>
      statSync(path).isDirectory() ? listFiles(path) : path.endsWith('.json') ? [path] : [],
    )
}

function readFile(path: string): Entry[] {
  const content: unknown = JSON.parse(readFileSync(path, 'utf8'))
  const entries = Array.isArray(content) ? content : (content as { examples?: unknown }).examples
  return Array.isArray(entries) ? (entries as Entry[]) : []
}

/** Every instance in the JSON files of a folder and its folders: an array a file, or `{ examples: [...] }`. */
export const readFolder = (folder: string): Instance[] =>
  listFiles(folder).flatMap(readFile).flatMap(readEntry)
