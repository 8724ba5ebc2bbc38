import type { ProtocolPart, SurvivalComparison } from '@fryward/shared'
import { sayComing } from '../labels/brood.ts'
import { protocolLabels, seasonLabels } from '../labels/survival.ts'
import { numberFormat, sayWhole } from '../numbers/say-number.ts'
import { together } from '../phrases/together.ts'
import type { NumberVoice } from '../voice.ts'

type Group = Pick<SurvivalComparison['groups'][number], 'key' | 'name'>

/** What a group is called; seasons and foods are named here, all else by the room. */
export function sayGroup({ key, name }: Group, by: SurvivalComparison['by']): string {
  if (by === 'green_water') return key === 'with' ? 'with green water' : 'without green water'
  if (by === 'artemia_day') return key === 'later' ? 'after day 5, or never' : `day ${key}`
  if (by === 'protocol') return together(key.split(' ').map((part) => protocolLabels[part as ProtocolPart] ?? part))
  return by === 'season' ? (seasonLabels[key as keyof typeof seasonLabels] ?? name) : name
}

/** "p = 0.03"; never less than a thousandth, which nobody needs to tell apart. */
export function sayChance(pValue: number, voice: NumberVoice): string {
  const smallest = 0.001
  const format = numberFormat(voice.locale, { maximumSignificantDigits: 2, maximumFractionDigits: 3 })
  return pValue < smallest ? `p < ${format.format(smallest)}` : `p = ${format.format(pValue)}`
}

export type SaidComparison = {
  /** What may be concluded. */
  may: string
  /** What may not. */
  mayNot: string
}

type Asked = Pick<
  SurvivalComparison,
  'by' | 'cares' | 'groups' | 'conclusion' | 'best' | 'worst' | 'byAnimal' | 'byClutch' | 'hasFewDeaths'
>

/** What groups side by side show, and what they do not; numbers that are small are said to be. */
export function sayComparison(compared: Asked, voice: NumberVoice): SaidComparison {
  const { conclusion } = compared
  if (conclusion === 'one_group')
    return {
      may: compared.groups.length === 0 ? 'No clutch can be compared yet.' : 'There is one group only.',
      mayNot: `Nothing may be concluded: it takes two groups with clutches that were counted again after the ${sayComing(compared.cares)}.`,
    }
  if (conclusion === 'no_deaths')
    return {
      may: 'None died while two groups were watched.',
      mayNot: 'Nothing may be concluded about which does better.',
    }
  const mayNot = [mayNotOf(compared, voice), ...diedBefore(compared), ...smallNumbers(compared)].join(' ')
  return { may: mayOf(compared, voice), mayNot }
}

/** "of Pair 1"; after "the young" or "those". */
function ofGroup({ groups, by }: Asked, key: string | null): string {
  const group = groups.find((each) => each.key === key)
  const name = group ? sayGroup(group, by) : 'one group'
  if (by === 'green_water') return name
  if (by === 'artemia_day')
    return key === 'later' ? 'given Artemia after day 5 or never' : `given Artemia from ${name} on`
  return by === 'protocol' ? `first fed ${name}` : `of ${name}`
}

function mayOf(compared: Asked, voice: NumberVoice): string {
  const { conclusion, byClutch, byAnimal, groups } = compared
  const [best, worst] = [ofGroup(compared, compared.best), ofGroup(compared, compared.worst)]
  const chance = byClutch ? ` (${sayChance(byClutch.pValue, voice)}, by whole clutches)` : ''
  if (conclusion === 'differ')
    return groups.length === 2
      ? `The young ${best} lived longer than those ${worst}: more than clutches differ by chance${chance}.`
      : `The groups differ by more than clutches do by chance${chance}: fewest died of the young ${best}, most of those ${worst}.`
  if (conclusion === 'differ_by_animals_only')
    return `More died of the young ${worst} than of those ${best}, but clutches within a group differ as much${chance}.`
  if (conclusion === 'no_difference_shown') return `No difference is shown${chance}.`
  const animals = byAnimal ? `; animal by animal, ${sayChance(byAnimal.pValue, voice)}` : ''
  return `So few clutches can show no difference, however large${animals}.`
}

function mayNotOf({ conclusion, byClutch, groups }: Asked, voice: NumberVoice): string {
  if (conclusion === 'differ')
    return 'It does not say why: the clutches were not put into these groups by lot, and whatever else differed between them may be the cause.'
  if (conclusion === 'differ_by_animals_only')
    return 'It may not be put down to the group: young of one clutch live and die together.'
  if (conclusion === 'no_difference_shown')
    return 'It does not say that there is none: with more clutches one may yet show.'
  const clutches = together(groups.map((group) => sayWhole(group.clutches, voice)))
  const least = byClutch ? `, where chance alone does as much with ${sayChance(byClutch.smallestPValue, voice)}` : ''
  return `Nothing may be concluded from ${clutches} clutches${least}: young of one clutch live and die together.`
}

/** Whoever began late must have lived so long: those that died sooner stand in the last group, and make it look worse. */
const diedBefore = ({ by, groups }: Asked): string[] =>
  by === 'artemia_day' && groups.length > 1
    ? ['A clutch that died before its first Artemia counts among those that began after day 5 or never.']
    : []

const smallNumbers = ({ hasFewDeaths }: Asked): string[] =>
  hasFewDeaths ? ['The numbers are small: in some group fewer than five deaths are to be expected.'] : []
