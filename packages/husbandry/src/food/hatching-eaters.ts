import type { Random } from '@fryward/live-feed'
import type { Id } from '@fryward/shared'
import { daysBetween, type HusbandryDay } from '../calendar/husbandry-day.ts'
import { findSpecies, type SpeciesProfile } from '../species/index.ts'
import { clutchEggs, clutchIntent } from '../state/clutch-state.ts'
import { hasBegunToFeed } from '../state/larval-diet.ts'
import type { EaterAhead } from './eater-ahead.ts'
import { dateOnDay, eachDay } from './food-days.ts'
import { type ClutchAhead, eatsRotifers, hatchAfterSpawning, raisedShare, type SpawningAhead } from './hatches-ahead.ts'
import { drawSurvival, shareLeft, survivalAhead } from './larvae-ahead.ts'
import { drawn, keptLarvae, lastRotiferDay, type NeedBasis, within } from './need-basis.ts'
import { doubtOf, rotifersWanted } from './rotifer-need.ts'

/** Of larvae not hatched yet: what they want day by day once they hatch in a night. */
function wantedAfterHatch(
  about: NeedBasis,
  { species, larvae, night, survival, hungrier }: Hatched & { survival: number; hungrier: number },
): number[] {
  const { horizon, habits, changedShares } = about
  const volumeL = larvalWaterL(about, species, larvae)
  const lastDay = lastRotiferDay(about, species)
  return eachDay(horizon, (day) => {
    // Day 0 is the morning after the hatch night.
    const life = day - night - 1
    if (!hasBegunToFeed(species, life) || life > lastDay || larvae < 1) return 0
    const changedShare = changedShares[life] ?? 0
    const mouths = {
      volumeL,
      larvae: larvae * shareLeft(life, survival),
      isFirstDay: life === species.feeding.firstFeedDay.value,
      changedShare,
    }
    return hungrier * rotifersWanted(habits, about.appetiteIn(null), mouths)
  })
}

type Hatched = { species: SpeciesProfile; larvae: number; night: number }

// A larval tank with less in it is hard to keep. common practice
const leastWaterL = 5

/** Litres that so many larvae get: as dense as the species allows, and no more than an empty larval tank holds. */
const larvalWaterL = ({ emptyTankL }: NeedBasis, { larvaePerL }: SpeciesProfile, larvae: number): number =>
  Math.min(Math.max(leastWaterL, larvae / larvaePerL.value.to), emptyTankL ?? Number.POSITIVE_INFINITY)

/** About 80 % hatched in a dark night: Fobert et al. 2019 as told by a news summary; the spread is an assumption. */
const hatchShare = { mean: 0.8, sd: 0.1 }
/** Of eggs from clutch to clutch where nobody counted them, as a logarithm. assumption */
const uncountedEggsLogSd = 0.35
/** Of a clutch raised in part, where nobody has said how large a part. assumption */
const partRaised = 0.5

const drawHatchShare = (random: Random): number => within(hatchShare.mean + hatchShare.sd * random.normal(), 0.1, 1)

function drawEggs({ clutchSize }: SpeciesProfile, counted: number | null, random: Random): number {
  const guess = Math.sqrt(clutchSize.value.from * clutchSize.value.to) * Math.exp(uncountedEggsLogSd * random.normal())
  return counted ?? guess
}

/** One of several with their chances, by one uniform number. */
function pick<T extends { probability: number }>(choices: readonly T[], uniform: number): T {
  let sum = 0
  const found = choices.find(({ probability }) => {
    sum += probability
    return sum >= uniform
  })
  return found ?? choices.at(-1)!
}

/** Draws what larvae of a species that hatch in a night will want. */
function hatchedDrawer(about: NeedBasis, species: SpeciesProfile) {
  const survivals = survivalAhead(species.id, about.lived)
  const doubt = doubtOf(about.appetiteIn(null))
  return (hatched: { larvae: number; night: number }, random: Random): number[] => {
    const survival = drawSurvival(survivals, random)
    const hungrier = Math.exp(doubt * random.normal())
    return wantedAfterHatch(about, { ...hatched, species, survival, hungrier })
  }
}

const usualLarvae = (species: SpeciesProfile, eggs: number | null): number =>
  hatchShare.mean * (eggs ?? Math.sqrt(species.clutchSize.value.from * species.clutchSize.value.to))

export function clutchAhead(about: NeedBasis, { clutch, species, nights }: ClutchAhead): EaterAhead {
  const { snapshot, horizon } = about
  const eggs = clutchEggs(snapshot, clutch)
  const part = clutchIntent(snapshot, clutch) === 'raise_part' ? partRaised : 1
  const kept = keptLarvae(about, [clutch.id])
  const drawHatched = hatchedDrawer(about, species)
  const futures = drawn(about, `clutch ${clutch.id}`, (random) => {
    const { date } = pick(nights, random.uniform())
    const larvae = Math.min(kept, drawEggs(species, eggs, random) * drawHatchShare(random) * part)
    return drawHatched({ larvae, night: daysBetween(horizon.today, date) }, random)
  })
  const larvae = Math.round(Math.min(kept, usualLarvae(species, eggs) * part))
  return {
    ...{ id: clutch.id, kind: 'clutch', subjectId: clutch.id, name: clutch.name },
    larvae,
    nights,
    futures,
    fedFrom: [],
  }
}

/** A clutch laid tonight for the sake of the question, which is raised. */
export function spawnsTonight(about: NeedBasis, pairId: Id, today: HusbandryDay): EaterAhead[] {
  const { snapshot, horizon } = about
  const pair = snapshot.pairs.find(({ id }) => id === pairId)
  const species = pair && findSpecies(pair.species)
  const hatch = pair && hatchAfterSpawning(snapshot, pair, today)
  if (!pair || !species || !hatch || !eatsRotifers(pair.species)) return []
  const drawHatched = hatchedDrawer(about, species)
  const futures = drawn(about, `tonight ${pairId}`, (random) => {
    const { nights: night } = pick(hatch, random.uniform())
    const larvae = drawEggs(species, null, random) * drawHatchShare(random)
    return drawHatched({ larvae, night }, random)
  })
  const nights = hatch.map(({ nights: night, probability }) => ({ date: dateOnDay(horizon, night), probability }))
  const larvae = Math.round(usualLarvae(species, null))
  return [
    {
      id: `tonight ${pairId}`,
      kind: 'spawning',
      subjectId: pairId,
      name: pair.name,
      larvae,
      nights,
      futures,
      fedFrom: [],
    },
  ]
}

/** Spawnings whose larvae may hatch within the days that are looked at: two, or more of a pair that spawns every week. */
const spawningsWithin = (days: number, { medianDays }: SpawningAhead['interval']): number =>
  Math.max(2, Math.ceil(days / medianDays))

export function spawningAhead(
  about: NeedBasis,
  { pair, key, name, species, nextDays, interval, hatch }: SpawningAhead,
): EaterAhead[] {
  const raised = raisedShare(about.snapshot)
  const { days } = about.horizon
  const mostSpawnings = spawningsWithin(days, interval)
  const drawHatched = hatchedDrawer(about, species)
  const ahead = drawn(about, `spawning ${key}`, (random) => {
    let spawnDay = pick(nextDays, random.uniform()).day
    return Array.from({ length: mostSpawnings }, () => {
      const night = spawnDay + pick(hatch, random.uniform()).nights
      const larvae = random.uniform() < raised ? drawEggs(species, null, random) * drawHatchShare(random) : 0
      spawnDay += interval.medianDays * Math.exp(interval.logSd * random.normal())
      return {
        night: Math.round(night),
        wanted: drawHatched({ larvae, night: Math.round(night) }, random),
      }
    })
  })
  return Array.from({ length: mostSpawnings }, (_, index): EaterAhead => {
    const hatched = ahead.map((each) => each[index]!.night)
    const chanceOf = (night: number) => hatched.filter((each) => each === night).length / hatched.length
    const nights = eachDay({ days }, (day) => ({ date: dateOnDay(about.horizon, day), probability: chanceOf(day) }))
    return {
      ...{ id: `spawning ${index + 1} ${key}`, kind: 'spawning', subjectId: pair.id, name },
      larvae: Math.round(usualLarvae(species, null)),
      nights: nights.filter(({ probability }) => probability > 0),
      futures: ahead.map((each) => each[index]!.wanted),
      fedFrom: [],
    }
  })
}
