import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, fromMemory } from '../../rule/parameters.ts'

export const copepodHarvestDefinition = {
  id: 'copepod-harvest',
  title: 'Harvest nauplii',
  sentence:
    'From {firstHarvestAgeDays} days and {firstHarvestPerMl} on, sieve the nauplii out of {share} of a copepod culture: daily while it feeds larvae, and of up to {mostShare} where they want more to have {wantedPerMl} a day in their water; else every {idleEveryDays} days; counted within {countedWithinDays}. The rest goes to {restGoesTo}. One that falls, or holds fewer than that but half as many, gives {share} to small larvae and nothing else; a backup is left alone.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    firstHarvestAgeDays: {
      type: 'number',
      label: 'youngest age for a first harvest',
      unit: 'days',
      default: 14,
      minimum: 1,
      maximum: 90,
      source: commonPractice('about two weeks, until those it was started with have young that are grown'),
    },
    firstHarvestPerMl: {
      type: 'number',
      label: 'of adults before a harvest',
      unit: 'per_mL',
      default: 1,
      minimum: 0.05,
      maximum: 100,
      source: commonPractice(
        'half of what production tanks hold, about 2 grown per mL harvested daily: Oceanic Institute, WAS meeting abstract 156505',
      ),
    },
    share: {
      type: 'number',
      label: 'of the water through the sieve',
      unit: 'share',
      default: 0.25,
      minimum: 0.05,
      maximum: 0.5,
      source: commonPractice('a quarter, which also renews the water'),
    },
    wantedPerMl: {
      type: 'number',
      label: 'nauplii a day in the larvae’s water',
      unit: 'per_mL',
      default: 2,
      minimum: 0.1,
      maximum: 20,
      source: fromMemory('first feeds of larvae of floating eggs were tried at 1 to 10 nauplii per mL'),
    },
    mostShare: {
      type: 'number',
      label: 'of the water at most',
      unit: 'share',
      default: 0.5,
      minimum: 0.05,
      maximum: 1,
      source: commonPractice('half of the nauplii stay to grow up, and all of the adults'),
    },
    idleEveryDays: {
      type: 'number',
      label: 'from one harvest to the next while no larvae are fed',
      unit: 'days',
      default: 3,
      minimum: 1,
      maximum: 30,
      source: commonPractice(
        'so that they do not crowd: eggs a female fell from 26 a day at 0.25 grown per mL to under 1 at 8, and taking young out more often raised the yield (Kline & Laidley 2015, Aquaculture, doi 10.1016/j.aquaculture.2014.09.022, abstract)',
      ),
    },
    countedWithinDays: {
      type: 'number',
      label: 'since the count at most',
      unit: 'days',
      default: 7,
      minimum: 1,
      maximum: 30,
      source: commonPractice('no harvest on an old count'),
    },
    restGoesTo: {
      type: 'choice',
      label: 'what no larvae eat goes to',
      choices: ['other_fish', 'drain'] as const,
      default: 'other_fish' as const,
      source: commonPractice('surplus feeds other fish'),
    },
  },
} satisfies RuleDefinition
