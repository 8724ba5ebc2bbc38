import { cite } from './citations.ts'
import { asClownfishGrow } from './clownfish-growth.ts'
import type { SpeciesProfile } from './schema.ts'
import { assumption, commonPractice, fromMemory, published } from './source.ts'
import { durationSpread, embryoQ10 } from './thermal-defaults.ts'

export const pterapogonKauderni: SpeciesProfile = {
  copiedFrom: null,
  id: 'pterapogon-kauderni',
  scientificName: 'Pterapogon kauderni',
  tradeName: 'Banggai cardinalfish',
  care: published('mouth', `the male broods: ${cite.vagelli1999}`),
  incubation: {
    medianDays: published(19, `approximately, in the mouth: ${cite.vagelli1999}`),
    referenceTemperatureC: assumption(27, 'not in the abstract; common keeping temperature'),
    q10: embryoQ10,
    triedC: assumption({ from: 26, to: 28 }, 'one degree about the assumed temperature'),
    notBeyondC: assumption(31, 'as for clownfish'),
    ...durationSpread,
  },
  broodingAfterHatchDays: published(10, `hatched young stay another ten days: ${cite.vagelli1999}`),
  hatchHoursAfterLightsOff: assumption({ from: 0, to: 12 }, 'any hour of the night; no hour is published'),
  secondNightShare: assumption(0.3, 'a brood may be released over more than one night; the share is chosen'),
  spawnInterval: {
    medianDays: assumption(36, 'a brood of about 29 days and a week of feeding; no interval found'),
    spreadBetweenPairs: assumption(0.2, 'as for clownfish'),
    spreadWithinPair: assumption(0.28, 'as for clownfish'),
  },
  clutchSize: published({ from: 40, to: 40 }, `about 40 eggs: ${cite.vagelli1999}`),
  larvalDuration: null,
  feeding: {
    firstFood: commonPractice('artemia', 'enriched newly hatched Artemia at release'),
    firstFeedDay: commonPractice(0, 'fed on the day of release'),
    rotifersPerMl: commonPractice(null, 'young are large enough for Artemia at release'),
    rotiferLastDay: commonPractice(null, 'young are large enough for Artemia at release'),
    artemiaFirstDay: commonPractice(0, 'at release'),
    artemiaPerMl: commonPractice({ from: 0.5, to: 1 }, 'starting density of newly hatched nauplii'),
    artemiaAtMostPerMl: fromMemory(3, 'textbooks and reviews, 0.5-3 per mL'),
    weaningFirstDay: assumption(14, 'no study found; young leave the mouth as juveniles'),
    weaningLastDay: assumption(45, 'no study found'),
    weanedTo: commonPractice('dry', 'fine pellets, with frozen food beside it'),
  },
  growth: asClownfishGrow,
  larvaePerL: assumption({ from: 1, to: 2 }, 'no study found; about 40 young in 20 to 40 L'),
  clutchStages: [],
  cautions: [],
  permits: [
    published(
      'Listed as threatened under the US Endangered Species Act since 19 February 2016; later trade rules may apply. Check before moving fish across a border.',
      'NMFS final rule 20 January 2016, 81 FR 3023',
    ),
    published(
      'Never release captive fish: a trade introduction founded a population 400 km from home.',
      'Vagelli & Erdmann 2002 (from memory), encyclopedic page',
    ),
  ],
}
