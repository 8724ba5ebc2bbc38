import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { findAccessibilityViolations } from '../support/accessibility.ts'
import { DESKTOP, launchBrowser, openPerson, PHONE } from '../support/browser.ts'

describe('the test browser', () => {
  let browser: Browser
  beforeAll(async () => {
    browser = await launchBrowser()
  })
  afterAll(() => browser.close())

  it('holds two people at once, one on a phone', async () => {
    const phone = await (await openPerson(browser, PHONE)).newPage()
    const desk = await (await openPerson(browser, DESKTOP)).newPage()
    const measure = () => ({ width: window.innerWidth, canTouch: navigator.maxTouchPoints > 0 })
    for (const page of [phone, desk]) await page.setContent('<meta name="viewport" content="width=device-width">')
    expect(await phone.evaluate(measure)).toEqual({ width: 390, canTouch: true })
    expect(await desk.evaluate(measure)).toEqual({ width: 1440, canTouch: false })
    await phone.context().close()
    await desk.setContent('<p>still here</p>')
    expect(await desk.textContent('p')).toBe('still here')
  })

  it('finds an unlabelled button, and nothing on a sound page', async () => {
    const page = await (await openPerson(browser, DESKTOP)).newPage()
    const html = (body: string) => `<!doctype html><html lang="en"><title>Room</title><main><h1>Room</h1>${body}</main>`
    const show = async (body: string) => {
      await page.route('http://a-page.test/', (route) => route.fulfill({ contentType: 'text/html', body: html(body) }))
      await page.goto('http://a-page.test/')
    }
    await show('<button></button>')
    expect((await findAccessibilityViolations(page)).join()).toContain('button-name')
    await show('<button>Sign off</button>')
    expect(await findAccessibilityViolations(page)).toEqual([])
  })
})
