import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { channelOf, nameOf, visitorOf } from '../../../src/platforms/web/visitor.ts'

describe('a channel', () => {
  it.each([
    ['bench', 'bench'],
    [' #Quarry Lane ', 'quarry-lane'],
    ['Schnitzfl\u00e4che-2', 'schnitzfl\u00e4che-2'],
    ['Schnitzfla\u0308che-2', 'schnitzfl\u00e4che-2'],
    ['x'.repeat(32), 'x'.repeat(32)],
    ['x'.repeat(33), undefined],
    ['', undefined],
    ['../etc', undefined],
    ['a/b', undefined],
    ['<b>', undefined],
    ['-x', undefined],
  ])('%j is %j', (typed, channel) => {
    expect(channelOf(typed)).toBe(channel)
  })

  it('stays as it is once it is one', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (typed) => {
        const channel = channelOf(typed)
        if (channel !== undefined) expect(channelOf(channel)).toBe(channel)
      }),
    )
  })
})

describe('a name', () => {
  it.each([
    ['Ann', 'Ann'],
    [' @Ann  B ', 'Ann-B'],
    ['\u202eeva\u202c', 'eva'],
    ['<script>', '<script>'],
    ['a\u0000b\nc', 'a-b-c'],
    ['\u200b', undefined],
    ['x'.repeat(41), undefined],
  ])('%j is %j', (typed, name) => {
    expect(nameOf(typed)).toBe(name)
  })
})

describe('a visitor', () => {
  const said = { name: 'Ann', channel: 'bench' }

  it('owns what this name asks in this browser', () => {
    const owner = visitorOf(said, 'one', undefined)?.owner
    expect(owner).toMatch(/^[\w-]{43}$/u)
    expect(visitorOf({ ...said, channel: 'shed' }, 'one', 'de')?.owner).toBe(owner)
    expect(visitorOf(said, 'two', undefined)?.owner).not.toBe(owner)
    expect(visitorOf({ ...said, name: 'Ben' }, 'one', undefined)?.owner).not.toBe(owner)
  })

  it('has the first language that the browser asks for', () => {
    expect(visitorOf(said, 'one', 'en-GB,en;q=0.9')?.locale).toBe('en-GB')
    expect(visitorOf(said, 'one', '*')?.locale).toBeUndefined()
    expect(visitorOf(said, 'one', undefined)?.locale).toBeUndefined()
  })

  it('needs both a name and a channel', () => {
    expect(visitorOf({ name: 'Ann' }, 'one', undefined)).toBeUndefined()
    expect(visitorOf({ channel: 'bench' }, 'one', undefined)).toBeUndefined()
  })
})
