import { cite } from './citations.ts'
import { clownfishGrowth } from './clownfish-growth.ts'
import type { SpeciesProfile } from './schema.ts'
import { assumption, commonPractice, fromMemory, published } from './source.ts'
import { durationSpread, embryoQ10, notBeyond31 } from './thermal-defaults.ts'

const colourSource = `orange days 1-2, black 3-5, silver 6-7 of an incubation of 7 days in A. sebae: ${cite.thomas2015}; taken as shares for every clownfish`
const eyesSource = `eye buds pigmented on day 4 (middle of it, 84 h) of 152 h in A. ocellaris: ${cite.yasirQin2007}; taken as a share for every clownfish`

const eyesFrom = 84 / 152

/** Colour of the clutch and eye pigment. The shares are read off two species, so they are assumptions for the rest. */
const clutchStages: SpeciesProfile['clutchStages'] = [
  { id: 'orange', kind: 'colour', label: 'orange', share: assumption({ from: 0, to: 2 / 7 }, colourSource) },
  { id: 'black', kind: 'colour', label: 'black', share: assumption({ from: 2 / 7, to: 5 / 7 }, colourSource) },
  { id: 'silver', kind: 'colour', label: 'silver', share: assumption({ from: 5 / 7, to: 1 }, colourSource) },
  { id: 'no-eyes', kind: 'eyes', label: 'no eyes yet', share: assumption({ from: 0, to: eyesFrom }, eyesSource) },
  { id: 'eyes', kind: 'eyes', label: 'dark eyes', share: assumption({ from: eyesFrom, to: 1 }, eyesSource) },
]

export const incubationThermal = {
  q10: embryoQ10,
  triedC: fromMemory({ from: 26, to: 29 }, 'usual range of quoted clownfish durations: Wilkerson 1998'),
  notBeyondC: notBeyond31,
  ...durationSpread,
}

export const spawnIntervalSpread = {
  spreadBetweenPairs: assumption(
    0.2,
    `14 % between 18 pairs in one hatchery (${cite.setiawati2012}); wider between rooms, 10.9 to 17.5 days in A. percula`,
  ),
  spreadWithinPair: assumption(0.28, `13.0 ± 3.7 days over 20 intervals in A. perideraion: ${cite.perideraion2008}`),
}

/** What holds for every clownfish unless its own profile says otherwise. */
export const clownfish = {
  copiedFrom: null,
  care: commonPractice('nest', 'eggs on a cleaned surface, fanned by the male'),
  broodingAfterHatchDays: commonPractice(0, 'larvae leave the nest as they hatch'),
  hatchHoursAfterLightsOff: published(
    { from: 0, to: 3 },
    `19:00-22:00 with lights off at 19:00 in A. akallopisos, ${cite.dhaneesh2012}; soon after sunset in black A. ocellaris, ${cite.raheem2021}; 34-70 min after it in A. clarkii, ${cite.moyerBell1976}`,
  ),
  secondNightShare: assumption(
    0.15,
    `most of a clutch hatches in one evening, the rest the next (${cite.hoffWilkerson}, from memory); the share itself is chosen`,
  ),
  growth: clownfishGrowth,
  larvaePerL: fromMemory({ from: 5, to: 20 }, 'Hoff 1996; Moorhead & Zeng 2010'),
  clutchStages,
  permits: [],
  cautions: [
    published(
      'Keep the hatch night dark: under light at night no clutch hatched.',
      'Fobert, Burke da Silva & Swearer 2019, Biol. Lett. 15(7) 20190272',
    ),
  ],
} satisfies Partial<SpeciesProfile>

export const clownfishFeeding = {
  firstFood: commonPractice('rotifer', `from hatch, as in ${cite.cheng2015}`),
  firstFeedDay: commonPractice(0, 'prey in the water on the first morning'),
  rotifersPerMl: commonPractice(
    { from: 5, to: 10 },
    'as used for A. clarkii larvae (methods of a larval experiment, authors not known to us)',
  ),
  rotiferLastDay: assumption(11, `rotifers on days 1-11 in A. perideraion (${cite.perideraion2008}), borrowed`),
  artemiaFirstDay: assumption(5, `earliest without loss in A. ocellaris (${cite.murray2025}), borrowed`),
  artemiaPerMl: commonPractice(
    { from: 0.5, to: 1 },
    'starting density of newly hatched nauplii, eaten within an hour or two',
  ),
  artemiaAtMostPerMl: fromMemory(3, 'textbooks and reviews, 0.5-3 per mL'),
  weaningFirstDay: assumption(15, `as in A. clarkii (${cite.sarvi}), borrowed`),
  weaningLastDay: assumption(25, `as in A. clarkii (${cite.sarvi}), borrowed`),
  weanedTo: commonPractice('dry', 'fine pellets, with frozen food beside it'),
} satisfies SpeciesProfile['feeding']
