import type { Culture, CultureOutlook } from '@fryward/shared'

const mlPerL = 1000

/**
 * What a daily share of the vessel comes to: litres, and animals at the density expected on average over the days
 * ahead (the middle of the forecast); null animals where nothing can be said ahead.
 */
export function dailyTake({
  culture,
  outlook,
  share,
}: {
  culture: Pick<Culture, 'volumeL'>
  outlook: Pick<CultureOutlook, 'ahead'>
  share: number
}): { volumeL: number; animals: number | null } {
  const volumeL = culture.volumeL * share
  if (outlook.ahead.length === 0) return { volumeL, animals: null }
  const meanPerMl = outlook.ahead.reduce((sum, point) => sum + point.p50, 0) / outlook.ahead.length
  return { volumeL, animals: volumeL * mlPerL * meanPerMl }
}
