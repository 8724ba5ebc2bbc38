// Today on a slow phone against a Next page that is empty, built and measured in the same run: bytes of script, zipped,
// and the time until something can be tapped.
import { spawn } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { chromium } from 'playwright-core'
import { root } from '../../apps/standalone/build/project.mjs'
import { ensureDashboard } from '../../apps/standalone/build/steps.mjs'
import { chromiumCommand, PHONE } from '../support/browser-launch.mjs'
import { serveNext } from '../support/stage-dashboard.mjs'
import { zoneAtHour } from '../support/stage-zone.mjs'
import { signIn, startDemoServer } from './demo-server.mjs'

const turns = 5
/** No long task and no script asked for during this: idle. */
const quietMs = 2000
// A cheap phone on a weak network: a quarter of this machine's speed, 1.6 Mbit/s down, 0.75 up, 150 ms. common practice
const cpuSlowdown = 4
const network = { offline: false, latency: 150, downloadThroughput: 1.6e6 / 8, uploadThroughput: 0.75e6 / 8 }

export async function run() {
  await ensureDashboard()
  const empty = await buildEmptyPage()
  const demo = await startDemoServer({ timeZone: zoneAtHour(13) })
  const browser = await chromium.launch(await chromiumCommand())
  try {
    const cookie = await signIn(
      demo.origin,
      demo.people.find(({ role }) => role === 'caretaker'),
    )
    const pages = {
      today: { url: `${demo.origin}/rooms/${demo.roomId}/today`, ready: 'main ul button', cookie },
      empty: { url: empty.url, ready: 'button' },
    }
    const seen = { today: [], empty: [] }
    for (let turn = 0; turn < turns; turn += 1)
      for (const [name, page] of Object.entries(pages)) seen[name].push(await visit(browser, page))
    report(seen)
  } finally {
    await browser.close()
    await demo.stop()
    await empty.stop()
  }
}

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]
const kB = (bytes) => `${(bytes / 1000).toFixed(0)} kB`

function report({ today, empty }) {
  const of = (visits, what) => median(visits.map((visit) => visit[what]))
  const line = (what, say) => {
    const [ours, reference] = [of(today, what), of(empty, what)]
    return `${say(ours).padStart(9)} ${say(reference).padStart(9)} ${(ours / reference).toFixed(2).padStart(6)}`
  }
  console.log('                                    Today     empty  ratio')
  console.log(`script of the page, zipped      ${line('zippedBytes', kB)}   (aim 180 kB, at most 200)`)
  console.log(`with what it loads ahead        ${line('untilIdleBytes', kB)}`)
  console.log(`until it can be tapped          ${line('interactiveMs', (ms) => `${(ms / 1000).toFixed(2)} s`)}`)
}

/** One first visit, nothing cached. */
async function visit(browser, { url, ready, cookie }) {
  const context = await browser.newContext({ locale: 'en-GB', ...PHONE })
  try {
    if (cookie) {
      const [name, value] = cookie.split(/=(.*)/)
      await context.addCookies([{ name, value, url: new URL(url).origin }])
    }
    const page = await context.newPage()
    const scripts = gatherScripts(page)
    const session = await context.newCDPSession(page)
    await session.send('Network.enable')
    await session.send('Network.emulateNetworkConditions', network)
    await session.send('Emulation.setCPUThrottlingRate', { rate: cpuSlowdown })
    await page.addInitScript(watch, ready)
    await page.goto(url, { timeout: 120_000 })
    await page.waitForFunction(isQuiet, quietMs, { timeout: 120_000 })
    const { readyMs, busyUntilMs, startedMs } = await page.evaluate(readClocks)
    const sizes = await Promise.all(scripts)
    const sum = (of) => of.reduce((total, { zippedBytes }) => total + zippedBytes, 0)
    return {
      interactiveMs: Math.max(readyMs, busyUntilMs),
      zippedBytes: sum(sizes.filter(({ url: script }) => startedMs[script] < readyMs)),
      untilIdleBytes: sum(sizes),
    }
  } finally {
    await context.close()
  }
}

/** Address and size of every script that is asked for, as promises that resolve when it has come. */
function gatherScripts(page) {
  const scripts = []
  page.on('requestfinished', (request) => {
    if (request.resourceType() !== 'script') return
    const bodyOf = (answer) => answer.body()
    scripts.push(
      request
        .response()
        .then(bodyOf)
        .then((body) => ({ url: request.url(), zippedBytes: gzipSync(body).length })),
    )
  })
  return scripts
}

/** Runs in the page before its own scripts: when the first button stands there, until when the page was busy. */
function watch(ready) {
  window.seen = { readyMs: Number.POSITIVE_INFINITY, busyUntilMs: 0 }
  new PerformanceObserver((list) => {
    for (const task of list.getEntries()) window.seen.busyUntilMs = task.startTime + task.duration
  }).observe({ type: 'longtask', buffered: true })
  const look = () => {
    const button = document.querySelector(ready)
    // Handlers are attached once React knows the element.
    const isAlive = button && Object.keys(button).some((key) => key.startsWith('__react'))
    if (isAlive) window.seen.readyMs = performance.now()
    else requestAnimationFrame(look)
  }
  requestAnimationFrame(look)
}

/** Runs in the page. */
function isQuiet(quietMs) {
  const scripts = performance.getEntriesByType('resource').filter((entry) => entry.initiatorType === 'script')
  const lastScriptMs = Math.max(0, ...scripts.map((entry) => entry.responseEnd))
  return performance.now() - Math.max(window.seen.readyMs, window.seen.busyUntilMs, lastScriptMs) > quietMs
}

/** Runs in the page: when the first button was alive, until when the page was busy, when each script was asked for. */
function readClocks() {
  const entries = performance.getEntriesByType('resource').map(({ name, startTime }) => [name, startTime])
  return { ...window.seen, startedMs: Object.fromEntries(entries) }
}

const emptyPage = {
  'package.json': '{"name": "empty", "private": true}',
  'next.config.mjs': 'export default { turbopack: { root: process.env.PROJECT_ROOT } }',
  'app/layout.js':
    'export default function Layout({ children }) { return <html lang="en"><body>{children}</body></html> }',
  'app/page.js':
    "'use client'\nimport { useState } from 'react'\nexport default function Page() { const [n, set] = useState(0); return <button onClick={() => set(n + 1)}>{n}</button> }",
}

async function buildEmptyPage() {
  const output = join(root, 'tests/.output')
  mkdirSync(join(output), { recursive: true })
  const folder = mkdtempSync(join(output, 'empty-page-'))
  mkdirSync(join(folder, 'app'))
  for (const [name, text] of Object.entries(emptyPage)) writeFileSync(join(folder, name), text)
  const env = { ...process.env, PROJECT_ROOT: root, NEXT_TELEMETRY_DISABLED: '1', NODE_ENV: 'production' }
  process.env.PROJECT_ROOT = root
  const child = spawn(process.execPath, [join(root, 'node_modules/next/dist/bin/next'), 'build', folder], {
    env,
    stdio: ['ignore', 'ignore', 'inherit'],
  })
  const code = await new Promise((resolve) => child.once('exit', resolve))
  if (code !== 0) throw new Error(`The empty page was not built (exit ${code})`)
  const served = await serveNext(folder)
  return {
    url: served.url,
    stop: async () => {
      await served.stop()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}
