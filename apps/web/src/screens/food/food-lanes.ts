// Apart from the frame, so that the page knows how high the chart will be before its script (and d3) has come.

/** Heights in px from top to bottom: moons, cones, then the two bands, then dates. */
export const lanes = { moons: 40, cones: 30, bands: 220, dates: 26, gap: 8 } as const
export const chartHeight = lanes.moons + lanes.cones + lanes.bands + lanes.dates + lanes.gap
export const margin = { left: 64, right: 14 } as const
