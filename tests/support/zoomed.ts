import type { Page } from 'playwright-core'

/**
 * By how many pixels the page is wider than its window once everything is twice as large, as WCAG 1.4.4 asks; a line when it is.
 * The page is left as it was.
 */
export async function findTooWideZoomed(page: Page): Promise<string[]> {
  const size = page.viewportSize()
  if (!size) throw new Error('A page without a size cannot be zoomed')
  await page.setViewportSize({ width: size.width / 2, height: Math.round(size.height / 2) })
  const found = await page.evaluate(async () => {
    const { documentElement: root } = document
    // Charts are drawn anew once they have been measured, some frames later.
    for (let frame = 0; frame < 60 && (frame < 2 || root.scrollWidth > root.clientWidth); frame += 1)
      await new Promise((resolve) => requestAnimationFrame(resolve))
    const { clientWidth, scrollWidth } = root
    if (scrollWidth <= clientWidth) return null
    const wide = [...document.querySelectorAll('main *')]
      .filter((element) => element.getBoundingClientRect().right > clientWidth + 1)
      .map(({ tagName, textContent }) => `${tagName.toLowerCase()} "${(textContent ?? '').slice(0, 30)}"`)
    return `${scrollWidth - clientWidth} px too wide at 200 %: ${wide.slice(-4).join(', ')}`
  })
  await page.setViewportSize(size)
  return found === null ? [] : [found]
}
