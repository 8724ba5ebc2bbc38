import type { HarvestData, Phrase, TaskField } from '@fryward/shared'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import type { FactDraft } from '../../facts/fact.ts'
import type { HarvestPlan } from '../../plans/harvest-plan.ts'
import { rotiferNeedL } from '../../plans/top-up-plan.ts'
import type { RoomSnapshot, SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { batchesFedBy } from '../../state/feed-links.ts'
import { groupNumbers } from '../../state/group-state.ts'
import { tankOf } from '../../state/larval-diet.ts'
import { litres, measurableLDown, measurableLUp } from '../../task/measures.ts'
import { phrase } from '../../task/phrases.ts'
import { bringOverSteps } from '../parts/bring-over.ts'

/** A share of a harvest with the name of where it goes. */
export type Part = HarvestData['parts'][number] & { name: string }

/** Litres of all parts together. */
export const litresOf = (parts: HarvestData['parts']): number =>
  round6(parts.reduce((sum, part) => sum + part.volumeL, 0))

/** A harvest, and for each part that starts or thickens another culture the animals that went in. */
export function harvestFacts(input: {
  subjectId: string
  parts: HarvestData['parts']
  animalsPerL: number
}): FactDraft[] {
  const { subjectId, parts, animalsPerL } = input
  const volumeL = litresOf(parts)
  if (volumeL <= 0) return []
  return [
    { kind: 'harvest', subjectId, data: { volumeL, parts } },
    ...parts.flatMap((part): FactDraft[] =>
      part.to === 'culture' && part.subjectId !== undefined
        ? [
            {
              kind: 'inoculation',
              subjectId: part.subjectId,
              data: { animals: Math.round(part.volumeL * animalsPerL), fromCultureId: subjectId },
            },
          ]
        : [],
    ),
  ]
}

export function partsField(culture: SnapshotCulture, suggested: Part[]): TaskField {
  const plannedL = suggested.reduce((sum, part) => sum + part.volumeL, 0)
  return {
    type: 'parts',
    name: 'parts',
    label: 'Where it went',
    isRequired: false,
    help: 'Leave empty when it all went as suggested.',
    maximumL: culture.volumeL,
    likelyMaximumL: Math.max(plannedL * 1.5, 0.1),
    suggested,
  }
}

/** Batches first by what they need today, then children not yet started, and the rest as the room says. */
export function suggestParts(input: {
  snapshot: RoomSnapshot
  culture: SnapshotCulture
  day: HusbandryDay
  plan: HarvestPlan
  rest: Rest
}): Part[] {
  const { snapshot, culture, day, plan, rest } = input
  const parts: Part[] = []
  let leftL = plan.litres
  const give = (part: Omit<Part, 'volumeL'>, wantedL: number) => {
    const volumeL = Math.min(leftL, wantedL)
    if (volumeL <= 0) return
    parts.push({ ...part, volumeL: round6(volumeL) })
    leftL = round6(leftL - volumeL)
  }
  const reserved = plan.takenToday.flatMap((fact) => fact.data.parts)
  for (const batch of batchesFedBy(snapshot, culture, day.date)) {
    const hasL = reserved.filter((part) => part.subjectId === batch.id).reduce((sum, part) => sum + part.volumeL, 0)
    // To the next mark of the jug: a little over is safer than a little under.
    give(
      { to: 'larval_batch', subjectId: batch.id, name: batch.name },
      measurableLUp(Math.max(0, rotiferNeedL(snapshot, batch, { culture, day }) - hasL)),
    )
  }
  const children = snapshot.cultures.filter(
    (each) =>
      each.parentCultureId === culture.id &&
      each.kind === culture.kind &&
      factsUntil(snapshot, 'inoculation', { subjectId: each.id, until: day.endsAt }).length === 0 &&
      factsUntil(snapshot, 'count', { subjectId: each.id, until: day.endsAt }).length === 0,
  )
  const eachL = measurableLDown(leftL / Math.max(1, children.length))
  for (const child of children) give({ to: 'culture', subjectId: child.id, name: child.name }, eachL)
  // The rest is whatever is left, so that the parts add up to the harvest.
  if (leftL > 0) parts.push({ to: rest, name: restNames[rest], volumeL: leftL })
  return parts
}

/** Where that goes which nobody in the room eats. */
export const restNames = {
  drain: 'the drain',
  other_fish: 'other fish',
  chilled_reserve: 'the chilled reserve',
} as const
const round6 = (value: number) => Number(value.toFixed(6))

/** Who the other fish are that eat what is left: the young in grow-out, smallest first, else the pairs; by name. */
function otherFish(snapshot: RoomSnapshot): string[] {
  const young = snapshot.groups
    .filter((group) => groupNumbers(snapshot, group).now !== 0)
    .sort((a, b) => (a.settledOn > b.settledOn ? -1 : a.settledOn < b.settledOn ? 1 : a.id < b.id ? -1 : 1))
  return (young.length > 0 ? young : snapshot.pairs).slice(0, 3).map(({ name }) => name)
}

type Rest = keyof typeof restNames

/** Where what is left of a harvest goes: as the room says, but to the drain while no other fish live in it. */
export const restIn = <R extends Rest>(snapshot: RoomSnapshot, wanted: R): R | 'drain' =>
  wanted === 'other_fish' && otherFish(snapshot).length === 0 ? 'drain' : wanted

function whither(part: Part, others: readonly string[]): string {
  if (part.to === 'chilled_reserve') return 'into the refrigerator, dated'
  if (part.to === 'drain') return 'to the drain'
  return part.to === 'other_fish' ? `to other fish: ${others.join(', ')}` : `to ${part.name}`
}

/** Where each part goes, and how far its salinity is from there. */
export function partSteps(snapshot: RoomSnapshot, culture: SnapshotCulture, parts: Part[]): Phrase[] {
  const shocks = parts.flatMap((part) => {
    const batch = snapshot.batches.find(({ id }) => id === part.subjectId)
    const other = batch ? tankOf(snapshot, batch) : snapshot.cultures.find(({ id }) => id === part.subjectId)
    const to = other && { name: part.name, salinity: other.salinity }
    return to ? bringOverSteps({ from: culture, to, volumeL: part.volumeL }) : []
  })
  return [
    ...shocks,
    ...parts.map((part) =>
      phrase(`{litres} of it ${whither(part, otherFish(snapshot))}.`, { litres: litres(part.volumeL) }),
    ),
  ]
}
