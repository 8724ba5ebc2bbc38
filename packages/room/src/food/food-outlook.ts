import { addDays, type FoodAhead } from '@fryward/husbandry'
import type { Band, FoodPlan, Tried, TriedDay } from '@fryward/planner'
import type { FoodOutlook } from '@fryward/shared'

type FoodDay = FoodOutlook['days'][number]

/** A plan of a room's food as it goes over the wire: dates for days, and no more digits than anybody measures. */
export function foodOutlook(ahead: FoodAhead, plan: FoodPlan): FoodOutlook {
  const { cultures, eaters, pairs, gaps } = ahead
  return {
    days: plan.days.map((_, day) => dayOf(ahead, plan, day)),
    cultures: cultures.map(({ id, culture, name, volumeL, standing, sharesCausesWith }) => ({
      ...{ id, cultureId: culture?.id ?? null, name, volumeL: measured(volumeL), standing, sharesCausesWith },
    })),
    eaters: eaters.map(({ id, kind, subjectId, name, larvae, nights }) => {
      const seen = nights.filter(({ probability }) => probability >= leastChance)
      const said = seen.map(({ date, probability }) => ({ date, probability: measured(probability) }))
      return { id, kind, subjectId, name, larvae, nights: said }
    }),
    hatches: ahead.artemia.hatches.map(({ vessel, nauplii, ...hatch }) => {
      return { ...hatch, cultureId: vessel.id, name: vessel.name, nauplii: measured(nauplii) }
    }),
    pairs,
    worry: worryOf(ahead, plan),
    shortTotal: measured(plan.tried?.days.reduce((sum, { short }) => sum + short.mean, 0) ?? plan.shortfall),
    backupsUsed: plan.lastResorts,
    gaps,
  }
}

// A night less likely than one in two hundred is not drawn.
const leastChance = 0.005

/** Three digits: more are known of no count. */
const measured = (value: number): number => Number(value.toPrecision(3))
const measuredBand = ({ p10, p50, p90 }: Band): Band => ({ p10: measured(p10), p50: measured(p50), p90: measured(p90) })

const none: Band = { p10: 0, p50: 0, p90: 0 }

function dayOf(ahead: FoodAhead, { days, tried }: FoodPlan, day: number): FoodDay {
  const { gives, cultures, eaters } = days[day]!
  const trial: TriedDay | undefined = tried?.days[day]
  const [band] = tried?.bands ?? []
  return {
    date: addDays(ahead.today, day),
    gives: gives
      .filter(({ litres }) => litres >= leastLitres)
      .map(({ cultureId, eaterId, litres, animals }) => ({
        ...{ cultureId, eaterId, volumeL: measured(litres), animals: measured(animals) },
      })),
    cultures: cultures.map(({ id, animals, fedL, spareL }, index) => ({
      id,
      densityPerMl: measured(animals / (ahead.cultures[index]!.volumeL * 1000)),
      fedL: measured(fedL),
      spareL: measured(spareL),
    })),
    eaters: eaters.map(({ id, wanted, got }, index) => {
      return { id, wanted: measured(wanted), got: measured(got), chanceShort: measured(trial?.chances[index] ?? 0) }
    }),
    wanted: measuredBand(band?.wanted[day] ?? none),
    couldGive: measuredBand(band?.couldGive[day] ?? none),
    chanceShort: measured(trial?.chance ?? 0),
    short: { mean: measured(trial?.short.mean ?? 0), p90: measured(trial?.short.p90 ?? 0) },
    ...artemiaOf(ahead, day),
  }
}

function artemiaOf({ artemia }: FoodAhead, day: number): Pick<FoodDay, 'nauplii' | 'artemia'> {
  const { gives, batches } = artemia.days[day]!
  const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0)
  return {
    nauplii: measured(sum(batches.map(({ wanted }) => wanted))),
    artemia: {
      gives: gives.map(({ nauplii, ...give }) => ({ ...give, nauplii: measured(nauplii) })),
      batches: batches.map(({ wanted, got, ...batch }) => {
        return { ...batch, wanted: measured(wanted), got: measured(got) }
      }),
      toHatch: measured(sum(batches.map(({ wanted, got }) => wanted - got))),
    },
  }
}

// A millilitre is the least that a syringe of the room measures.
const leastLitres = 0.001

export function worryOf({ today, eaters }: FoodAhead, { tried }: Pick<FoodPlan, 'tried'>): FoodOutlook['worry'] {
  const day = tried?.firstDayOfWorry ?? null
  if (tried === null || day === null) return null
  const { chance, chances, short } = tried.days[day]!
  return {
    date: addDays(today, day),
    chanceShort: measured(chance),
    eaterIds: likeliestShort(chances).map((index) => eaters[index]!.id),
    shortMean: measured(short.mean),
  }
}

/** Those that are nearly as likely to fall short as the likeliest. */
function likeliestShort(chances: Tried['days'][number]['chances']): number[] {
  const most = Math.max(...chances)
  return chances.flatMap((chance, index) => (chance > 0 && chance >= most / 2 ? [index] : []))
}
