import { readFile } from 'node:fs/promises'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { enter, hasBrowser, inBrowser, openBrowser, PATIENT } from './browser.ts'
import { type OpenWebRoom, openWebRoom } from './webRoom.ts'

let room: OpenWebRoom
let browser: Browser

describe.skipIf(!hasBrowser)(inBrowser('two people with a page each, on phones'), { timeout: 90_000 }, () => {
  beforeAll(async () => {
    room = await openWebRoom({
      slots: (line) =>
        /^project (?:start|parts)/u.test(line)
          ? {
              pictures: [
                { name: 'front', alt: 'The front, 30 in wide', scene: { width: 30, height: 15, shapes: [] } },
              ],
              files: [{ name: 'parts.csv', type: 'text/csv', content: 'part,long\nA,19 15/16\n' }],
            }
          : undefined,
    })
    browser = await openBrowser()
  }, PATIENT.timeout * 4)
  afterAll(async () => {
    await browser.close()
    await room.close()
  })

  it('start a plan, change it, undo it, see its picture and get its file', async () => {
    const { page, say, complaints } = await enter(browser, room.url, 'Ann', 'club')
    expect(await say('project start 29in x 18in height=15in')).toMatch(
      /^Kept for this channel\. Cut 2 end panels/u,
    )
    const picture = page.getByRole('img', { name: 'The front, 30 in wide' }).first()
    await picture.scrollIntoViewIfNeeded()
    await expect
      .poll(
        () => picture.evaluate((image) => (image as unknown as { naturalWidth: number }).naturalWidth),
        PATIENT,
      )
      .toBe(1)
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: /parts\.csv/u }).click(),
    ])
    expect(download.suggestedFilename()).toBe('parts.csv')
    expect(await readFile(await download.path(), 'utf8')).toBe('part,long\nA,19 15/16\n')

    expect(await say('project change height=16in')).toContain('height now 16 in')
    await page.getByRole('button', { name: 'Plan', exact: true }).click()
    await page.locator('#plan-card h3').filter({ hasText: '30 x 16 in' }).waitFor()
    await page.getByRole('button', { name: 'Answers' }).click()
    await page.locator('.entry').last().getByRole('button', { name: 'Undo' }).click()
    await page
      .locator('.entry h3')
      .filter({ hasText: 'Undone: "project change height=16in" by Ann' })
      .waitFor()
    // The focus went to the answer, so that it is read and a keyboard goes on from there.
    expect(await page.evaluate('document.activeElement.textContent')).toContain('Undone:')
    await page.getByRole('button', { name: 'Plan', exact: true }).click()
    await page.locator('#plan-card h3').filter({ hasText: '30 x 15 in' }).waitFor()
    expect(complaints).toEqual([])
  })

  it('see what is shown to all as it comes, and the plan as it changes', async () => {
    const ann = await enter(browser, room.url, 'Ann', 'both')
    const ben = await enter(browser, room.url, 'Ben', 'both')
    await ann.say('project start 17in x 13in height=15in')
    // The plan is everybody's; what was asked is Ann's until she shows it.
    await ben.page.getByRole('button', { name: 'Plan', exact: true }).click()
    await ben.page.locator('#plan-card h3').filter({ hasText: 'Cut 2 end panels' }).waitFor()
    await ben.page.getByRole('button', { name: 'Answers' }).click()
    expect(await ben.page.locator('.entry').count()).toBe(0)
    await ann.page.getByRole('button', { name: 'Show to all' }).click()
    await ann.page.getByText('Everybody here sees this').waitFor()
    await ben.page.locator('.entry h3').filter({ hasText: 'Kept for this channel' }).waitFor()
    expect(await ben.page.locator('.entry .name').textContent()).toBe('Ann')
    expect(await ben.page.locator('#said').textContent()).toMatch(/^Ann shows: Kept for this channel/u)
    expect(await ben.page.getByRole('button', { name: 'Show to all' }).count()).toBe(0)

    await ben.say('project change height=20in')
    await ann.page.getByRole('button', { name: 'Plan', exact: true }).click()
    await ann.page.locator('#plan-card h3').filter({ hasText: 'x 20 in' }).waitFor()
    expect([...ann.complaints, ...ben.complaints]).toEqual([])
  })

  it('find what was said after a reload', async () => {
    const { page, say } = await enter(browser, room.url, 'Ann', 'again')
    await say('strips 2x6 rip=1/2in')
    await say('stripes')
    await page.reload()
    await page.locator('.entry').nth(1).waitFor()
    expect(await page.locator('.entry .line code').allInnerTexts()).toEqual([
      'strips 2x6 rip=1/2in',
      'stripes',
    ])
    expect(await page.locator('.refusal').textContent()).toContain('Did you mean strips?')
    expect(await page.locator('#door').isVisible()).toBe(false)
  })

  it('go to another channel and back', async () => {
    const { page, say } = await enter(browser, room.url, 'Ann', 'east')
    await say('units')
    await page.getByRole('button', { name: /^Channel and name/u }).click()
    await page.getByRole('textbox', { name: 'Channel' }).fill('West Side')
    await page.getByRole('button', { name: 'Go in' }).click()
    await page.locator('#channel-shown').filter({ hasText: 'west-side' }).waitFor()
    expect(page.url()).toContain('?channel=west-side')
    await page.getByText('What do you build?').waitFor()
    expect(await page.locator('.entry').count()).toBe(0)
    await page.getByRole('button', { name: /^Channel and name/u }).click()
    await page.locator('.choices').getByRole('button', { name: 'east' }).click()
    await page.locator('.entry').waitFor()
    expect(await page.locator('.entry .line code').textContent()).toBe('units')
  })

  it('delete what they asked, after they were asked twice', async () => {
    const { page, say } = await enter(browser, room.url, 'Ann', 'away')
    await say('units')
    await page.getByRole('button', { name: /^Channel and name/u }).click()
    await page.getByRole('button', { name: 'Delete what I asked in this channel' }).click()
    expect(await page.locator('.entry').count()).toBe(1)
    await page.getByRole('button', { name: 'Press once more' }).click()
    await page.getByText('What do you build?').waitFor()
    expect(await page.locator('.entry').count()).toBe(0)
  })

  it('paste a list of many lines', async () => {
    const { page, say } = await enter(browser, room.url, 'Ann', 'lists')
    await page.getByRole('button', { name: 'Type many lines' }).click()
    await page
      .getByRole('textbox', { name: 'Your list' })
      .fill('cutlist add\n4x 24in x 12in side\n2x 10in x 12in end')
    await page.getByRole('button', { name: 'Ask' }).click()
    await page.locator('.entry h3').filter({ hasText: /\d/u }).waitFor()
    expect(await page.locator('.entry .line code').textContent()).toBe(
      'cutlist add\n4x 24in x 12in side\n2x 10in x 12in end',
    )
    // One line again for what comes next, and what was asked can be put back to change it.
    await say('units')
    await page.locator('.entry .line').first().click()
    expect(await page.getByRole('textbox', { name: 'Your list' }).inputValue()).toContain(
      '2x 10in x 12in end',
    )
  })

  it('keep the newest entries where thousands come, and no more', async () => {
    const { page, context } = await enter(browser, room.url, 'Eve', 'crowd')
    const shown = await page.evaluate(`(async () => {
      const { createNotebook } = await import('/notebook.js')
      const book = createNotebook({})
      const card = { ok: false, kind: 'invalid', error: 'no' }
      for (let id = 0; id < 2000; id += 1)
        book.hear({ id: String(id), at: new Date().toISOString(), name: 'Ann', line: 'line ' + id, card })
      return [...document.querySelectorAll('#entries > .entry .asked')].map(({ textContent }) => textContent)
    })()`)
    expect(shown).toHaveLength(300)
    expect(shown).toContain('line 1999')
    expect(shown).not.toContain('line 0')
    await context.close()
  })

  it('keep a line that could not be sent', async () => {
    const { page, context } = await enter(browser, room.url, 'Ann', 'cut-off')
    await context.setOffline(true)
    await page.getByRole('combobox').fill('units')
    await page.getByRole('button', { name: 'Ask' }).click()
    await page.getByRole('alert').filter({ hasText: 'Not sent: the room does not answer' }).waitFor()
    expect(await page.getByRole('combobox').inputValue()).toBe('units')
    expect(await page.locator('.entry').count()).toBe(0)
    await context.setOffline(false)
    await page.getByRole('button', { name: 'Ask' }).click()
    await page.locator('.entry:not(.pending)').waitFor()
  })

  it('come back by themselves after the room was closed and opened again', async () => {
    const first = await openWebRoom()
    const { page, say, newest } = await enter(browser, first.url, 'Ann', 'night')
    await say('strips 2x6 rip=1/2in')
    await first.close()
    await page.getByText('The room does not answer; trying again.').waitFor()
    const again = await openWebRoom({ folder: first.folder, port: first.port, tries: 1 })
    await expect.poll(() => page.locator('#lost').textContent(), PATIENT).toBe('')
    expect(await newest()).toMatch(/^9 strips/u)
    await page.reload()
    await page.locator('.entry').waitFor()
    expect(await newest()).toMatch(/^9 strips/u)
    await again.close()
  })
})
