import { spawn } from 'node:child_process'
import {
  chmodSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest'
import { ROOT } from './room.ts'

// The first start makes a bundle, which a busy machine may keep waiting.
vi.setConfig({ testTimeout: 120_000 })

/** A copy of the project, so that there may be an `.env` in it. */
let copy: string
beforeAll(() => {
  copy = mkdtempSync(join(tmpdir(), 'battenbot-run-'))
  for (const name of ['src', 'commands', 'config', 'package.json', 'package-lock.json'])
    cpSync(`${ROOT}${name}`, join(copy, name), { recursive: true })
  symlinkSync(`${ROOT}node_modules`, join(copy, 'node_modules'))
})
afterAll(() => rmSync(copy, { recursive: true, force: true }))
afterEach(() => rmSync(join(copy, '.env'), { recursive: true, force: true }))

const keep = (text: string, mode = 0o600) => {
  writeFileSync(join(copy, '.env'), text)
  chmodSync(join(copy, '.env'), mode)
}

/** Starts what an npm script starts, in the folder that npm would. */
function run(
  script: string,
  env: Record<string, string> = {},
): Promise<{ code: number | null; out: string; problem: string }> {
  const { scripts } = JSON.parse(readFileSync(join(copy, 'package.json'), 'utf8')) as {
    scripts: Record<string, string>
  }
  const [, ...words] = (scripts[script] ?? '').split(' ')
  return new Promise((resolve) => {
    const child = spawn(process.execPath, words, {
      cwd: copy,
      env: { PATH: process.env.PATH, BATTENBOT_DATA: join(copy, 'data'), ...env },
    })
    const heard = { out: '', problem: '' }
    child.stdout.on('data', (text) => (heard.out += text))
    child.stderr.on('data', (text) => (heard.problem += text))
    child.on('close', (code) => resolve({ code, ...heard }))
    child.stdin.end()
  })
}

const commandIn = ({ out }: { out: string }): unknown =>
  (JSON.parse(out) as { features: { slash_commands: { command: string }[] } }).features.slash_commands[0]
    ?.command

describe('the secrets in .env', () => {
  it('are in the environment of what npm starts, which goes before them', async () => {
    expect(commandIn(await run('manifest'))).toBe('/batten')
    keep('# of the club\nBATTENBOT_SLACK_COMMAND=/planks\n')
    const kept = await run('manifest')
    expect([commandIn(kept), kept.problem]).toEqual(['/planks', ''])
    expect(commandIn(await run('manifest', { BATTENBOT_SLACK_COMMAND: '/boards' }))).toBe('/boards')
  })

  it('reach a start and a registration, and are in no message', async () => {
    keep('BATTENBOT_SLACK_APP_TOKEN=xapp-hush\nBATTENBOT_SLACK_BOT_TOKEN=hush\nBATTENBOT_DISCORD_SERVER=12\n')
    for (const script of ['start', 'register']) {
      const { code, problem } = await run(script)
      expect(code).toBe(2)
      expect(problem).toMatch(/^battenbot cannot start:\n.*BATTENBOT_DISCORD_TOKEN/u)
      expect(problem).not.toContain('hush')
    }
  })

  it.skipIf(process.platform === 'win32')('that others may read are said to be so', async () => {
    keep('BATTENBOT_SLACK_COMMAND=/planks\n', 0o640)
    const { code, problem } = await run('manifest')
    expect(code).toBe(0)
    expect(problem).toMatch(/^others on this machine may read the secrets in \S+\.env; .*chmod 600 \.env\n$/u)
  })

  it('that cannot be read stop the start in a sentence', async () => {
    mkdirSync(join(copy, '.env'))
    const { code, problem } = await run('manifest')
    expect(code).toBe(2)
    expect(problem).toMatch(/^battenbot cannot start:\n\S+\.env cannot be read \(\w+\); .*\n$/u)
  })

  it('are never taken along with the sources', () => {
    expect(readFileSync(`${ROOT}.gitignore`, 'utf8').split('\n')).toContain('.env')
  })
})
