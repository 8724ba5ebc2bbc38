// Apart from the frame, so that a page knows how high the line will be before its script (and d3) has come.

/** Heights in px of what stands one under the other, and of one row of stages or of food. */
export const lifeRow = 19
const heights = { numbers: 150, losses: 34, temperature: 46, dates: 24, gap: 12 } as const
export const lifeMargin = { left: 104, right: 14, top: 6 } as const

export type LifeTops = {
  stages: number
  numbers: number
  floor: number
  losses: number
  lossesEnd: number
  food: number
  temperature: number
  temperatureEnd: number
  dates: number
  height: number
}

/** Where each lane begins, by how many rows of stages and of food there are. */
export function lifeTops({ stages, foods }: { stages: number; foods: number }): LifeTops {
  const numbers = lifeMargin.top + stages * lifeRow + heights.gap
  const floor = numbers + heights.numbers
  const losses = floor + heights.gap
  const lossesEnd = losses + heights.losses
  const food = lossesEnd + heights.gap
  const temperature = food + foods * lifeRow + heights.gap
  const temperatureEnd = temperature + heights.temperature
  const dates = temperatureEnd + heights.gap
  return {
    ...{ stages: lifeMargin.top, numbers, floor, losses, lossesEnd, food, temperature, temperatureEnd, dates },
    height: dates + heights.dates,
  }
}
