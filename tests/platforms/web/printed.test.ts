import { readFile } from 'node:fs/promises'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createPainter } from '../../../src/painting/painter.ts'
import { enter, hasBrowser, inBrowser, openBrowser, PATIENT } from './browser.ts'
import { type OpenWebRoom, openWebRoom } from './webRoom.ts'

let room: OpenWebRoom
let browser: Browser
const painter = createPainter({ threads: 1 })

describe.skipIf(!hasBrowser)(inBrowser('a plan on a phone'), { timeout: 90_000 }, () => {
  beforeAll(async () => {
    room = await openWebRoom({ paint: painter.paint })
    browser = await openBrowser()
  }, PATIENT.timeout * 4)
  afterAll(async () => {
    await browser.close()
    await room.close()
    await painter.close()
  })

  it('is seen as it is painted, and taken along as a PDF', async () => {
    const { page, say, complaints } = await enter(browser, room.url, 'Ann', 'club')
    await say('project start 29in x 18in height=15in')
    const picture = page.getByRole('img', { name: /^The box/u }).first()
    await picture.scrollIntoViewIfNeeded()
    await expect
      .poll(
        () => picture.evaluate((image) => (image as unknown as { naturalWidth: number }).naturalWidth),
        PATIENT,
      )
      .toBeGreaterThan(900)
    expect(await say('handout')).toMatch(/pages to print/u)
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: /handout-v1\.pdf/u }).click(),
    ])
    expect(download.suggestedFilename()).toBe('handout-v1.pdf')
    const printed = await readFile(await download.path())
    expect(printed.subarray(0, 5).toString('latin1')).toBe('%PDF-')
    expect(printed.length).toBeGreaterThan(20_000)
    expect(complaints).toEqual([])
  })
})
