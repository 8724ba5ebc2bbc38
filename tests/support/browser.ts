import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  type BrowserServer,
  chromium,
} from 'playwright-core'
import { chromiumCommand } from './browser-launch.mjs'

export { DESKTOP, PHONE } from './browser-launch.mjs'

/** How long anything is waited for before its test fails. */
export const patienceMs = 60_000

export type LaunchOptions = {
  /** Names that the browser takes for 127.0.0.1, so that a test needs no name server and no hosts file. */
  loopbackNames?: string[]
  /** Base64 SHA-256 of public keys that are trusted without an authority, as on a phone that installed ours. */
  trustedKeyHashes?: string[]
}

/** A real Chromium: the installed one, else the one that a registry package brings. Close it in afterAll. */
export async function launchBrowser({
  loopbackNames = [],
  trustedKeyHashes = [],
}: LaunchOptions = {}): Promise<Browser> {
  const args: string[] = []
  if (loopbackNames.length > 0) {
    args.push(`--host-resolver-rules=${loopbackNames.map((name) => `MAP ${name} 127.0.0.1`).join(', ')}`)
  }
  if (trustedKeyHashes.length > 0) args.push(`--ignore-certificate-errors-spki-list=${trustedKeyHashes.join(',')}`)
  return chromium.launch(await chromiumCommand(args))
}

/** The same as a server that several test files connect to, each with contexts of its own. */
export async function launchBrowserServer(): Promise<BrowserServer> {
  return chromium.launchServer(await chromiumCommand())
}

/** One person's browser: cookies and storage of their own. */
export async function openPerson(browser: Browser, options: BrowserContextOptions): Promise<BrowserContext> {
  const context = await browser.newContext({ locale: 'en-GB', reducedMotion: 'reduce', ...options })
  context.setDefaultTimeout(patienceMs)
  return context
}
