// Which bundles there are, and who runs from them: a process reads parts of its bundle long after its start, so one goes only
// when nobody does.
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'

const DAY = 24 * 60 * 60 * 1000

/** In the folder of a bundle: a file for every process that runs from it, by its id. */
const RUNNING = 'running'

/** Whether the whole bundle lies in `folder`; if so, this process counts as running from it until it ends. */
export function isBundled(folder) {
  const mark = `${folder}${RUNNING}/${process.pid}`
  try {
    writeFileSync(mark, '')
    process.on('exit', () => rmSync(mark, { force: true }))
    return true
  } catch (error) {
    if (error.code === 'ENOENT') return false
    // It cannot be written to, so nobody takes it away either.
    return existsSync(`${folder}src/main.js`)
  }
}

/**
 * Puts the bundle that was made in `made` where it belongs, in one step: nobody ever finds half of it. Where another process
 * was faster, its bundle of the same sources stays, and this one goes.
 */
export function putInPlace(made, folder) {
  mkdirSync(`${made}/${RUNNING}`)
  try {
    renameSync(made, folder)
  } catch (error) {
    rmSync(made, { recursive: true, force: true })
    if (!existsSync(`${folder}src/main.js`)) throw error
  }
}

/** Deletes the bundles beside the one in `folder` that nobody has started from for a day, and nobody runs from. */
export function dropOldBundles(folder, now = Date.now()) {
  const all = dirname(folder)
  for (const name of readdirSync(all)) {
    const other = `${all}/${name}`
    if (`${other}/` === folder) continue
    try {
      if (!isUsed(other, now)) rmSync(other, { recursive: true, force: true })
    } catch {
      // Somebody else is at it; the next bundle is another occasion.
    }
  }
}

function isUsed(folder, now) {
  const marks = `${folder}/${RUNNING}`
  const isWhole = existsSync(marks)
  if (now - statSync(isWhole ? marks : folder).mtimeMs < DAY) return true
  return isWhole && readdirSync(marks).some((id) => isAlive(Number(id)))
}

function isAlive(id) {
  try {
    process.kill(id, 0)
    return true
  } catch (error) {
    return error.code === 'EPERM'
  }
}
