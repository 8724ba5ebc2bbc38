import type { Because, Id } from '@fryward/shared'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { Gap } from '../../rule/gap.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import type { RoomSnapshot, SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { cultureRecord } from '../../state/culture-history.ts'
import { daysSince } from '../../state/day-facts.ts'

/** What feeds a copepod culture: a bottle by its label, or a microalgae culture of the room by its last count. */
export type Algae = {
  food: 'concentrate' | 'live_microalgae'
  id: Id
  name: string
  cellsPerMl: number
  /** What the microalgae culture holds; null for a bottle. */
  volumeL: number | null
  /** The link of "why" that says where the strength was read. */
  because: Because
}

// An older count says little of what a growing alga holds today. common practice
const countHoldsDays = 7

/** The culture's bottle; else the thickest counted microalgae culture. A Gap when neither is known. */
export function algaeFor(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): Algae {
  const bottle = snapshot.concentrates.find(({ id }) => id === culture.concentrateId)
  if (bottle) {
    const { id, name, cellsPerMl } = bottle
    const quantity = { value: cellsPerMl, unit: 'cells_per_mL' } as const
    const because = settingLink(null, `label of ${name}`, { label: `in ${name}`, quantity, joins: 'divided_by' })
    return { food: 'concentrate', id, name, cellsPerMl, volumeL: null, because }
  }
  const [thickest] = countedAlgae(snapshot, day)
  if (!thickest)
    throw new Gap(
      `Say which concentrate feeds ${culture.name} and its strength from the label, or count the cells of a microalgae culture.`,
    )
  return thickest
}

function countedAlgae(snapshot: RoomSnapshot, day: HusbandryDay): Algae[] {
  return snapshot.cultures
    .filter(({ kind }) => kind === 'microalgae')
    .flatMap((culture): Algae[] => {
      const count = cultureRecord(snapshot, culture, { until: day.endsAt }).counts.at(-1)
      const ageDays = daysSince(snapshot, count?.fact, day.date)
      if (!count || count.densityPerMl <= 0 || ageDays === null || ageDays > countHoldsDays) return []
      const quantity = { value: count.densityPerMl, unit: 'cells_per_mL' } as const
      const because = factLink(count.fact, { label: `counted in ${culture.name}`, quantity, joins: 'divided_by' })
      return [
        {
          food: 'live_microalgae',
          id: culture.id,
          name: culture.name,
          cellsPerMl: count.densityPerMl,
          volumeL: culture.volumeL,
          because,
        },
      ]
    })
    .sort((a, b) => b.cellsPerMl - a.cellsPerMl || (a.id < b.id ? -1 : 1))
}
