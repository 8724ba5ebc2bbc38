import { CultureOutlookSchema } from '@fryward/shared'
import { cleanup, screen, waitFor } from '@testing-library/react'
import { describe, expect, it } from 'vitest'
import { newId } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { beAsWideAs } from '@/testing/wide-as.ts'
import { chartHeight, lanes, tops } from './chart-lanes.ts'
import { DensityChart } from './DensityChart.tsx'

beAsWideAs(380)

const at = (day: number) => `2026-11-${day}T08:00:00.000Z`
const count = (day: number, densityPerMl: number) => ({
  ...{ factId: newId(), at: at(day), densityPerMl, lowerPerMl: densityPerMl * 0.9, upperPerMl: densityPerMl * 1.1 },
  eggRatio: 0.2,
})
const point = (day: number, p50: number) => ({
  ...{ at: at(day), p10: p50 * 0.7, p25: p50 * 0.85, p50, p75: p50 * 1.15, p90: p50 * 1.3 },
})
const outlook = CultureOutlookSchema.parse({
  ...{ counts: [count(20, 200), count(21, 250), count(22, 300)], behind: [point(20, 200), point(22, 300)] },
  ...{ ahead: [point(22, 300), point(23, 330), point(24, 350)], harvests: [] },
  ...{ growthPerDay: 0.2, harvestSharePerDay: 0, sustainableSharePerDay: null, sentence: 'Growing.' },
})

/** The points of a path, as drawn. */
const pointsOf = (d: string) => [...d.matchAll(/([\d.]+),([\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const)

async function draw({ hasEggs = true } = {}) {
  renderInRoom(<DensityChart outlook={outlook} timeZone="Europe/Lisbon" hasEggs={hasEggs} />)
  const chart = await waitFor(() => screen.getByRole('img'))
  const paths = [...chart.querySelectorAll('path')].map((path) => pointsOf(path.getAttribute('d') ?? ''))
  return { chart, paths, dots: [...chart.querySelectorAll('circle')] }
}

describe('the chart of a culture', () => {
  it('is one picture, named by its sentence', async () => {
    const { chart } = await draw()
    expect(chart.getAttribute('aria-label')).toBe('Density chart. Growing.')
    expect(chart.getAttribute('height')).toBe(String(chartHeight))
  })

  it('has a lane for eggs where there are any to be carried', async () => {
    expect((await draw()).chart.textContent).toContain('eggs')
    cleanup()
    expect((await draw({ hasEggs: false })).chart.textContent).not.toContain('eggs')
  })

  it('draws each count where it was counted, higher for more, inside its lane', async () => {
    const { dots } = await draw()
    const [xs, ys] = ['cx', 'cy'].map((name) => dots.map((dot) => Number(dot.getAttribute(name))))
    expect(xs).toEqual(xs?.toSorted((a, b) => a - b))
    expect(ys).toEqual(ys?.toSorted((a, b) => b - a))
    expect(Math.min(...(ys ?? []))).toBeGreaterThan(tops.density)
    expect(Math.max(...(ys ?? []))).toBeLessThan(tops.density + lanes.density)
  })

  it('draws the band ahead around its middle: up one edge and back along the other', async () => {
    const { paths } = await draw()
    const [, wide, narrow, , middle] = paths
    expect(wide).toHaveLength(6)
    expect(narrow).toHaveLength(6)
    expect(middle).toHaveLength(3)
    const span = (path: typeof wide) => {
      const ys = (path ?? []).map(([, y]) => y)
      return Math.max(...ys) - Math.min(...ys)
    }
    expect(span(wide)).toBeGreaterThan(span(narrow))
    for (const [x, y] of middle ?? []) {
      const edges = (narrow ?? []).filter(([edgeX]) => edgeX === x).map(([, edgeY]) => edgeY)
      expect(y).toBeLessThan(Math.max(...edges))
      expect(y).toBeGreaterThan(Math.min(...edges))
    }
  })
})
