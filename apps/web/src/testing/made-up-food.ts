import { type FoodAnswer, FoodAnswerSchema, type FoodOutlook, FoodOutlookSchema } from '@fryward/shared'
import { newId } from './made-up.ts'

const band = (p50: number) => ({ p10: p50 * 0.6, p50, p90: p50 * 1.5 })
const dates = ['2026-11-25', '2026-11-26', '2026-11-27', '2026-11-28']

/** Four days of a room with two cultures, a batch that eats and a clutch that may hatch tomorrow night; invented. */
export function makeFood(): FoodAnswer & { ids: { batch: string; clutch: string; r1: string; r2: string } } {
  const ids = { batch: newId(), clutch: newId(), r1: newId(), r2: newId() }
  const worry = { date: '2026-11-27', chanceShort: 0.62, eaterIds: [ids.batch], shortMean: 2e5 }
  const days = dates.map((date, day) => ({
    date,
    gives: [{ cultureId: ids.r1, eaterId: ids.batch, volumeL: 1.2, animals: day < 2 ? 3e5 : 2e5 }],
    cultures: [
      { id: ids.r1, densityPerMl: 240, fedL: 1.2, spareL: 0.5 },
      { id: ids.r2, densityPerMl: 90, fedL: 0, spareL: 0 },
    ],
    eaters: [
      { id: ids.batch, wanted: 3e5, got: day < 2 ? 3e5 : 2e5, chanceShort: day < 2 ? 0 : 0.62 },
      { id: ids.clutch, wanted: day < 2 ? 0 : 1e5, got: 0, chanceShort: 0 },
    ],
    ...{ wanted: band(3e5), couldGive: band(day < 2 ? 6e5 : 2e5), chanceShort: day < 2 ? 0 : 0.62 },
    ...{ short: { mean: day < 2 ? 0 : 1e5, p90: 2e5 }, nauplii: 0 },
  }))
  const culture = (id: string, name: string, standing: 'gives' | 'backup') => ({
    ...{ id, cultureId: id, name, volumeL: 18, standing, sharesCausesWith: [] },
  })
  const eaters = [
    { id: ids.batch, kind: 'larval_batch', subjectId: ids.batch, name: 'B1', larvae: 200, nights: [] },
    {
      ...{ id: ids.clutch, kind: 'clutch', subjectId: ids.clutch, name: 'Clutch 3', larvae: 240 },
      nights: [
        { date: '2026-11-26', probability: 0.7 },
        { date: '2026-11-27', probability: 0.3 },
      ],
    },
  ]
  const answer = FoodAnswerSchema.parse({
    outlook: {
      ...{
        days,
        eaters,
        worry,
        shortTotal: 2e5,
        backupsUsed: [],
        gaps: ['R4: count it, and what it can give follows.'],
      },
      cultures: [culture(ids.r1, 'R1', 'gives'), culture(ids.r2, 'R2', 'backup')],
    },
    cures: [
      {
        change: { kind: 'use_backups' },
        worry: null,
        shortTotal: 0,
        days: days.map((day) => ({ ...day, couldGive: band(9e5) })),
      },
      { change: { kind: 'leave_clutch', clutchId: ids.clutch }, worry, shortTotal: 1e5, days },
    ],
  })
  return { ...answer, ids }
}

/** The same with a cone whose nauplii the batch eats on the second day, and wants more of. */
export function withHatch({ outlook, ids }: ReturnType<typeof makeFood>): FoodOutlook {
  const artemia = {
    gives: [{ hatchId: 'hatch', batchId: ids.batch, nauplii: 16_000 }],
    ...{ batches: [{ batchId: ids.batch, name: 'B1', wanted: 40_000, got: 16_000 }], toHatch: 24_000 },
  }
  return FoodOutlookSchema.parse({
    ...outlook,
    days: outlook.days.map((day, index) => (index === 1 ? { ...day, nauplii: 40_000, artemia } : day)),
    hatches: [
      {
        ...{ id: 'hatch', cultureId: newId(), name: 'H1', standing: 'under_way', nauplii: 16_000 },
        ...{ readyAt: '2026-11-26T07:00:00.000Z', goodUntil: '2026-11-27T07:00:00.000Z' },
      },
    ],
  })
}
