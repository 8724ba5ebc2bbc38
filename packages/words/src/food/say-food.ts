import type { FoodChange, FoodOutlook, PlainDate } from '@fryward/shared'
import { sayDate, sayDay, sayDayHeading } from '../dates/say-date.ts'
import { sayNumber, sayWhole } from '../numbers/say-number.ts'
import { sayLikelihood } from '../phrases/likelihood.ts'
import { together } from '../phrases/together.ts'
import { sayQuantity } from '../quantities/say-quantity.ts'
import type { UnitVoice } from '../voice.ts'

type Eater = FoodOutlook['eaters'][number]
type Asked = { today: PlainDate; voice: UnitVoice }

/** Who eats, with what it is while it has not hatched. */
export const sayEater = ({ kind, name }: Pick<Eater, 'kind' | 'name'>): string =>
  kind === 'spawning' ? `a clutch to come of ${name}` : name

/** The weeks ahead in one sentence: the first day of worry, or that there is none. */
export function sayFoodAhead({ days, eaters, worry }: FoodOutlook, { today, voice }: Asked): string {
  const last = days.at(-1)?.date ?? today
  if (eaters.length === 0) return `Nobody will want rotifers until ${sayDate(last, voice)}, as far as can be seen.`
  if (!worry) return `There are rotifers for all until ${sayDate(last, voice)}, as far as can be seen.`
  const short = eaters.filter(({ id }) => worry.eaterIds.includes(id)).map(sayEater)
  const who = together([...new Set(short)])
  return `${sayDayHeading(worry.date, today, voice)} rotifers may fall short for ${who}: ${sayLikelihood(worry.chanceShort, voice)}.`
}

/** The same at the head of another page, where only worry is told; null without one. */
export function sayFoodWorry(outlook: FoodOutlook, asked: Asked): string | null {
  return outlook.worry ? sayFoodAhead(outlook, asked) : null
}

type Named = Asked & { nameOf: (id: string) => string }

const said: { [K in FoodChange['kind']]: (change: Extract<FoodChange, { kind: K }>, asked: Named) => string } = {
  another_pair: ({ likePairId }, { nameOf }) => `Another pair lays as ${nameOf(likePairId)} does`,
  pair_spawns: ({ pairId }, { nameOf }) => `${nameOf(pairId)} spawns tonight`,
  culture_crashes: ({ cultureId }, { nameOf }) => `${nameOf(cultureId)} crashes tomorrow`,
  away: ({ days }, { voice }) => `We are away for ${sayQuantity({ value: days, unit: 'days' }, voice)}`,
  leave_clutch: ({ clutchId }, { nameOf }) => `Leave ${nameOf(clutchId)} with its parents`,
  keep_larvae: ({ subjectId, larvae }, { nameOf, voice }) =>
    `Keep only ${sayWhole(larvae, voice)} larvae of ${nameOf(subjectId)}`,
  thin_less: () => 'Thin the cultures for the larvae alone, nothing for other fish',
  start_culture: ({ cultureId, volumeL, animals, onDate }, { nameOf, today, voice }) =>
    `Start a culture of ${sayQuantity({ value: volumeL, unit: 'L' }, voice)} by ${sayDay(onDate, today, voice)} with ${sayNumber(animals, voice)} rotifers from ${nameOf(cultureId)}`,
  buy_in: ({ animals, onDate }, { today, voice }) =>
    `Buy in ${sayNumber(animals, voice)} rotifers for ${sayDay(onDate, today, voice)}`,
  artemia_sooner: () => 'Hatch Artemia sooner, and end rotifers two days after the first',
  use_backups: () => 'Let the backup give what no other can',
  use_reserve: () => 'Take what no culture can give from the chilled reserve',
}

/** A thing done, or that happens, as one says it: "Leave Clutch 3 with its parents". */
export function sayFoodChange(change: FoodChange, asked: Named): string {
  // Each kind stands beside its own sentence, which the table's type holds.
  const say = said[change.kind] as (change: FoodChange, asked: Named) => string
  return say(change, asked)
}

/** What a change makes of the first day of worry. */
export function sayAfter(
  { worry, shortTotal }: Pick<FoodOutlook, 'worry' | 'shortTotal'>,
  before: Pick<FoodOutlook, 'worry' | 'shortTotal'>,
  { today, voice }: Asked,
): string {
  if (!worry) return 'Then no day is one of worry.'
  const day = `${sayDay(worry.date, today, voice)}, ${sayLikelihood(worry.chanceShort, voice)}`
  const missing = `about ${sayNumber(shortTotal, voice)} rotifers missing in all`
  if (worry.date !== before.worry?.date) return `Then the first day of worry is ${day}, ${missing}.`
  return `The first day of worry stays ${day}, with ${missing} instead of ${sayNumber(before.shortTotal, voice)}.`
}

type Pair = NonNullable<FoodOutlook['pairs']>[number]

const firstFoodWords: Record<Pair['firstFood'], string> = {
  ciliate: 'ciliates',
  rotifer: 'rotifers',
  copepod: 'copepods',
  artemia: 'Artemia',
}

/** Why a spawning of some pairs cannot be asked about: their young eat no rotifers, or nobody knows when they hatch; null where all can. */
export function sayNotAsked(pairs: readonly Pair[]): string | null {
  const apart = pairs.filter(({ isPlanned }) => !isPlanned)
  if (apart.length === 0) return null
  const onOther = apart.filter((pair) => !pair.eatsRotifers)
  const unsaid = apart.filter((pair) => pair.eatsRotifers)
  const foods = [...new Set(onOther.map(({ firstFood }) => firstFood))]
  const sentences = foods.map((food) => {
    const names = onOther.filter(({ firstFood }) => firstFood === food).map(({ name }) => name)
    return `Young of ${together(names)} start on ${firstFoodWords[food]} and eat no rotifers: if they spawn, nothing changes here.`
  })
  if (unsaid.length > 0)
    sentences.push(
      `When a clutch of ${together(unsaid.map(({ name }) => name))} would hatch cannot be said, so it cannot be asked.`,
    )
  return sentences.join(' ')
}
