import { screen, waitFor } from '@testing-library/react'
import { describe, expect, it } from 'vitest'
import { makeLife } from '@/testing/made-up-life.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { beAsWideAs } from '@/testing/wide-as.ts'
import { LifeLine } from './LifeLine.tsx'
import { LifeTable } from './LifeTable.tsx'
import { lifeMargin } from './life-lanes.ts'

beAsWideAs(400)

const life = makeLife()

async function draw(from: string) {
  renderInRoom(<LifeLine life={life} from={from} sentence="60 left." />)
  return waitFor(() => screen.getByRole('img', { name: 'Life line. 60 left.' }))
}
const number = (element: Element | null | undefined, name: string) => Number(element?.getAttribute(name))

describe('the life line of a clutch', () => {
  it('has a row for each stage and each food, with the stage seen inside what was expected', async () => {
    const chart = await draw('2026-03-01')
    const labels = [...chart.querySelectorAll('text')].map(({ textContent }) => textContent)
    expect(labels).toEqual(expect.arrayContaining(['Hatched', 'found dead', 'R1', 'Dry food', 'day of life']))
    const [expected] = chart.querySelectorAll('rect[class*=expected]')
    const [seen] = chart.querySelectorAll('circle[class*=seen]')
    const left = number(expected, 'x')
    expect(number(seen, 'cx')).toBeGreaterThan(left)
    expect(number(seen, 'cx')).toBeLessThan(left + number(expected, 'width'))
  })

  it('begins where it is asked to, and keeps the day of life for its ticks', async () => {
    const fromHatch = await draw('2026-03-09')
    const [seen] = fromHatch.querySelectorAll('circle[class*=seen]')
    expect(number(seen, 'cx')).toBe(lifeMargin.left)
    const ticks = [...fromHatch.querySelectorAll('text')].map(({ textContent }) => textContent)
    expect(ticks).toEqual(expect.arrayContaining(['0', '1', '2', '3']))
  })

  it('draws the numbers as a band that closes on a count, and the dead below the line', async () => {
    const chart = await draw('2026-03-09')
    expect(chart.querySelectorAll('circle[class*=count]')).toHaveLength(1)
    expect(chart.querySelectorAll('rect[class*=loss]')).toHaveLength(1)
    expect(chart.querySelectorAll('path[class*=between]')).toHaveLength(1)
  })

  it('is told as a table for those who read, oldest first', () => {
    renderInRoom(<LifeTable life={life} />)
    const rows = screen.getAllByRole('row').map(({ textContent }) => textContent)
    expect(rows[1]).toBe('Mon 9 MarHatched68 to 80')
    expect(rows).toContain('Wed 11 Mar8 found dead: thin60 to 72')
    expect(rows).toContain('Thu 12 Marcounted: 6060')
  })

  it('of young that a parent carries tells of their release, and of no larvae before it', async () => {
    const carried = { ...makeLife({ care: 'pouch' }), numbers: [] }
    renderInRoom(<LifeLine life={carried} from="2026-03-01" sentence="Carried." />)
    const chart = await waitFor(() => screen.getByRole('img', { name: 'Life line. Carried.' }))
    const texts = [...chart.querySelectorAll('text')].map(({ textContent }) => textContent)
    expect(texts).toEqual(expect.arrayContaining(['Released', 'In grow-out', 'no young yet']))
    expect(texts.join(' ')).not.toMatch(/hatched|larvae|settled/i)
    renderInRoom(<LifeTable life={carried} />)
    expect(screen.getAllByRole('row')[1]?.textContent).toBe('Mon 9 MarReleased')
  })
})
