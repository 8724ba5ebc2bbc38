// How the real Chromium is started. Plain JavaScript: scripts that run without a compiler use it too.
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import chromiumPackage from '@sparticuz/chromium'

/** A phone held upright and the owner's desk. */
export const PHONE = { viewport: { width: 390, height: 844 }, deviceScaleFactor: 2, isMobile: true, hasTouch: true }
export const DESKTOP = { viewport: { width: 1440, height: 900 } }

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

// It also plays a graphics card in software: nine tenths of a processor while pages are open, for pages that need none.
const BY_GRAPHICS = [
  '--ignore-gpu-blocklist',
  '--in-process-gpu',
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
]

/**
 * The installed Chrome or Chromium, else the one that a registry package brings.
 * @param {string[]} [more] arguments besides the usual ones
 * @returns {Promise<{executablePath: string, args: string[]}>}
 */
export async function chromiumCommand(more = []) {
  const installed = INSTALLED.find((path) => existsSync(path))
  const args = ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-dev-shm-usage', ...more]
  if (installed !== undefined) return { executablePath: installed, args }
  if (process.platform !== 'linux')
    throw new Error('Install Chrome or Chromium: the packaged browser runs on Linux only')
  const packaged = chromiumPackage.args.filter((argument) => ![...LEFT_OUT, ...BY_GRAPHICS].includes(argument))
  return { executablePath: await chromiumPackage.executablePath(), args: [...packaged, ...args] }
}
