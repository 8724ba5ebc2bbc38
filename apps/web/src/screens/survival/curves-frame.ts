import type { ComparedGroup } from '@fryward/shared'
import { scaleLinear } from 'd3-scale'
import { curvesMargin, curvesTops } from './curves-lanes.ts'

export type CurvePlace = { ageDays: number; share: number; lower: number; upper: number }
export type CurvesFrame = {
  x: (ageDays: number) => number
  y: (share: number) => number
  shares: number[]
  right: number
}

/** Scales of the chart: days of age to x, shares alive from 0 to 1 to y, in px. */
export function curvesFrame(groups: readonly ComparedGroup[], width: number): CurvesFrame {
  const right = width - curvesMargin.right
  const last = Math.max(1, ...groups.map(({ followedToDay }) => followedToDay))
  const x = scaleLinear().domain([0, last]).range([curvesMargin.left, right])
  const y = scaleLinear().domain([0, 1]).range([curvesTops.floor, curvesTops.ceiling])
  return { x: (age) => x(age), y: (share) => y(share), shares: [0, 0.25, 0.5, 0.75, 1], right }
}

/** A group's steps from everybody on day 0 to the last day on which any were watched. */
export function placesOf({ curve, followedToDay }: ComparedGroup): CurvePlace[] {
  const all = { ageDays: 0, share: 1, lower: 1, upper: 1 }
  const steps = curve.map(({ ageDays, share, lower, upper }) => ({ ageDays, share, lower, upper }))
  return [all, ...steps, { ...(steps.at(-1) ?? all), ageDays: followedToDay }]
}
