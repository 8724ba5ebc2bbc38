// Apart from the frame, so that the page knows how high the chart will be before its script (and d3) has come.

/** Heights in px from top to bottom: densities, then the feeds, dates last. */
const lanes = { density: 170, feeds: 22, dates: 24, gap: 8 } as const
export const preyChartHeight = lanes.density + lanes.feeds + lanes.dates + lanes.gap * 2
export const preyMargin = { left: 40, right: 12, top: 8 } as const
export const preyTops = {
  floor: lanes.density,
  feeds: lanes.density + lanes.gap,
  feedsEnd: lanes.density + lanes.gap + lanes.feeds,
  dates: lanes.density + lanes.feeds + lanes.gap * 2,
} as const
