import { createHmac, randomUUID } from 'node:crypto'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createApi } from '@fryward/api'
import { findFreePort } from '@fryward/standalone'
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core'
import { inject } from 'vitest'
import { openPerson, PHONE } from './browser.ts'
import { openWorld, type Person, type World } from './world.ts'

export type Look = 'day' | 'night' | 'lights_out'
type PageOptions = {
  path: string
  device?: BrowserContextOptions
  /** Another way to the server than straight, such as a cable that can be pulled. */
  origin?: string
  look?: Look
}

/** The whole house for browser tests: a database of its own, the real API over HTTP by the real clock, the real pages. */
export type Stage = {
  /** The same room without HTTP, its clock in the past: history is made through it. */
  world: World
  origin: string
  port: number
  photosFolder: string
  browser: Browser
  /** What browsers kept pages from by their policy, as they say it; whatever a test leaves in here fails its file. */
  refused: string[]
  /** What pages threw that nothing caught, drawing another text than the server did among it; it fails the file too. */
  thrown: string[]
  /** A new browser context at that path: signed in as that person, or a stranger's. */
  openPage: (person: Person | null, options: PageOptions) => Promise<Page>
  /** Signs a person in on a browser that is open already, instead of whoever was. */
  signIn: (context: BrowserContext, person: Person, way?: string) => Promise<void>
  close: () => Promise<void>
}

const authSecret = 'a secret for browser tests only, long enough'
const dayMs = 86_400_000

/**
 * @param historyDays how long before now the world's clock stands at first.
 * @param from with it, pages and API go by the world's clock too, which stands there at first and which only the test moves.
 */
export async function openStage({
  historyDays = 4,
  from,
}: {
  historyDays?: number
  from?: string
} = {}): Promise<Stage> {
  const world = await openWorld({ at: from ?? new Date(Date.now() - historyDays * dayMs).toISOString() })
  const photosFolder = mkdtempSync(join(tmpdir(), 'fryward-photos-'))
  const port = await findFreePort()
  const origin = `http://127.0.0.1:${port}`
  const app = await createApi({
    database: world.database,
    authSecret,
    publicUrl: origin,
    version: 'test',
    webUrl: inject('dashboardUrl'),
    photosFolder,
    requestsPerMinute: 1_000_000,
    ...(from === undefined ? {} : { now: world.clock.now }),
  })
  // A browser takes the time from the answers it gets.
  if (from !== undefined)
    app.server.prependListener('request', (_request, response) =>
      response.setHeader('date', new Date(world.clock.now()).toUTCString()),
    )
  await app.listen({ port, host: '127.0.0.1' })
  const browser = await chromium.connect(inject('browserEndpoint'))
  const signIn: Stage['signIn'] = async (context, person, way = origin) =>
    context.addCookies([{ ...(await mintSession(world, person)), url: way }])
  const refused: string[] = []
  const thrown: string[] = []
  const openPage: Stage['openPage'] = async (person, { path, device = PHONE, origin: way = origin, look }) => {
    const context = await openPerson(browser, device)
    context.on('console', (message) => {
      if (message.text().includes('Content Security Policy'))
        refused.push(`${message.page()?.url()}: ${message.text()}`)
    })
    context.on('weberror', (error) => thrown.push(`${error.page()?.url()}: ${error.error().message}`))
    if (person) await signIn(context, person, way)
    if (look) await context.addInitScript((value) => window.localStorage.setItem('fryward-look', value), look)
    const page = await context.newPage()
    await page.goto(`${way}${path}`)
    return page
  }
  return {
    ...{ world, origin, port, photosFolder, browser, refused, thrown, openPage, signIn },
    close: async () => {
      await browser.close()
      await app.close()
      await world.close()
      rmSync(photosFolder, { recursive: true, force: true })
      if (refused.length > 0) throw new Error(`A page needs what its policy forbids:\n${refused.join('\n')}`)
      if (thrown.length > 0) throw new Error(`Pages threw:\n${thrown.join('\n')}`)
    },
  }
}

/** A session in the sign-in library's own shape: a signed token in a cookie. */
async function mintSession({ database }: World, { userId }: Person): Promise<{ name: string; value: string }> {
  const token = randomUUID()
  const now = new Date()
  const expiresAt = new Date(now.getTime() + 7 * dayMs)
  await database.prisma.session.create({
    data: { id: randomUUID(), userId, token, expiresAt, createdAt: now, updatedAt: now },
  })
  const signature = createHmac('sha256', authSecret).update(token).digest('base64')
  return { name: 'fryward.session_token', value: encodeURIComponent(`${token}.${signature}`) }
}
