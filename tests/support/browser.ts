import { existsSync } from 'node:fs'
import { join } from 'node:path'
import chromiumPackage from '@sparticuz/chromium'
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  type BrowserServer,
  chromium,
} from 'playwright-core'

/** A phone held upright and the owner's desk. */
export const PHONE: BrowserContextOptions = {
  viewport: { width: 390, height: 844 },
  deviceScaleFactor: 2,
  isMobile: true,
  hasTouch: true,
}
export const DESKTOP: BrowserContextOptions = { viewport: { width: 1440, height: 900 } }

export type LaunchOptions = {
  /** Names that the browser takes for 127.0.0.1, so that a test needs no name server and no hosts file. */
  loopbackNames?: string[]
  /** Base64 SHA-256 of public keys that are trusted without an authority, as on a phone that installed ours. */
  trustedKeyHashes?: string[]
}

const INSTALLED = [
  ...['google-chrome', 'google-chrome-stable', 'chromium', 'chromium-browser'].map((name) => `/usr/bin/${name}`),
  '/opt/google/chrome/chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  ...[process.env.PROGRAMFILES, process.env.LOCALAPPDATA].flatMap((folder) =>
    folder === undefined ? [] : [join(folder, 'Google/Chrome/Application/chrome.exe')],
  ),
]

// The package is cut for one short-lived page: one process for everything (a second context crashes it) and no
// same-origin rule (our tests are about to rely on it).
const LEFT_OUT = ['--single-process', '--disable-web-security', '--allow-running-insecure-content', '--no-zygote']

/** A real Chromium: the installed one, else the one that a registry package brings. Close it in afterAll. */
export async function launchBrowser(options: LaunchOptions = {}): Promise<Browser> {
  return chromium.launch(await commandOf(options))
}

/** The same as a server that several test files connect to, one after the other. */
export async function launchBrowserServer(): Promise<BrowserServer> {
  return chromium.launchServer(await commandOf({}))
}

async function commandOf({ loopbackNames = [], trustedKeyHashes = [] }: LaunchOptions) {
  const installed = INSTALLED.find((path) => existsSync(path))
  const args = ['--no-sandbox', '--disable-background-networking', '--disable-dev-shm-usage']
  if (loopbackNames.length > 0) {
    args.push(`--host-resolver-rules=${loopbackNames.map((name) => `MAP ${name} 127.0.0.1`).join(', ')}`)
  }
  if (trustedKeyHashes.length > 0) args.push(`--ignore-certificate-errors-spki-list=${trustedKeyHashes.join(',')}`)
  if (installed !== undefined) return { executablePath: installed, args }
  if (process.platform !== 'linux')
    throw new Error('Install Chrome or Chromium: the packaged browser runs on Linux only')
  const packaged = chromiumPackage.args.filter((argument) => !LEFT_OUT.includes(argument))
  return { executablePath: await chromiumPackage.executablePath(), args: [...packaged, ...args] }
}

/** One person's browser: cookies and storage of their own. */
export async function openPerson(browser: Browser, options: BrowserContextOptions): Promise<BrowserContext> {
  const context = await browser.newContext({ locale: 'en-GB', reducedMotion: 'reduce', ...options })
  context.setDefaultTimeout(10_000)
  return context
}
