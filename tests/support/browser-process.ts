import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type BrowserContext, chromium } from 'playwright-core'
import { patienceMs } from './browser.ts'
import { chromiumCommand } from './browser-launch.mjs'

/** A browser in a process of its own with a profile on the disk, so that it can crash and be opened again. */
export type BrowserProcess = { context: BrowserContext; crash: () => Promise<void> }

/** A folder for a profile, and its removal. */
export function makeProfile(): { folder: string; remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'fryward-profile-'))
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }) }
}

export async function openProcess(profile: string): Promise<BrowserProcess> {
  const { executablePath, args } = await chromiumCommand(['--headless', '--remote-debugging-port=0'])
  const child = spawn(executablePath, [...args, `--user-data-dir=${profile}`, 'about:blank'], {
    detached: true,
    stdio: ['ignore', 'ignore', 'pipe'],
  })
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()))
  const address = await new Promise<string>((resolve, reject) => {
    let said = ''
    child.stderr.on('data', (chunk: Buffer) => {
      said += chunk.toString()
      const found = /DevTools listening on (ws:\S+)/.exec(said)?.[1]
      if (found) resolve(found)
    })
    child.once('exit', () => reject(new Error(`The browser ended before it listened: ${said}`)))
  })
  const browser = await chromium.connectOverCDP(address)
  const [context] = browser.contexts()
  if (!context || child.pid === undefined) throw new Error('The browser has no window')
  context.setDefaultTimeout(patienceMs)
  const group = -child.pid
  return {
    context,
    crash: async () => {
      // The whole group: nothing of it has time to put anything in order.
      process.kill(group, 'SIGKILL')
      await ended
    },
  }
}
