import type { Because, Id } from '@fryward/shared'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { Gap } from '../../rule/gap.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import type { RoomSnapshot, SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { algaeDrawn } from '../../state/algae-drawn.ts'
import { cultureRecord } from '../../state/culture-history.ts'
import { daysSince, factsUntil } from '../../state/day-facts.ts'

/** What feeds a copepod culture: a bottle by its label, or a microalgae culture of the room by its last count. */
export type Algae = {
  food: 'concentrate' | 'live_microalgae'
  id: Id
  name: string
  cellsPerMl: number
  /** What is left in the microalgae culture; null for a bottle. */
  volumeL: number | null
  /** The link of "why" that says where the strength was read. */
  because: Because
}

// An older count says little of what a growing alga holds today. common practice
const countHoldsDays = 7

// A culture of small flagellates that looks deep holds some 5 to 10 million a mL, a pale one a tenth to a third of it (from
// memory): taken low, for the copepods' water says at the next feed whether it was too much or too little.
const looks = {
  water_green: { cellsPerMl: 3e6, word: 'deep' },
  water_tinted: { cellsPerMl: 1e6, word: 'pale' },
} as const
// Looked at this morning or yesterday. common practice
const lookHoldsDays = 1

/** The culture's bottle; else the thickest counted microalgae culture, or one by its colour. A Gap when none is known. */
export function algaeFor(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): Algae {
  const bottle = snapshot.concentrates.find(({ id }) => id === culture.concentrateId)
  if (bottle) {
    const { id, name, cellsPerMl } = bottle
    const quantity = { value: cellsPerMl, unit: 'cells_per_mL' } as const
    const because = settingLink(null, `label of ${name}`, { label: `in ${name}`, quantity, joins: 'divided_by' })
    return { food: 'concentrate', id, name, cellsPerMl, volumeL: null, because }
  }
  const [best] = [...countedAlgae(snapshot, day), ...algaeByLook(snapshot, day)]
  if (!best)
    throw new Gap(
      `Say which concentrate feeds ${culture.name} and its strength from the label, or look at a microalgae culture: one with colour can feed it.`,
    )
  return best
}

/** Those that had colour when somebody swirled them last, the one with most cells left first. */
function algaeByLook(snapshot: RoomSnapshot, day: HusbandryDay): Algae[] {
  const cells = ({ cellsPerMl, volumeL }: Algae) => cellsPerMl * (volumeL ?? 0)
  return snapshot.cultures
    .filter(({ kind }) => kind === 'microalgae')
    .flatMap((culture): Algae[] => {
      const look = factsUntil(snapshot, 'observation', { subjectId: culture.id, until: day.endsAt }).at(-1)
      const sinceDays = daysSince(snapshot, look, day.date)
      const seen = look?.data.signs.find((sign) => sign === 'water_green' || sign === 'water_tinted')
      if (!look || !seen || sinceDays === null || sinceDays > lookHoldsDays) return []
      const { cellsPerMl, word } = looks[seen]
      const quantity = { value: cellsPerMl, unit: 'cells_per_mL' } as const
      const because = factLink(look, { label: `${culture.name} is ${word}: taken as`, quantity, joins: 'divided_by' })
      const { id, name } = culture
      return [{ food: 'live_microalgae', id, name, cellsPerMl, volumeL: leftL(snapshot, culture, day), because }]
    })
    .sort((a, b) => cells(b) - cells(a) || a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1))
}

const leftL = (snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): number =>
  Math.max(0, culture.volumeL - algaeDrawn(snapshot, culture, day).drawnL)

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
          volumeL: leftL(snapshot, culture, day),
          because,
        },
      ]
    })
    .sort((a, b) => b.cellsPerMl - a.cellsPerMl || (a.id < b.id ? -1 : 1))
}
