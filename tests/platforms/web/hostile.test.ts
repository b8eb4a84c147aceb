import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { enter, hasBrowser, inBrowser, openBrowser, PATIENT, type Person } from './browser.ts'
import { type OpenWebRoom, openWebRoom } from './webRoom.ts'

const HOSTILE = [
  '<script>window.hit = 1</script>',
  '<img src=x onerror="window.hit=1">',
  '"><svg onload=window.hit=1>',
  "javascript:window.hit=1//'",
  '{{window.hit=1}}',
  '\u202e<b>gnp.exe\u202c',
] as const

let room: OpenWebRoom
let browser: Browser
let typist: Person

describe.skipIf(!hasBrowser)(inBrowser('hostile text on the page'), { timeout: 90_000 }, () => {
  beforeAll(async () => {
    room = await openWebRoom({
      slots: (line) => {
        if (!line.startsWith('help')) return undefined
        const [text] = HOSTILE
        const image = HOSTILE[1]
        return {
          answer: text + image,
          cautions: [{ id: 'x', text: image, task: 'use' }],
          tables: [{ title: image, columns: [image, text], rows: [[image, text]] }],
          notes: [image, text],
          pictures: [{ name: image, alt: image, scene: { width: 1, height: 1, shapes: [] } }],
          files: [{ name: `../${image}.html`, type: 'text/html', content: text }],
          buttons: [{ label: image, line: text }],
          audience: 'channel' as const,
        }
      },
    })
    browser = await openBrowser()
    typist = await enter(browser, room.url, 'Ann', 'lines')
  }, PATIENT.timeout * 4)
  afterAll(async () => {
    await browser.close()
    await room.close()
  })

  it.each(HOSTILE)('stays text in a line: %s', async (line) => {
    const { page, say, complaints } = typist
    await say(line)
    expect(await page.locator('.entry').last().locator('.asked').textContent()).toBe(line)
    expect(await page.evaluate('window.hit')).toBeUndefined()
    expect(complaints).toEqual([])
  })

  it('stays text in a name, for everybody who sees it', async () => {
    const image = HOSTILE[1].replaceAll(' ', '-')
    const ann = await enter(browser, room.url, HOSTILE[1], 'names')
    const ben = await enter(browser, room.url, 'Ben', 'names')
    await ann.say('help')
    await ben.page.locator('.entry').waitFor()
    for (const { page, complaints } of [ann, ben]) {
      expect(await page.locator('.entry .name').textContent()).toBe(image)
      expect(await page.evaluate('window.hit')).toBeUndefined()
      expect(complaints).toEqual([])
    }
  })

  it('stays text in every part of a reply', async () => {
    const { page, say, complaints } = await enter(browser, room.url, 'Ann', 'replies')
    await say('help')
    const entry = page.locator('.entry')
    expect(await entry.locator('h3').textContent()).toBe(HOSTILE[0] + HOSTILE[1])
    expect(await entry.locator('.cautions li').textContent()).toBe(HOSTILE[1])
    expect(await entry.locator('td').textContent()).toBe(HOSTILE[0])
    // One picture, which is the reply's own; no text became an element.
    expect(await entry.locator('img').count()).toBe(1)
    expect(await entry.locator('script, svg, iframe').count()).toBe(0)
    expect(await entry.locator('.files a').getAttribute('href')).toMatch(
      /^\/kept\/[0-9a-f]{64}\/\.\.%2F%3Cimg[^/]*$/u,
    )
    expect(await page.evaluate('window.hit')).toBeUndefined()
    expect(complaints).toEqual([])
  })

  it('cannot come in by the address', async () => {
    const { page } = await enter(browser, room.url, 'Ann', 'lines')
    await page.goto(`${room.url}/?channel=${encodeURIComponent(HOSTILE[1])}`)
    await page.getByRole('dialog').waitFor()
    expect(await page.evaluate('window.hit')).toBeUndefined()
  })
})
