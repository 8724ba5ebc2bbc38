// Apart from the frame, so that the page knows how high the chart will be before its script (and d3) has come.

/** More lines than this no eye can follow. */
export const mostDrawn = 5

/** Heights in px: the curves, their days, and a row of numbers at risk for each group. */
const heights = { curves: 200, days: 26, row: 20, heading: 20 } as const
export const curvesMargin = { left: 46, right: 34, top: 8 } as const
export const curvesTops = {
  ceiling: curvesMargin.top,
  floor: curvesMargin.top + heights.curves,
  days: curvesMargin.top + heights.curves + heights.days,
  atRisk: curvesMargin.top + heights.curves + heights.days + heights.heading,
} as const
export const riskRow = heights.row
export const curvesHeight = (groups: number): number => curvesTops.atRisk + groups * riskRow + 6

/** What stands for a group in the chart and in the table. */
export const letterOf = (index: number): string => String.fromCharCode('A'.charCodeAt(0) + index)
