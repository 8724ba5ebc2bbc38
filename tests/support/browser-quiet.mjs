/**
 * Follows what a page asks for. The returned function resolves when every answer has come (an open event stream apart)
 * and the page has drawn what it got. Call it before the page is opened.
 * @param {import('playwright-core').Page} page
 * @returns {() => Promise<void>}
 */
export function watchRequests(page) {
  const pending = new Set()
  let wake = () => {}
  page.on('request', (request) => {
    if (request.resourceType() !== 'eventsource') pending.add(request)
  })
  const settle = (request) => {
    pending.delete(request)
    wake()
  }
  page.on('requestfinished', settle)
  page.on('requestfailed', settle)
  const drawn = () =>
    page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => resolve()))))
  return async () => {
    do {
      while (pending.size > 0)
        await new Promise((resolve) => {
          wake = resolve
        })
      await drawn()
    } while (pending.size > 0)
  }
}
