import { createHash, X509Certificate } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { findFreePort } from '@fryward/standalone'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { launchBrowser, openPerson, PHONE } from '../support/browser.ts'
import { makeDataFolder, removeDataFolder, StandaloneRun } from '../support/standalone-run.ts'

const dataDir = makeDataFolder()
const name = 'fish.example'
const person = { name: 'Ada', email: 'ada@fish.example', password: 'a long enough password' }
let run: StandaloneRun
let origin: string
let browser: Browser
let page: Page

/** What the page's own script gets: same origin, same cookies, the browser's own rules. */
const ask = (path: string, body?: object) =>
  page.evaluate(
    async ({ path, body }) => {
      const headers = { 'content-type': 'application/json', 'idempotency-key': crypto.randomUUID() }
      const answer = await fetch(path, body ? { method: 'POST', headers, body: JSON.stringify(body) } : {})
      return { status: answer.status, text: await answer.text() }
    },
    { path, body },
  )

describe('over HTTPS on a name that is not localhost, from a phone that trusts our authority', () => {
  beforeAll(async () => {
    const port = await findFreePort()
    origin = `https://${name}:${port}`
    run = await StandaloneRun.launch({ DATA_DIR: dataDir, TLS: 'local', PUBLIC_URL: origin }, port)
    await run.waitFor(`Fryward is ready at ${origin}`)
    const certificate = new X509Certificate(readFileSync(join(dataDir, 'tls/server.crt')))
    const key = certificate.publicKey.export({ type: 'spki', format: 'der' })
    const trustedKeyHashes = [createHash('sha256').update(key).digest('base64')]
    browser = await launchBrowser({ loopbackNames: [name], trustedKeyHashes })
    page = await (await openPerson(browser, PHONE)).newPage()
  })
  afterAll(async () => {
    await browser?.close()
    await run?.stop()
    await removeDataFolder(dataDir)
  })

  it('the page is a secure context, so that a service worker and the camera are allowed', async () => {
    const answer = await page.goto(`${origin}/sign-in`)
    expect(answer?.status()).toBe(200)
    expect(await page.evaluate(() => window.isSecureContext && 'serviceWorker' in navigator)).toBe(true)
  })

  it('the certificate is made for the name', () => {
    expect(new X509Certificate(readFileSync(join(dataDir, 'tls/server.crt'))).checkHost(name)).toBe(name)
  })

  it('the authority can be fetched for installing', async () => {
    const { text } = await ask('/fryward-ca.crt')
    expect(text).toBe(readFileSync(join(dataDir, 'tls/ca.crt'), 'utf8'))
  })

  it('claiming, signing in and asking who one is work, with a cookie that only HTTPS carries', async () => {
    const code = run.output.match(/\/claim and enter (\S+)/)?.[1]
    expect(await ask('/api/v1/claim', { ...person, code })).toMatchObject({ status: 201 })
    const { email, password } = person
    expect(await ask('/api/auth/sign-in/email', { email, password })).toMatchObject({ status: 200 })
    expect(JSON.parse((await ask('/api/v1/me')).text)).toMatchObject({ user: { email } })
    const session = (await page.context().cookies()).find((cookie) => cookie.name.includes('session'))
    expect(session).toMatchObject({ secure: true, httpOnly: true })
  })
})
