import type { FactEffects } from './effects.ts'

/** Animals put into a culture, from a parent or bought in. */
export const inoculation: FactEffects<'inoculation'> = {
  culture: ({ data: { densityPerMl, animals } }, { volumeL }) => {
    if (densityPerMl !== undefined) return { way: 'added', densityPerMl }
    return animals === undefined ? null : { way: 'added', densityPerMl: animals / (volumeL * 1000) }
  },
}
