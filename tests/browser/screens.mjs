/**
 * `npm run screens [words of a state's name]` takes a picture of every page and state of the demo room, phone and
 * desktop, in all three looks, into tests/.output/screens, with one contact sheet; and the picture of the README.
 */
import { mkdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { chromium } from 'playwright-core'
import { root } from '../../apps/standalone/build/project.mjs'
import { ensureClient, ensureDashboard, ensurePrograms } from '../../apps/standalone/build/steps.mjs'
import { chromiumCommand, DESKTOP, PHONE } from '../support/browser-launch.mjs'
import { watchRequests } from '../support/browser-quiet.mjs'
import { zoneAtHour } from '../support/stage-zone.mjs'

const folder = join(root, 'tests/.output/screens')
const devices = { phone: PHONE, desktop: DESKTOP }
const looks = ['day', 'night', 'lights_out']
/** One state that cannot be reached leaves a gap in the sheet, and a failed run at its end. */
const failed = []
const wanted = process.argv.slice(2).join(' ')

await ensureClient()
await ensurePrograms()
await ensureDashboard()
// Programs exist only now.
const { startDemoServer } = await import('../load/demo-server.mjs')
const { prepare } = await import('./screens/prepare.mjs')
const { statesOf } = await import('./screens/states.mjs')
const { makeContactSheet, makeReadmePicture } = await import('./screens/contact-sheet.mjs')

rmSync(folder, { recursive: true, force: true })
mkdirSync(folder, { recursive: true })
console.log('Building the demo room')
// Past noon: one round walked, one under way, one ahead.
const demo = await startDemoServer({ timeZone: zoneAtHour(13) })
const browser = await chromium.launch(await chromiumCommand())
try {
  const prepared = await prepare(demo)
  const states = statesOf(prepared).filter(({ name }) => name.includes(wanted))
  const rows = states.map(({ name }) => ({ name, files: [] }))
  const sizes = []
  for (const [size, device] of Object.entries(devices))
    for (const look of looks) {
      sizes.push(device.viewport)
      for (const [index, state] of states.entries()) {
        const file = join(folder, `${state.name.replaceAll(/[^a-z]+/g, '-')}.${size}.${look}.png`)
        rows[index].files.push(file)
        await shoot({ state, device, look, file, prepared }).catch((thrown) => failed.push(thrown))
      }
      console.log(`${size}, ${look}: ${states.length} pictures`)
    }
  const sheet = join(folder, 'contact-sheet.jpg')
  await makeContactSheet({ rows, sizes, file: sheet })
  console.log(`All of them: ${sheet}`)
  for (const { message, cause } of failed) console.log(`${message}: ${cause}`)
  process.exitCode = failed.length === 0 ? 0 : 1
  if (wanted === '') {
    const picture = (size, name) => join(folder, `${name}.${size}.day.png`)
    await makeReadmePicture({
      phone: picture('phone', 'today'),
      desktop: picture('desktop', 'cultures'),
      file: join(root, 'tests/browser/readme.jpg'),
    })
  }
} finally {
  await browser.close()
  await demo.stop()
}

async function shoot({ state, device, look, file, prepared }) {
  const context = await browser.newContext({ locale: 'en-GB', reducedMotion: 'reduce', ...device })
  context.setDefaultTimeout(15_000)
  try {
    await context.addInitScript((value) => window.localStorage.setItem('fryward-look', value), look)
    const who = state.who === undefined ? 'owner' : state.who
    if (who) {
      const [name, value] = prepared.cookies[who].split(/=(.*)/)
      await context.addCookies([{ name, value, url: demo.origin }])
    }
    const page = await context.newPage()
    const quiet = watchRequests(page)
    await state.before?.(page)
    await page.goto(`${demo.origin}${state.path}`)
    await page.getByRole('heading', { level: 1 }).waitFor()
    if (!state.isLoading) await loaded(page, quiet)
    await state.act?.(page)
    if (!state.isLoading) await loaded(page, quiet)
    await page.evaluate(() => document.fonts.ready)
    await page.screenshot({ path: file })
  } catch (cause) {
    throw new Error(`No picture of "${state.name}" (${look}, ${device.viewport.width} wide)`, { cause })
  } finally {
    // An answer that is still being changed would find its page gone.
    for (const page of context.pages()) await page.unrouteAll({ behavior: 'ignoreErrors' })
    await context.close()
  }
}

/** Nothing grey any more. */
async function loaded(page, quiet) {
  await quiet()
  await page.waitForFunction(
    () => ![...document.querySelectorAll('[role=status]')].some((status) => status.textContent?.trim() === 'Loading'),
  )
}
