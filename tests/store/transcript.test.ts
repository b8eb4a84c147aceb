import { appendFile, mkdtemp, readdir, readFile, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { StoreError } from '../../src/store/storeError.ts'
import { openTranscript } from '../../src/store/transcript.ts'

const all = () => true
let folder: string
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'transcript-'))
})
const file = () => join(folder, 'transcript.jsonl')

describe('a transcript', () => {
  it('gives back what was said, the newest last, by channel', async () => {
    const transcript = await openTranscript(folder)
    await transcript.append('bench', { id: 'a', line: 'one' } as { id: string })
    await transcript.append('shed', { id: 'b' })
    await transcript.append('bench', { id: 'c' })
    expect(await transcript.recent('bench', 5, all)).toEqual([{ id: 'a', line: 'one' }, { id: 'c' }])
    expect(await transcript.recent('bench', 1, all)).toEqual([{ id: 'c' }])
    expect(await transcript.recent('bench', 1, (entry) => (entry as { id: string }).id === 'a')).toHaveLength(
      1,
    )
    expect(await transcript.recent('yard', 5, all)).toEqual([])
    expect(await transcript.channels()).toEqual(['bench', 'shed'])
  })

  it('is still there when it is opened again', async () => {
    const first = await openTranscript(folder)
    await Promise.all(['a', 'b', 'c'].map((id) => first.append('bench', { id })))
    const name = await first.keepContent(Buffer.from('picture'))
    const again = await openTranscript(folder)
    expect(await again.recent('bench', 5, all)).toEqual([{ id: 'a' }, { id: 'b' }, { id: 'c' }])
    expect(Buffer.from((await again.readContent(name)) ?? []).toString()).toBe('picture')
  })

  it('puts an entry in place of the one with its id, at the end', async () => {
    const transcript = await openTranscript(folder)
    for (const id of ['a', 'b']) await transcript.append('bench', { id })
    await transcript.append('bench', { id: 'a', shared: true } as { id: string })
    const expected = [{ id: 'b' }, { id: 'a', shared: true }]
    expect(await transcript.recent('bench', 5, all)).toEqual(expected)
    expect(await (await openTranscript(folder)).recent('bench', 5, all)).toEqual(expected)
  })

  it('passes over a line that was cut off, and goes on after it', async () => {
    await (await openTranscript(folder)).append('bench', { id: 'a' })
    await appendFile(file(), '{"channel":"bench","ent')
    const again = await openTranscript(folder)
    await again.append('bench', { id: 'b' })
    expect(await (await openTranscript(folder)).recent('bench', 5, all)).toEqual([{ id: 'a' }, { id: 'b' }])
  })

  it('passes over lines that are no entries', async () => {
    await writeFile(file(), 'null\n7\n{"channel":3,"entry":{"id":"x"}}\n{"channel":"c","entry":{"id":"y"}}\n')
    expect(await (await openTranscript(folder)).channels()).toEqual(['c'])
  })

  it('keeps the newest thousand of a channel', async () => {
    const lines = Array.from({ length: 1005 }, (_, id) =>
      JSON.stringify({ channel: 'bench', entry: { id: `${id}` } }),
    )
    await writeFile(file(), `${lines.join('\n')}\n`)
    const transcript = await openTranscript(folder)
    const kept = await transcript.recent('bench', 5000, all)
    expect(kept).toHaveLength(1000)
    expect(kept[0]).toEqual({ id: '5' })
  })

  it('finds every entry where it lies, whatever was said, deleted and added between', async () => {
    const transcript = await openTranscript(folder)
    const said = (id: string, line: string) => ({ id, line }) as { id: string }
    const words = ['½ in', 'Bär', '板', 'plain', '🪵🪵'].map((line, number) => said(`${number}`, line))
    await Promise.all(words.map((entry, number) => transcript.append(number % 2 ? 'shed' : 'bench', entry)))
    expect(await transcript.recent('bench', 5, all)).toEqual([words[0], words[2], words[4]])
    await transcript.forget('bench', (entry) => (entry as { id: string }).id === '2')
    const added = said('5', '¾ in')
    const [, read] = await Promise.all([transcript.append('bench', added), transcript.recent('shed', 5, all)])
    expect(read).toEqual([words[1], words[3]])
    for (const each of [transcript, await openTranscript(folder)])
      expect(await each.recent('bench', 5, all)).toEqual([words[0], words[4], added])
  })

  it('deletes for good, with the content that nothing else names', async () => {
    const transcript = await openTranscript(folder)
    const [own, both] = await Promise.all(
      ['own', 'both'].map((text) => transcript.keepContent(Buffer.from(text))),
    )
    await transcript.append('bench', { id: 'a', secret: 'x', contents: [own, both] } as { id: string })
    await transcript.append('bench', { id: 'b', contents: [both] } as { id: string })
    expect(await transcript.forget('bench', (entry) => (entry as { id: string }).id === 'a')).toBe(1)
    expect(await transcript.forget('bench', () => false)).toBe(0)
    expect(await readFile(file(), 'utf8')).not.toContain('secret')
    expect(await readdir(join(folder, 'contents'))).toEqual([both])
    expect(await transcript.readContent(own ?? '')).toBeUndefined()
  })

  it('writes itself anew when most of it is out of date', async () => {
    const transcript = await openTranscript(folder)
    for (const turn of [1, 2, 3]) await transcript.append('bench', { id: 'a', turn } as { id: string })
    const stray = await transcript.keepContent(Buffer.from('stray'))
    const again = await openTranscript(folder)
    expect((await readFile(file(), 'utf8')).trim().split('\n')).toHaveLength(1)
    expect(await again.recent('bench', 5, all)).toEqual([{ id: 'a', turn: 3 }])
    expect(await again.readContent(stray)).toBeUndefined()
  })

  it('reads only names of contents', async () => {
    const transcript = await openTranscript(folder)
    expect(await transcript.readContent('../transcript.jsonl')).toBeUndefined()
    expect(await transcript.readContent('0'.repeat(64))).toBeUndefined()
  })

  it('says what it cannot write', async () => {
    await writeFile(join(folder, 'taken'), '')
    await expect(openTranscript(join(folder, 'taken', 'room'))).rejects.toThrow(StoreError)
  })
})
