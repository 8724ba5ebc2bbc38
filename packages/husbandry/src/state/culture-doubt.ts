import type { Sign } from '@fryward/shared'
import { addHours } from '../calendar/elapsed.ts'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import type { FactOf } from '../facts/fact.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { factsUntil } from './day-facts.ts'

// Slow swimming shows within minutes of trouble (Snell et al. 1987); smell and sinking likewise: common practice.
const doubtSigns: readonly Sign[] = ['swimming_slow', 'sinking', 'clumping', 'bad_smell']
const wellSigns: readonly Sign[] = ['swimming_well', 'all_well']
// As long as signs ask for a second look; a look that finds all well ends it sooner. common practice
const signsSpeakForHours = 24

const remembered = rememberedBySnapshot<FactOf<'observation'> | null>()

/**
 * The look at a culture for which it feeds nobody and gets no full ration: it smelt, sank or swam slowly, and nobody has
 * found it well since. Null when nothing speaks against it.
 */
export function doubtAbout(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  day: HusbandryDay,
): FactOf<'observation'> | null {
  return remembered(snapshot, `${culture.id} ${day.date}`, () => {
    const from = addHours(day.startsAt, -signsSpeakForHours)
    const looks = factsUntil(snapshot, 'observation', { subjectId: culture.id, until: day.endsAt })
    const has = (fact: FactOf<'observation'>, signs: readonly Sign[]) => fact.data.signs.some((s) => signs.includes(s))
    const last = looks.findLast((fact) => fact.at >= from && (has(fact, doubtSigns) || has(fact, wellSigns)))
    return last && has(last, doubtSigns) ? last : null
  })
}
