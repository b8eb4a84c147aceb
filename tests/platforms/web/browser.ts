import { existsSync } from 'node:fs'
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core'

const FOUND = [process.env.CHROMIUM, '/usr/bin/chromium'].find((path) => path && existsSync(path))

/** Whether there is a browser to try the page in; tests that need one say so in their name. */
export const hasBrowser = FOUND !== undefined

/** What a group of tests is called that needs a browser, so that a run without one says why they are passed over. */
export const inBrowser = (what: string): string =>
  hasBrowser ? what : `${what} (needs a browser: set CHROMIUM to one, or install chromium)`

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** Opens the browser without a window. */
export const openBrowser = (): Promise<Browser> =>
  chromium.launch({ ...(FOUND !== undefined && { executablePath: FOUND }), args: FLAGS })

/** How long a page may take on a machine that is busy with other tests. */
export const PATIENT = { timeout: 20_000 } as const

/** One person with a page of their own. */
export interface Person {
  readonly page: Page
  readonly context: BrowserContext
  /** What the page complained of: faults of its script, and what its policy kept out. */
  readonly complaints: readonly string[]
  /** Types a line and waits for its answer, whose headline it gives. */
  readonly say: (line: string) => Promise<string>
  /** The headline of the newest answer. */
  readonly newest: () => Promise<string>
}

export interface Screen {
  readonly width?: number
  readonly height?: number
  readonly scheme?: 'light' | 'dark'
  readonly isTouched?: boolean
}

/** A phone held upright, which is the default. */
const PHONE = { width: 360, height: 740 }

/** Somebody comes in by the door, in a browser of their own, on a phone unless told otherwise. */
export async function enter(
  browser: Browser,
  url: string,
  name: string,
  channel: string,
  { width = PHONE.width, height = PHONE.height, scheme = 'light', isTouched = true }: Screen = {},
): Promise<Person> {
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: scheme,
    hasTouch: isTouched,
    isMobile: isTouched,
    reducedMotion: 'reduce',
    acceptDownloads: true,
  })
  const page = await context.newPage()
  const complaints: string[] = []
  page.on('pageerror', ({ message }) => complaints.push(message))
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text())
  })
  await page.goto(url)
  await page.getByLabel('Your name').fill(name)
  await page.getByRole('textbox', { name: 'Channel' }).fill(channel)
  await page.getByRole('button', { name: 'Go in' }).click()
  await page.locator('#channel-shown').filter({ hasText: channel }).waitFor()
  const newest = async () =>
    (await page.locator('#entries > .entry').last().locator('h3').textContent()) ?? ''
  return {
    page,
    context,
    complaints,
    newest,
    say: async (line) => {
      const count = await page.locator('#entries > .entry:not(.pending)').count()
      await page.getByRole('combobox', { name: 'Your line' }).fill(line)
      await page.getByRole('button', { name: 'Ask' }).click()
      await page.locator('#entries > .entry:not(.pending)').nth(count).waitFor()
      return newest()
    },
  }
}
