import { beforeAll, describe, expect, it } from 'vitest'
import { type Catalogue, loadCatalogue } from '../../src/bot/catalogue.ts'
import { unknownCommand } from '../../src/bot/unknownCommand.ts'

describe('a line that begins with no command', () => {
  let catalogue: Catalogue
  beforeAll(async () => {
    catalogue = await loadCatalogue(new URL('../../commands', import.meta.url).pathname)
  })
  const told = (line: string): string => unknownCommand(line.split(' ')[0] ?? '', line, catalogue).message

  it.each([
    ['what size box for a 14 inch pot', 'sizing'],
    ['how do I cut strips', 'strips'],
    ['how much glue do I need for 4 sq ft', 'glue'],
    ['how many sheets do I need', 'layout'],
    ['will the corner slide after paint', 'fit'],
    ['is my frame square', 'square'],
    ['how heavy is a wet planter', 'weight'],
    ['what do I have to buy', 'shopping'],
    ['which screws for 3/4 ply', 'fasteners'],
    ['can I undo that', 'project'],
    ['what is the brace angle', 'diagonal'],
  ])('%s: an example of %s', (line, command) => {
    expect(told(line)).toContain(`; for that write, such as: ${catalogue.get(command)?.examples[0]}`)
  })

  it('names two where the words are as much about both, and never more', () => {
    expect(told('how many sheets do I need').split('; or: ')).toHaveLength(2)
  })

  it('a verb alone: the commands that have it', () => {
    expect(told('price')).toBe(
      'there is no command "price"; "help" lists them all. Did you mean shopping price?',
    )
    expect(told('undo').match(/\w+ undo/gu)).toHaveLength(3)
  })

  it.each(['hi', 'thanks a lot', 'to be or not to be'])('%s: is about nothing here', (line) => {
    expect(told(line)).toMatch(/; "help" lists them all\.$/u)
  })
})
