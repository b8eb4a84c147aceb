import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { codeBlock, escapeText } from '../../../src/platforms/discord/markdown.ts'

describe('text as it stands', () => {
  it.each([
    ['2x6 *wide* and __long__', '2x6 \\*wide\\* and \\_\\_long\\_\\_'],
    ['# 8 screws', '\\# 8 screws'],
    ['#8 x 2 in screws', '#8 x 2 in screws'],
    ['-# small print', '\\-# small print'],
    ['- a list', '\\- a list'],
    ['1/2 in - 3/4 in', '1/2 in - 3/4 in'],
    ['12. of them', '12\\. of them'],
    ['> a quote', '\\> a quote'],
    ['<@140> <#130> <t:1> </strips:1>', '\\<@140\\> \\<#130\\> \\<t:1\\> \\</strips:1\\>'],
    ['[free](https://example.com)', '\\[free\\](https://example.com)'],
    ['||hidden||', '\\|\\|hidden\\|\\|'],
    ['a\\*b', 'a\\\\\\*b'],
    ['@everyone and @here, and @ann', '@\u200beveryone and @\u200bhere, and @ann'],
    ['`code`', '\\`code\\`'],
    ['a\n# b', 'a\n\\# b'],
    ['23 7/8 in (-0.021) = 606.4 mm', '23 7/8 in (-0.021) = 606.4 mm'],
  ])('%j', (text, escaped) => {
    expect(escapeText(text)).toBe(escaped)
  })

  it('has no mark left that is not behind a backslash', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'*_~`|<>[]\\#-+ 1.\na@') }), (text) => {
        const bare = escapeText(text).replace(/\\[^A-Za-z0-9\s]/gu, 'x')
        expect(bare).not.toMatch(/[*_~`|<>[\]\\]|^\s*(?:#{1,3}|-#|[-+]|\d+\.)\s/mu)
      }),
    )
  })
})

describe('a code block', () => {
  it('begins under its fence and cannot be broken out of', () => {
    expect(codeBlock(['a  b', 'c  d'])).toBe('```\na  b\nc  d\n```')
    expect(codeBlock(['``` @everyone'])).toBe("```\n''' @everyone\n```")
  })
})
