import { createRequire } from 'node:module'
import { readFileSync } from 'node:fs'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { enter, hasBrowser, inBrowser, openBrowser, PATIENT } from './browser.ts'
import { type OpenWebRoom, openWebRoom } from './webRoom.ts'

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** What axe-core finds on the page as it stands, as `rule: element`. */
async function findings(page: Page): Promise<readonly string[]> {
  await page.evaluate(AXE)
  const { violations } = (await page.evaluate('axe.run(document, { resultTypes: ["violations"] })')) as {
    violations: { id: string; nodes: { html: string }[] }[]
  }
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 120)}`))
}

/** Controls that a thumb would miss: any side under 44 px. Links and headings within text are read, not pressed. */
const small = (page: Page): Promise<unknown> =>
  page.evaluate(`[...document.querySelectorAll('button, input, textarea, summary, .files a, [role=option]')]
    .filter((each) => each.checkVisibility())
    .map((each) => ({ box: each.getBoundingClientRect(), html: each.outerHTML.slice(0, 80) }))
    .filter(({ box }) => box.height < 43.9 || box.width < 43.9)
    .map(({ box, html }) => Math.round(box.width) + ' x ' + Math.round(box.height) + ' ' + html)`)

/** How much wider than the screen the page is. */
const overhang = (page: Page): Promise<unknown> =>
  page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth')

let room: OpenWebRoom
let browser: Browser

describe.skipIf(!hasBrowser)(inBrowser('the page for everybody'), { timeout: 90_000 }, () => {
  beforeAll(async () => {
    room = await openWebRoom({
      slots: (line) =>
        line.startsWith('project start')
          ? {
              pictures: [{ name: 'front', alt: 'The front', scene: { width: 30, height: 15, shapes: [] } }],
              files: [{ name: 'parts.csv', type: 'text/csv', content: 'part\n' }],
            }
          : undefined,
    })
    browser = await openBrowser()
  }, PATIENT.timeout * 4)
  afterAll(async () => {
    await browser.close()
    await room.close()
  })

  const SCREENS = [
    { width: 360, height: 740, isTouched: true, scheme: 'light' },
    { width: 360, height: 740, isTouched: true, scheme: 'dark' },
    { width: 1280, height: 900, isTouched: false, scheme: 'light' },
    { width: 1280, height: 900, isTouched: false, scheme: 'dark' },
  ] as const

  it.each(SCREENS)('has nothing that axe-core objects to: $width px, $scheme', async (screen) => {
    const { page, say } = await enter(
      browser,
      room.url,
      'Ann',
      `axe-${screen.width}-${screen.scheme}`,
      screen,
    )
    const check = async (what: string) => {
      expect([what, await findings(page)]).toEqual([what, []])
      expect([what, await small(page)]).toEqual([what, []])
      expect([what, await overhang(page)]).toEqual([what, 0])
    }
    await page.getByText('What do you build?').waitFor()
    await check('nothing asked yet')
    await say('project start 29in x 18in height=15in')
    await say('strips 2x6 rip=1/2in')
    await say('stripes')
    await page.getByRole('button', { name: 'Show to all' }).last().click()
    await page.getByText('Everybody here sees this').waitFor()
    await page.locator('#entries summary').first().click()
    await check('answers')
    await page.getByRole('combobox').fill('sizing 17in x 13in ')
    await page.getByRole('option').first().waitFor()
    await page.getByRole('combobox').press('ArrowDown')
    await check('completions')
    await page.getByRole('combobox').press('Escape')
    await page.getByRole('combobox').fill('')
    if (screen.isTouched) await page.getByRole('button', { name: 'Plan', exact: true }).click()
    await page.locator('#plan-card table').first().waitFor()
    await check('the plan')
    await page.getByRole('button', { name: /^Channel and name/u }).click()
    await page.getByRole('dialog').waitFor()
    await check('the door')
  })

  it('can be used by keyboard alone', async () => {
    const context = await browser.newContext({
      viewport: { width: 1280, height: 900 },
      reducedMotion: 'reduce',
    })
    const page = await context.newPage()
    const { keyboard } = page
    const focused = () => page.evaluate('document.activeElement.id || document.activeElement.textContent')
    await page.goto(room.url)
    // The door: the focus waits at the name, and Escape leads nowhere.
    await expect.poll(focused, PATIENT).toBe('name')
    await keyboard.press('Escape')
    expect(await page.locator('#door').isVisible()).toBe(true)
    await keyboard.type('Kay')
    await keyboard.press('Tab')
    await keyboard.press('ControlOrMeta+A')
    await keyboard.type('keys')
    await keyboard.press('Enter')
    await expect.poll(focused, PATIENT).toBe('line')

    // The list of what may come next is moved through with the arrows; Enter takes, and only then sends.
    const line = page.getByRole('combobox')
    await keyboard.insertText('str')
    await page.getByRole('option', { name: /^strips/u }).waitFor()
    expect(await line.getAttribute('aria-expanded')).toBe('true')
    await keyboard.press('ArrowDown')
    const active = await line.getAttribute('aria-activedescendant')
    expect(await page.locator(`#${active}`).getAttribute('aria-selected')).toBe('true')
    await keyboard.press('Enter')
    expect(await line.inputValue()).toBe('strips ')
    await keyboard.insertText('2x6 ri')
    await expect
      .poll(() => page.getByRole('option').allTextContents(), PATIENT)
      .toEqual([expect.stringMatching(/^rip=/u)])
    await keyboard.press('ArrowUp')
    await keyboard.press('Tab')
    expect(await line.inputValue()).toBe('strips 2x6 rip=')
    await keyboard.press('Escape')
    expect(await line.getAttribute('aria-expanded')).toBe('false')
    await line.fill('strips 2x6 rip=1/2in')
    await keyboard.press('Enter')
    await page.locator('.entry h3').filter({ hasText: '9 strips' }).waitFor()
    expect(await page.locator('#said').textContent()).toMatch(/^Answer: 9 strips.*\. 3 cautions$/u)
    // The focus stays where the next line is typed, and the arrow up brings the last one back.
    await expect.poll(focused, PATIENT).toBe('line')
    await keyboard.press('ArrowUp')
    expect(await line.inputValue()).toBe('strips 2x6 rip=1/2in')
    await line.fill('project start 17in x 13in height=15in')
    await keyboard.press('Enter')
    await page.locator('#plan-card h3').waitFor()

    // Back to the buttons of the newest answer, and one of them pressed.
    const undo = page.locator('.entry').last().getByRole('button', { name: 'Undo' })
    for (
      let step = 0;
      step < 30 && !(await undo.evaluate((each) => each === each.ownerDocument.activeElement));
      step += 1
    )
      await keyboard.press('Shift+Tab')
    await keyboard.press('Enter')
    await page.locator('.entry h3').filter({ hasText: 'Undone:' }).waitFor()
    await expect.poll(focused, PATIENT).toMatch(/^Undone:/u)
    await context.close()
  })

  it('leads past the top to where one types', async () => {
    const { page } = await enter(browser, room.url, 'Ann', 'skip', {
      width: 1280,
      height: 900,
      isTouched: false,
    })
    await page.locator('.skip').focus()
    await page.keyboard.press('Enter')
    await expect.poll(() => page.evaluate('document.activeElement.id'), PATIENT).toBe('line')
  })

  it('reads a table as a table', async () => {
    const { page, say } = await enter(browser, room.url, 'Ann', 'tables')
    await say('strips 2x6 rip=1/2in')
    const table = page.getByRole('table', { name: /^Fence to nearest tooth/u })
    expect(await table.getByRole('columnheader').allInnerTexts()).toEqual(['Cut', 'Fence'])
    expect(await table.getByRole('rowheader').first().textContent()).toBe('1')
    expect(await table.getByRole('cell').first().textContent()).toBe('4 7/8')
  })
})
