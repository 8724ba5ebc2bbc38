/** Thermometers sold today read ITS-90; the sea-water formulas of 1978-1980 were fitted on IPTS-68. */
export type TemperatureScale = 'ITS-90' | 'IPTS-68'

/**
 * Celsius temperature on IPTS-68, which PSS-78 and EOS-80 take.
 * t68 = 1.00024 t90: Saunders 1990, WOCE Newsletter 10 (the factor that TEOS-10 uses).
 */
export function toT68C(temperatureC: number, scale: TemperatureScale = 'ITS-90'): number {
  return scale === 'ITS-90' ? 1.00024 * temperatureC : temperatureC
}
