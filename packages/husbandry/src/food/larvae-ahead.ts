import type { PlainDate } from '@fryward/shared'
import type { RoomSnapshot, SnapshotBatch } from '../snapshot/room-snapshot.ts'
import { findSpecies, type Source } from '../species/index.ts'
import { assumption, fromMemory, published } from '../species/source.ts'
import { batchNumbers, standingBatches } from '../state/batch-state.ts'
import { bookLines, totalOf, type WrittenLine } from '../state/book-lines.ts'
import { dateOf } from '../state/day-facts.ts'
import { dayOfLife } from '../state/larval-diet.ts'

type Share = { value: number; source: Source }

/** Larvae that live to metamorphosis, of those that hatched. */
const toMetamorphosis: Record<string, Share> = {
  'amphiprion-ocellaris': published(
    0.64,
    '64.47 % of A. ocellaris weaned from day 5: Murray et al. 2025, Fishes 10(9):461',
  ),
  'amphiprion-percula': published(0.655, '65.5 % at 900 lx: A. percula in brackish water, Chinese J. Oceanol. Limnol.'),
  'amphiprion-clarkii': published(0.63, '60-66 % over three first days of Artemia: A. clarkii, Aquacult. Int. 2016'),
  'elacatinus-figaro': published(0.08, '2-20 % to settlement, middle by ratio: Shei 2008'),
}
const ofClownfish = assumption(
  0.55,
  '55 % in A. sebae (Ajith Kumar et al. 2010, Indian J. Mar. Sci. 39:114-119), borrowed',
)
const ofOthers = assumption(0.3, 'between clownfish (about 0.6) and E. figaro (0.02-0.2)')

/** Nearly all losses fall on days 1 to 5: Anto & Turingan 2010, A. frenatus; that they fall evenly is an assumption. */
const lossesUntilDay = fromMemory(5, 'mass mortality on days 1-5, few on 6-14: Anto & Turingan 2010').value

/** Spread of that share from batch to batch; batches of one's own that count as much as what is published. assumption */
const spread = 0.15
const publishedCountsAs = 3

export type SurvivalAhead = { mean: number; sd: number }

/** Share of hatched larvae that should live through their first days here: this room's own batches over what is published. */
export function survivalAhead(snapshot: RoomSnapshot, species: string, date: PlainDate): SurvivalAhead {
  const isClownfish = (findSpecies(species)?.scientificName ?? '').match(/^(Amphiprion|Premnas) /) !== null
  const prior = toMetamorphosis[species] ?? (isClownfish ? ofClownfish : ofOthers)
  const own = standingBatches(snapshot).flatMap((batch) => {
    const isOldEnough = batch.species === species && dayOfLife(batch, date) >= lossesUntilDay
    return isOldEnough ? (livedThrough(snapshot, batch) ?? []) : []
  })
  const sum = own.reduce((all, share) => all + share, 0)
  return { mean: (publishedCountsAs * prior.value + sum) / (publishedCountsAs + own.length), sd: spread }
}

/** Of a batch's larvae the share that lived through its first days; who was taken out alive later is among them. */
function livedThrough(snapshot: RoomSnapshot, batch: SnapshotBatch): number | null {
  const { hatched, now } = batchNumbers(snapshot, batch)
  if (!hatched || now === null) return null
  const lines = bookLines(snapshot, batch.id)
  const left = lines.filter(({ way, kind }) => way === 'out' && kind !== 'loss')
  const isEarly = ({ at }: WrittenLine) => dayOfLife(batch, dateOf(snapshot, at)) < lossesUntilDay
  const [early, later] = [left.filter(isEarly), left.filter((line) => !isEarly(line))]
  const watched = hatched + totalOf(lines, 'in') - totalOf(early, 'out')
  return watched > 0 ? Math.min(1, (now + totalOf(later, 'out')) / watched) : null
}

/** Share of the hatched that is left on a day of life, when `survival` of them live through their first days. */
export const shareLeft = (day: number, survival: number): number =>
  1 - (1 - survival) * Math.min(1, Math.max(0, day) / lossesUntilDay)
