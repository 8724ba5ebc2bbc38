import {
  type CareKind,
  type SurvivalComparison,
  SurvivalComparisonSchema,
  type SurvivalRow,
  SurvivalRowSchema,
} from '@fryward/shared'
import { screen, waitFor, within } from '@testing-library/react'
import { describe, expect, it } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { makeRoom, newId } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { beAsWideAs } from '@/testing/wide-as.ts'
import { CurvesChart } from './CurvesChart.tsx'
import { SurvivalPage } from './SurvivalPage.tsx'

beAsWideAs(360)

const row = (name: string, care: CareKind = 'nest'): SurvivalRow =>
  SurvivalRowSchema.parse({
    ...{ id: newId(), clutches: [{ id: newId(), kind: 'clutch', name }] },
    ...{ pairs: [{ id: newId(), kind: 'pair', name: 'Copper pair' }], species: 'amphiprion-ocellaris', care },
    ...{ tanks: [], protocol: [], cultures: [{ id: newId(), kind: 'culture', name: 'R1' }] },
    ...{ spawnedOn: '2026-03-01', bornOn: '2026-03-09', stages: [], missing: 5, numberNow: 0, mixedOn: '2026-04-10' },
    losses: [
      { cause: 'thin', number: 12 },
      { cause: null, number: 2 },
    ],
  })
const group = (key: string, share: number): SurvivalComparison['groups'][number] => ({
  ...{ key, name: key, clutches: 4, animals: 400, deaths: 57, followedToDay: 10, atRisk: [400, 343], medianDays: null },
  deathsAgainstExpected: 0.5,
  curve: [{ ageDays: 5, atRisk: 400, deaths: 57, share, lower: share - 0.03, upper: share + 0.03 }],
})
const compared = SurvivalComparisonSchema.parse({
  ...{ by: 'pair', cares: ['nest'], days: [0, 10], conclusion: 'differ', best: 'R1', worst: 'R2', hasFewDeaths: false },
  groups: [group('R1', 0.86), group('R2', 0.28)],
  byAnimal: { chiSquare: 90, degreesOfFreedom: 1, pValue: 1e-12 },
  byClutch: { pValue: 2 / 70, smallestPValue: 2 / 70, arrangements: 70, isExact: true },
  leftOut: [{ reason: 'not_counted', clutches: 3 }],
})

function open({ rows = [row('Copper, 1 March')], locale = 'en-GB' as const, cares = compared.cares } = {}) {
  answerApi({ getSurvival: () => ({ rows }), compareSurvival: () => ({ ...compared, cares }) })
  return renderInRoom(<SurvivalPage />, { room: makeRoom({ locale }) })
}

describe('the survival page', () => {
  it('tells what may be concluded, what not, and who was left out', async () => {
    open()
    await screen.findByText(/The young of R1 lived longer than those of R2: .+ \(p = 0\.029, by whole clutches\)\./)
    expect(screen.getByText(/^It does not say why/)).toBeDefined()
    expect(screen.getByText('Left out: 3 not counted again since the hatch.')).toBeDefined()
  })

  it('draws a step curve for each group with its letter, and those at risk under their days', async () => {
    renderInRoom(<CurvesChart compared={compared} groups={compared.groups} sentence="R1 did better." />)
    const chart = await waitFor(() => screen.getByRole('img', { name: 'Survival curves. R1 did better.' }))
    const texts = [...chart.querySelectorAll('text')].map(({ textContent }) => textContent)
    expect(texts.filter((text) => text === 'A' || text === 'B')).toEqual(['A', 'B', 'A', 'B'])
    expect(texts.filter((text) => text === '343')).toHaveLength(2)
    const lines = [...chart.querySelectorAll('path[class*=line]')].map((path) => path.getAttribute('d') ?? '')
    expect(lines).toHaveLength(2)
    // Everybody until day 5, then a step down, then level to the last day.
    const ys = [...(lines[0] ?? '').matchAll(/,([\d.]+)/g)].map(([, y]) => Number(y))
    expect(ys[0]).toBe(8)
    expect(Math.max(...ys)).toBeCloseTo(8 + 200 * 0.14, 6)
  })

  it('has the same in figures, whatever the chart shows', async () => {
    open()
    const table = await screen.findByRole('region', { name: 'The groups in figures' })
    expect(
      within(table).getByRole('row', { name: /^A: R1 86% \(83 to 89%\) on day 10 4 400 57 not reached$/ }),
    ).toBeDefined()
  })

  it('tells each clutch with its pair, what it ate from, and what took most', async () => {
    open()
    const article = await screen.findByRole('article', { name: 'Copper, 1 March' })
    expect(article.textContent).toContain(
      'Copper pair, laid Sun 1 Mar, fed from R1; put together with others Fri 10 Apr',
    )
    expect(article.textContent).toContain('Found dead: 12 thin, 2 of no known cause. Missing at a count: 5.')
  })

  it('tells of a release where all are carried, and of both where some are', async () => {
    const { leave } = open({ rows: [row('Silver, 1 March', 'mouth')], cares: ['mouth'] })
    const article = await screen.findByRole('article', { name: 'Silver, 1 March' })
    expect(article.textContent).toContain('Copper pair, carried since Sun 1 Mar')
    const chart = await waitFor(() => screen.getByRole('img', { name: /^Survival curves/ }))
    expect(chart.textContent).toContain('days since the release')
    expect(screen.getByText('Left out: 3 not counted again since the release.')).toBeDefined()
    expect(screen.getByText(/^Share alive from the day of the release on/)).toBeDefined()
    expect(document.body.textContent).not.toMatch(/hatch|larva/i)
    leave()
    open({ cares: ['nest', 'mouth'] })
    expect(await screen.findByText('Left out: 3 not counted again since the hatch or release.')).toBeDefined()
  })

  it('goes into a spreadsheet with the decimal mark of the room', async () => {
    open({ locale: 'de-DE' as never })
    const link = await screen.findByRole('link', { name: 'Download for a spreadsheet' })
    expect(link.getAttribute('href')).toMatch(/\/survival\.csv\?decimal=comma$/)
  })

  it('says where clutches come from while there is none', async () => {
    open({ rows: [] })
    await screen.findByText(/^When a pair lays, record the eggs on its page/)
  })
})
