import { countDensity } from './count-density.ts'
import type { FactEffects } from './effects.ts'
import { headsOf } from './heads.ts'

/** Counted animals: heads start a book of animals anew, a sample of a culture says how dense it is. */
export const count: FactEffects<'count'> = {
  book: ({ subjectId, data }) => {
    // A sample of larvae is no number of the whole.
    const isOfWhole = data.of !== 'larvae' || data.volumeMl === undefined
    return isOfWhole ? [{ subjectId, way: 'count', number: headsOf(data), of: data.of }] : []
  },
  culture: ({ data: { of, animals, volumeMl, dilution, eggs, females } }) => {
    if (of !== 'culture' || volumeMl === undefined) return null
    const { densityPerMl, lowerPerMl, upperPerMl, animalsCounted } = countDensity({ animals, volumeMl, dilution })
    const eggRatio = eggs === undefined || females === undefined ? null : eggs / females
    return { way: 'counted', densityPerMl, lowerPerMl, upperPerMl, animalsCounted, eggRatio, females: females ?? null }
  },
}
