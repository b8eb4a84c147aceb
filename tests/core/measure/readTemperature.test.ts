import { describe, expect, it } from 'vitest'
import { readTemperature } from '../../../src/core/measure/readTemperature.ts'

describe('readTemperature', () => {
  it.each([
    ['10C', 10, 'metric'],
    ['50F', 10, 'inch'],
    ['68 °F', 20, 'inch'],
    ['20 degrees Celsius', 20, 'metric'],
    ['-5 c', -5, 'metric'],
    ['−5°C', -5, 'metric'],
    ['21,5C', 21.5, 'metric'],
    ['32 deg F', 0, 'inch'],
    ['-40F', -40, 'inch'],
  ])('%s is %d C', (text, celsius, units) => {
    const read = readTemperature(text, {})
    expect(read).toMatchObject({ status: 'read', units })
    expect(read.status === 'read' && read.celsius).toBeCloseTo(celsius, 9)
  })

  it('asks about a bare number, or goes by the units that were settled and says so', () => {
    expect(readTemperature('20', {})).toEqual({
      status: 'ambiguous',
      question: '"20" could be 20C or 20F; write 20C or 20F',
    })
    expect(readTemperature('20', { units: 'metric' })).toMatchObject({ celsius: 20, note: '20 read as 20 C' })
    expect(readTemperature('50', { units: 'inch' })).toMatchObject({ celsius: 10, note: '50 read as 50 F' })
  })

  it.each(['warm', '200F', '90C', '-41C', '20K', '20 in', '1e3C', '20C 30C', '', 'C', '９'.repeat(300)])(
    'refuses %s',
    (text) => {
      expect(readTemperature(text, {}).status).toBe('invalid')
    },
  )
})
