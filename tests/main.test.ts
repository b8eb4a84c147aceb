import { spawn } from 'node:child_process'
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it, vi } from 'vitest'
import { ROOT } from './room.ts'

// Each start is a process of its own, which a busy machine may keep waiting.
vi.setConfig({ testTimeout: 120_000 })

const folder = mkdtempSync(join(tmpdir(), 'battenbot-main-'))
afterAll(() => rmSync(folder, { recursive: true }))

interface Ended {
  readonly code: number | null
  readonly out: string
  readonly problem: string
}

/** Starts the bot as a person would, with a data folder of its own, and waits for its end. */
function start(
  words: readonly string[],
  { input = '', env = {} }: { input?: string; env?: Record<string, string> } = {},
): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['src/launch.mjs', ...words], {
      cwd: ROOT,
      env: { PATH: process.env.PATH, BATTENBOT_DATA: join(folder, 'data'), ...env },
    })
    const heard = { out: '', problem: '' }
    child.stdout.on('data', (text) => (heard.out += text))
    child.stderr.on('data', (text) => (heard.problem += text))
    child.on('error', reject).on('close', (code) => resolve({ code, ...heard }))
    child.stdin.on('error', () => undefined).end(input)
  })
}

describe('ask', () => {
  it('answers one line', async () => {
    const { code, out, problem } = await start(['ask', 'strips 2x6 rip=1/2in'])
    expect([code, problem]).toEqual([0, ''])
    expect(out).toMatch(/^9 strips of 1\/2 in from each 2x6\b/u)
  })

  it('takes a line that the shell has split', async () => {
    const { code, out } = await start(['ask', '--json', 'strips', '2x6', 'rip=1/2in'])
    expect(code).toBe(0)
    expect(JSON.parse(out)).toMatchObject({ ok: true, figures: { perBoard: 9 } })
  })

  it('reads lines and answers each with one object that says for itself whether it is an answer', async () => {
    const { code, out, problem } = await start(['ask', '--json'], { input: 'units\n\nstripes\nconvert 1in' })
    expect([code, problem]).toEqual([0, ''])
    const answers = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as { ok: boolean })
    expect(answers.map(({ ok }) => ok)).toEqual([true, false, false, true])
  })

  it('searches in a thread of its own', async () => {
    const { code, out } = await start(['ask', '--json', '--data', join(folder, 'cuts')], {
      input: 'cutlist add 4x 24in x 12in ply\nlayout\n',
    })
    expect(code).toBe(0)
    expect(JSON.parse(out.trimEnd().split('\n')[1] ?? '')).toMatchObject({ ok: true, figures: { sheets: 1 } })
  })

  it('keeps a channel’s project and a person’s units in the folder it is given', async () => {
    const data = join(folder, 'given')
    const there = ['ask', '--json', '--data', data]
    await start([...there, '--channel', 'shed', '--user', 'maria'], {
      input: 'project start 17in x 13in height=15in\nunits metric\n',
    })
    expect(existsSync(join(data, 'battenbot.sqlite'))).toBe(true)
    const [asked, elsewhere] = await Promise.all([
      start([...there, '--channel', 'shed', '--user', 'maria', 'project']),
      start([...there, '--channel', 'yard', 'project']),
    ])
    expect([asked.code, elsewhere.code]).toEqual([0, 1])
    expect((JSON.parse(asked.out) as { answer: string }).answer).toMatch(/ mm/u)
    expect(elsewhere.out).toContain('no project yet')
  })
})

describe('the room', () => {
  it('opens when nothing else is said, and closes at the end of the input', async () => {
    const { code, out, problem } = await start(['--channel', 'shed'], { input: 'strips 2x6 rip=1/2in\n' })
    expect([code, problem]).toEqual([0, ''])
    expect(out).toContain('shed> ')
    expect(out).toContain('9 strips of 1/2 in from each 2x6')
  })
})

describe('a start that is refused', () => {
  it.each([
    [['ask', '--colour', 'red'], /'--colour'/u],
    [['bake', 'a cake'], /^there is no "bake a cake" to start; write room, or ask and a question\n/u],
  ])('%j says how to start', async (words, problem) => {
    const ended = await start(words)
    expect(ended).toMatchObject({ code: 2, out: '' })
    expect(ended.problem).toMatch(problem)
    expect(ended.problem).toContain('usage: npm start\n')
    expect(ended.problem).not.toMatch(/\n\s+at /u)
  })

  it('names file, line, key and what was expected of a broken config', async () => {
    const broken = join(folder, 'config')
    cpSync(`${ROOT}config`, broken, { recursive: true })
    writeFileSync(
      join(broken, 'bot.yaml'),
      readFileSync(join(broken, 'bot.yaml'), 'utf8').replace(/^tape: .*$/mu, 'tape: wide'),
    )
    const { code, out, problem } = await start(['ask', 'units'], { env: { BATTENBOT_CONFIG: broken } })
    expect([code, out]).toEqual([2, ''])
    expect(problem).toMatch(
      /^battenbot cannot start:\n\S*bot\.yaml line \d+: tape: expected 1\/16in, 1\/32in or 1\/64in, read "wide"\n$/u,
    )
  })

  it.each([
    [{ BATTENBOT_CONFIG: '/nowhere/at/all' }, /bot\.yaml: there is no such file/u],
    [
      { BATTENBOT_DATA: '/dev/null/data' },
      /the store "\/dev\/null\/data\/battenbot\.sqlite" cannot be opened: /u,
    ],
  ])('%j is told in a sentence', async (env, problem) => {
    const ended = await start(['ask', 'units'], { env })
    expect(ended).toMatchObject({ code: 2, out: '' })
    expect(ended.problem).toMatch(problem)
    expect(ended.problem).not.toMatch(/\n\s+at |usage:/u)
  })
})
