import type { EggStage, Instant, Night } from '@fryward/shared'
import { rememberedByContent } from '../memo/remembered.ts'
import { factsOf } from '../snapshot/facts-of.ts'
import type { RoomSnapshot, SnapshotClutch } from '../snapshot/room-snapshot.ts'
import { getSpecies, isBrooder } from '../species/index.ts'
import { brooderRelease, type Forecast, hatchNights, type PastDuration, pastIncubation } from '../thermal/index.ts'
import { tankOf } from './larval-diet.ts'
import { isOut } from './seen-out.ts'
import { litRoom } from './tank-light.ts'
import { temperaturesOf } from './water-reads.ts'

// The days of a room ask for the same forecasts after every sign-off.
const forecasts = rememberedByContent<Forecast>(1000)
const incubations = rememberedByContent<PastDuration>(1000)

/** The egg colours of the wire as the stages that species profiles know. */
const stageIds: Record<EggStage, string> = { orange: 'orange', dark: 'black', eyed: 'eyes', silver: 'silver' }

/**
 * When a clutch may hatch (or a brooding parent release), from its spawning, the tank's measured temperatures (its set
 * point elsewhere), the pair's earlier clutches and what was seen of the eggs up to `at`.
 */
export function clutchForecast(
  snapshot: RoomSnapshot,
  { clutch, at }: { clutch: SnapshotClutch; at: Instant },
): Forecast {
  const species = getSpecies(clutch.species)
  const input = {
    spawnedAt: clutch.spawnedAt,
    ...tankWarmth(snapshot, clutch.tankId),
    lightsOff: lightsOffOver(snapshot, clutch.tankId),
    species,
    pairHistory: pairHistory(snapshot, clutch),
  }
  const looks = factsOf(snapshot, 'observation', clutch.id).filter(
    (fact) => fact.at > clutch.spawnedAt && fact.at <= at && !isOut(fact),
  )
  const lastLook = looks.at(-1)?.at
  // A species id stands for its whole profile; everything else that the forecast rests on is in the question.
  const question = { ...input, species: clutch.species, lastLook }
  if (isBrooder(species.care.value))
    return forecasts(question, () => brooderRelease({ ...input, notReleasedBy: lastLook }))
  const known = new Set(species.clutchStages.map((stage) => stage.id))
  const seenStage = looks.flatMap((fact) => {
    const stage = fact.data.eggStage ? stageIds[fact.data.eggStage] : undefined
    return stage && known.has(stage) ? [{ stage, at: fact.at }] : []
  })
  return forecasts({ ...question, seenStage }, () =>
    hatchNights({ ...input, notHatchedBy: lastLook, seenStage: seenStage.length > 0 ? seenStage : undefined }),
  )
}

/** The nights that matter on a screen: those with at least one chance in a thousand. */
export function clutchNights(snapshot: RoomSnapshot, input: { clutch: SnapshotClutch; at: Instant }): Night[] {
  return clutchForecast(snapshot, input)
    .nights.filter((night) => night.probability >= 0.001)
    .map(({ date, probability }) => ({ date, probability }))
}

/** Eggs hatch by the evening that falls over their tank. */
function lightsOffOver(snapshot: RoomSnapshot, tankId: string) {
  const { lightsOffAt, timeZone } = litRoom(snapshot, tankOf(snapshot, { tankId }))
  return { time: lightsOffAt, timeZone }
}

const tankWarmth = (snapshot: RoomSnapshot, tankId: string) => ({
  temperatures: temperaturesOf(snapshot, tankId),
  setPointC: snapshot.tanks.find((tank) => tank.id === tankId)?.temperatureC,
})

/** Earlier clutches of the same pair that are known to have hatched. */
function pairHistory(snapshot: RoomSnapshot, clutch: SnapshotClutch): PastDuration[] {
  return snapshot.clutches
    .filter((other) => other.pairId === clutch.pairId && other.id !== clutch.id && other.spawnedAt < clutch.spawnedAt)
    .flatMap((other) => {
      const hatch = factsOf(snapshot, 'hatch', other.id)[0]
      if (!hatch) return []
      const past = {
        spawnedAt: other.spawnedAt,
        hatchedOn: hatch.data.hatchedOn,
        ...tankWarmth(snapshot, other.tankId),
        lightsOff: lightsOffOver(snapshot, other.tankId),
        species: clutch.species,
      }
      return [incubations(past, () => pastIncubation(past))]
    })
}
