import { describe, expect, it } from 'vitest'
import { nameOf, readSource } from '../../src/config/source.ts'
import { CONFIG, inCopy, textOf } from './folder.ts'

const FILE = `${CONFIG}/times.yaml`
const known = new Map([[nameOf(textOf('times.yaml')), { read: 'before' }]])

describe('a config file that has been read before', () => {
  it('is taken from what is known', () => {
    expect(readSource(FILE, known).value).toEqual({ read: 'before' })
  })

  it('still knows its lines', () => {
    const [key = ''] = Object.keys(readSource(FILE).value as object)
    const line = textOf('times.yaml')
      .split('\n')
      .findIndex((each) => each.startsWith(`${key}:`))
    expect(readSource(FILE, known).lineOf([key])).toBe(line + 1)
  })

  it('is read again once a letter of it has changed', () => {
    const text = `${textOf('times.yaml')}# later\n`
    const value = inCopy({ 'times.yaml': text }, (folder) => readSource(`${folder}/times.yaml`, known).value)
    expect(value).toEqual(readSource(FILE).value)
  })
})
