import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { escapeText, typedText } from '../../../src/platforms/slack/escape.ts'

describe('text for Slack', () => {
  it('escapes three characters and no others (docs.slack.dev, Formatting message text, "Escaping text")', () => {
    expect(escapeText('<!channel> & "5\'" <@U1>')).toBe('&lt;!channel&gt; &amp; "5\'" &lt;@U1&gt;')
  })

  it('comes back as it was typed', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        const plain = text.replaceAll('\u00a0', ' ').trim()
        fc.pre(!/^`|```/u.test(plain))
        expect(typedText(escapeText(plain))).toBe(plain)
      }),
    )
  })

  it('keeps a code block as it is', () => {
    expect(escapeText('a ``` b < c')).toBe("a ''' b &lt; c")
  })
})

describe('text from Slack', () => {
  it.each([
    ['organisers add <@U012AB3CD|ann>', 'organisers add <@U012AB3CD>'],
    ['strips\u00a02x6', 'strips 2x6'],
    ['`strips 2x6`', 'strips 2x6'],
    ['```cutlist add\n2 a 3 x 4```', 'cutlist add\n2 a 3 x 4'],
    ['project start <tel:17134|17134>mm', 'project start 17134mm'],
    [
      'see <http://example.org|example.org> and <http://example.org>',
      'see example.org and http://example.org',
    ],
    ['a &lt; b &amp;&amp; c &gt; d', 'a < b && c > d'],
    ['<#C1|workshop> help', 'workshop help'],
    ['&amp;lt;', '&lt;'],
  ])('%s is read as %s', (delivered, typed) => {
    expect(typedText(delivered)).toBe(typed)
  })
})
