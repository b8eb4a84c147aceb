import { type ChildProcess, spawn } from 'node:child_process'
import {
  appendFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { ROOT } from './room.ts'

// Each start may make a bundle first, which a busy machine may keep waiting.
vi.setConfig({ testTimeout: 180_000, hookTimeout: 60_000 })

const DAY = 24 * 60 * 60 * 1000

/** A copy of the project, whose sources may be changed. */
let copy: string
beforeAll(() => {
  copy = mkdtempSync(join(tmpdir(), 'battenbot-launch-'))
  for (const name of ['src', 'commands', 'config', 'package.json', 'package-lock.json'])
    cpSync(`${ROOT}${name}`, join(copy, name), { recursive: true })
  symlinkSync(`${ROOT}node_modules`, join(copy, 'node_modules'))
})
afterAll(() => rmSync(copy, { recursive: true, force: true }))

const bundles = () => readdirSync(join(copy, '.build'))
const change = () => appendFileSync(join(copy, 'src', 'bot', 'line.ts'), '// changed\n')

interface Ended {
  readonly code: number | null
  readonly out: string
  readonly problem: string
}

function launch(words: readonly string[]): { child: ChildProcess; ended: Promise<Ended> } {
  const child = spawn(process.execPath, ['src/launch.mjs', ...words], {
    cwd: copy,
    env: { PATH: process.env.PATH, BATTENBOT_DATA: join(copy, 'data') },
  })
  const heard = { out: '', problem: '' }
  child.stdout.on('data', (text) => (heard.out += text))
  child.stderr.on('data', (text) => (heard.problem += text))
  const ended = new Promise<Ended>((resolve) => child.on('close', (code) => resolve({ code, ...heard })))
  return { child, ended }
}

const ANSWER = { code: 0, out: '1 in = 25.4 mm\n', problem: '' }
const ask = (): Promise<Ended> => launch(['ask', 'convert 1in']).ended

/** A room in the terminal that is open and waits for its next line. */
async function openRoom() {
  const { child, ended } = launch(['room', '--channel', 'shed'])
  await new Promise<void>((open) =>
    child.stdout?.on('data', (text) => String(text).includes('shed>') && open()),
  )
  return { say: (line: string) => child.stdin?.end(line), ended, pid: child.pid }
}

describe('a start', () => {
  it('finds a whole bundle, however many start at once on sources that have changed', async () => {
    expect(await ask()).toEqual(ANSWER)
    change()
    const all = await Promise.all(Array.from({ length: 4 }, ask))
    expect(all).toEqual(Array.from({ length: 4 }, () => ANSWER))
    expect(bundles()).toHaveLength(2)
  })

  it('takes nothing from those that run from the sources as they were', async () => {
    const room = await openRoom()
    const [old] = bundles().filter((name) => existsSync(join(copy, '.build', name, 'running', `${room.pid}`)))
    // As if it had been started long ago.
    const longAgo = new Date(Date.now() - 2 * DAY)
    for (const name of bundles()) utimesSync(join(copy, '.build', name, 'running'), longAgo, longAgo)
    change()
    expect(await ask()).toEqual(ANSWER)
    expect(bundles()).toHaveLength(2)
    expect(bundles()).toContain(old)
    room.say('draw 24in x 18in height=30in sheet=1/2 ply\n')
    const { code, problem } = await room.ended
    expect([code, problem]).toEqual([0, ''])
  })

  it('takes away what is left of a bundle that was never finished, a day later', async () => {
    const left = join(copy, '.build', 'new-left')
    mkdirSync(left)
    change()
    expect(await ask()).toEqual(ANSWER)
    expect(existsSync(left)).toBe(true)
    const longAgo = new Date(Date.now() - 2 * DAY)
    utimesSync(left, longAgo, longAgo)
    writeFileSync(join(copy, 'config', 'note.txt'), 'a file more')
    expect(await ask()).toEqual(ANSWER)
    expect(existsSync(left)).toBe(false)
  })

  it('sees that a file is gone', async () => {
    const before = bundles().length
    rmSync(join(copy, 'config', 'note.txt'))
    expect(await ask()).toEqual(ANSWER)
    // The same files as before the note: their bundle is still there.
    expect(bundles()).toHaveLength(before)
  })

  it.runIf(process.platform === 'linux')('leaves nothing running beside the bot', async () => {
    change()
    const room = await openRoom()
    expect(readFileSync(`/proc/${room.pid}/task/${room.pid}/children`, 'utf8')).toBe('')
    room.say('convert 1in\n')
    expect((await room.ended).code).toBe(0)
  })
})
