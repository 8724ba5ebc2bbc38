import type { FoodOutlook } from '@fryward/shared'
import { hatchStandingWords, type NumberVoice, sayNumber } from '@fryward/words'
import type { Ends, FlowDay } from './FlowChart.tsx'

export type Flowing = { day: FlowDay; ends: Ends }

/** The hatches of a day and who eats of them, in the shape of cultures and eaters; null where nobody eats Artemia. */
export function artemiaFlow(
  { hatches = [] }: FoodOutlook,
  { artemia }: FoodOutlook['days'][number],
  voice: NumberVoice,
): Flowing | null {
  if (!artemia || artemia.batches.length === 0) return null
  const { gives, batches } = artemia
  const givenBy = (id: string) =>
    gives.filter(({ hatchId }) => hatchId === id).reduce((sum, { nauplii }) => sum + nauplii, 0)
  return {
    day: {
      gives: gives.map(({ hatchId, batchId, nauplii }) => {
        return { cultureId: hatchId, eaterId: batchId, volumeL: 0, animals: nauplii }
      }),
      cultures: [],
      eaters: batches.map(({ batchId, wanted, got }) => ({ id: batchId, wanted, got, chanceShort: 0 })),
    },
    ends: {
      // A hatch is food for a day: on others it is not there.
      cultures: hatches
        .filter(({ id }) => givenBy(id) > 0)
        .map(({ id, name, standing }) => {
          const note = `gives ${sayNumber(givenBy(id), voice)}, ${hatchStandingWords[standing]}`
          return { id, name, note, hatch: standing }
        }),
      eaters: batches.map(({ batchId, name }) => ({ id: batchId, name, note: '' })),
    },
  }
}
