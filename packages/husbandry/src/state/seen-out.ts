import type { PlainDate } from '@fryward/shared'
import { addDays, type HusbandryDay } from '../calendar/husbandry-day.ts'
import type { FactOf } from '../facts/fact.ts'
import type { RoomSnapshot, SnapshotClutch } from '../snapshot/room-snapshot.ts'
import { dateOf, factsUntil } from './day-facts.ts'
import { tankOf } from './larval-diet.ts'
import { litDay } from './tank-light.ts'

/** A look that found larvae, or no eggs any more: it says nothing of eggs that have not hatched yet. */
export const isOut = ({ data }: FactOf<'observation'>): boolean =>
  data.signs.includes('larvae_out') || data.signs.includes('no_eggs')

const tellsOfEggs = (fact: FactOf<'observation'>): boolean =>
  isOut(fact) || fact.data.signs.includes('eggs_seen') || fact.data.eggStage !== undefined

/** The night in which a clutch was seen to be out, by the last look that tells; null while it was not. */
export function nightSeenOut(snapshot: RoomSnapshot, clutch: SnapshotClutch, day: HusbandryDay): PlainDate | null {
  const looks = factsUntil(snapshot, 'observation', { subjectId: clutch.id, until: day.endsAt })
  const last = looks.findLast((fact) => fact.at > clutch.spawnedAt && tellsOfEggs(fact))
  if (!last || !isOut(last)) return null
  const date = dateOf(snapshot, last.at)
  return last.at >= litDay(snapshot, tankOf(snapshot, clutch), date).lightsOffAt ? date : addDays(date, -1)
}
