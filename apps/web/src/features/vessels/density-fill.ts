import type { Culture, CultureKind } from '@fryward/shared'

/**
 * Animals (cells for microalgae) per mL that a culture in good use stands at, only for how full its drawing looks: a
 * fed batch culture of rotifers and newly hatched Artemia, copepods, green water in a bag. from memory
 */
const usualPerMl: Record<CultureKind, number> = {
  rotifer: 300,
  copepod: 5,
  microalgae: 2e6,
  artemia_hatch: 150,
}

/** The density by now against what such a culture usually stands at: 1 is usual; null while nobody has counted. */
export const fillAgainstUsual = ({ kind, densityNow }: Culture): number | null =>
  densityNow === null ? null : densityNow.perMl / usualPerMl[kind]
