import type { FoodOutlook, Instant, PlainDate } from '@fryward/shared'
import { sayDay, toPlainDate } from '../dates/say-date.ts'
import { sayTime } from '../dates/say-time.ts'
import { sayNumber } from '../numbers/say-number.ts'
import type { Voice } from '../voice.ts'

type Hatch = NonNullable<FoodOutlook['hatches']>[number]
type Artemia = NonNullable<FoodOutlook['days'][number]['artemia']>
type Asked = { today: PlainDate; voice: Voice }

/** Where the nauplii of a hatch are. */
export const hatchStandingWords: Record<Hatch['standing'], string> = {
  kept: 'kept cold',
  under_way: 'in its cone',
  asked: 'cysts on today’s list',
}

/** What a hatch is good for: "about 36,000 nauplii, in its cone: out today 12:30, food until tomorrow 12:30". */
export function sayHatch({ standing, nauplii, readyAt, goodUntil }: Hatch, { today, voice }: Asked): string {
  const at = (instant: Instant) =>
    `${sayDay(toPlainDate(instant, voice.timeZone), today, voice)} ${sayTime(instant, voice)}`
  const out = standing === 'kept' ? '' : `out ${at(readyAt)}, `
  return `about ${sayNumber(nauplii, voice)} nauplii, ${hatchStandingWords[standing]}: ${out}food until ${at(goodUntil)}`
}

/** What batches want of Artemia on a day and what hatches give: "40,000 wanted, 16,000 from H1, 24,000 to hatch"; null of none. */
export function sayArtemiaDay(
  { gives, batches, toHatch }: Artemia,
  { hatches, voice }: { hatches: readonly Hatch[]; voice: Voice },
): string | null {
  const wanted = batches.reduce((sum, batch) => sum + batch.wanted, 0)
  if (wanted <= 0) return null
  const from = hatches.flatMap(({ id, name }) => {
    const nauplii = gives.filter(({ hatchId }) => hatchId === id).reduce((sum, give) => sum + give.nauplii, 0)
    return nauplii > 0 ? [`${sayNumber(nauplii, voice)} from ${name}`] : []
  })
  const missing = toHatch > leastToHatch * wanted ? [`${sayNumber(toHatch, voice)} to hatch`] : []
  return [`${sayNumber(wanted, voice)} wanted`, ...from, ...missing].join(', ')
}

// Under a hundredth of what is wanted nobody starts cysts for.
const leastToHatch = 0.01
