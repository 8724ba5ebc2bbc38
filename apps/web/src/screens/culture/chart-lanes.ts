// Apart from the frame, so that the page knows how high the chart will be before its script (and d3) has come.

/** Heights in px from top to bottom: harvests hang, density stands, the egg ratio lies under it, dates last. */
export const lanes = { harvest: 46, density: 190, eggs: 44, dates: 26, gap: 10 } as const
export const chartHeight = lanes.harvest + lanes.density + lanes.eggs + lanes.dates + lanes.gap * 3
export const margin = { left: 46, right: 12 } as const

export const tops = {
  harvest: 0,
  density: lanes.harvest + lanes.gap,
  eggs: lanes.harvest + lanes.density + lanes.gap * 2,
  dates: lanes.harvest + lanes.density + lanes.eggs + lanes.gap * 2,
} as const
