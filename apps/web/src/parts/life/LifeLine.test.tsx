import { type ClutchLife, ClutchLifeSchema } from '@fryward/shared'
import { screen, waitFor } from '@testing-library/react'
import { describe, expect, it } from 'vitest'
import { newId } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { beAsWideAs } from '@/testing/wide-as.ts'
import { LifeLine } from './LifeLine.tsx'
import { LifeTable } from './LifeTable.tsx'
import { lifeMargin } from './life-lanes.ts'

beAsWideAs(400)

const thing = (kind: 'clutch' | 'pair' | 'culture' | 'tank', name: string) => ({ id: newId(), kind, name })
const tank = thing('tank', 'L1')
const stage = (name: string, on: string | null) => ({
  ...{ stage: name, status: on === null ? 'not_yet' : 'reached', on, ageDays: null, atLeast: 60, atMost: 60 },
  ...{ interval: null, fromStage: null, lost: null, share: null, ofFirst: null, isAboveBook: false },
})
const numbers = [80, 80, 72, 60].map((number, ageDays) => ({
  ...{ on: `2026-03-${String(9 + ageDays).padStart(2, '0')}`, ageDays },
  ...{ atLeast: ageDays === 3 ? 60 : number - 12, atMost: number, isCounted: ageDays === 3 },
}))
const life: ClutchLife = ClutchLifeSchema.parse({
  row: {
    ...{
      id: newId(),
      clutches: [thing('clutch', 'C1')],
      pairs: [thing('pair', 'P1')],
      species: 'amphiprion-ocellaris',
    },
    ...{
      tanks: [tank],
      cultures: [],
      protocol: ['rotifers'],
      spawnedOn: '2026-03-01',
      bornOn: '2026-03-09',
      losses: [],
      missing: 0,
    },
    ...{ numberNow: 60, mixedOn: null, stages: [stage('laid', '2026-03-01'), stage('hatched', '2026-03-09')] },
  },
  ...{ today: '2026-03-12', numbers, events: [], vessels: [] },
  expected: [{ stage: 'hatched', from: '2026-03-08', to: '2026-03-10' }],
  departures: [{ on: '2026-03-11', ageDays: 2, kind: 'loss', number: 8, cause: 'thin' }],
  meals: [
    { food: 'rotifers', culture: thing('culture', 'R1'), firstOn: '2026-03-09', lastOn: '2026-03-12', times: 12 },
    { food: 'dry', culture: null, firstOn: '2026-03-11', lastOn: '2026-03-12', times: 2 },
  ],
  temperatures: [{ at: '2026-03-10T09:00:00.000Z', temperatureC: 26.4, tankId: tank.id }],
  setPoints: [{ tank, temperatureC: 26.5 }],
})

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
})
