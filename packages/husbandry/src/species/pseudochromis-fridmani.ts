import { cite } from './citations.ts'
import { asClownfishGrow } from './clownfish-growth.ts'
import type { SpeciesProfile } from './schema.ts'
import { assumption, commonPractice, fromMemory, published } from './source.ts'
import { durationSpread, embryoQ10, larvalThermal } from './thermal-defaults.ts'

export const pseudochromisFridmani: SpeciesProfile = {
  copiedFrom: null,
  id: 'pseudochromis-fridmani',
  scientificName: 'Pseudochromis fridmani',
  tradeName: 'orchid dottyback',
  care: published('nest', `the male guards an egg ball, and may eat it: ${cite.chen2023}`),
  incubation: {
    medianDays: published(4, `96 h: ${cite.chen2023}`),
    referenceTemperatureC: published(27, `27 ± 1 °C: ${cite.chen2023}`),
    q10: embryoQ10,
    triedC: published({ from: 26, to: 28 }, `27 ± 1 °C: ${cite.chen2023}`),
    notBeyondC: assumption(31, 'as for clownfish'),
    ...durationSpread,
  },
  broodingAfterHatchDays: commonPractice(0, 'larvae leave the nest as they hatch'),
  hatchHoursAfterLightsOff: assumption(
    { from: 0, to: 3 },
    `a congener hatches in full darkness (${cite.madhu2016}); the hours are as for clownfish`,
  ),
  secondNightShare: assumption(0.1, 'smaller than for clownfish, since incubation is shorter'),
  spawnInterval: {
    medianDays: published(7, `mostly 6-8, range 5-11 days, 7 pairs over 12 months: ${cite.chen2023}`),
    spreadBetweenPairs: assumption(0.1, `seven pairs together range 5-11 days: ${cite.chen2023}`),
    spreadWithinPair: assumption(
      0.17,
      `seven pairs together range 5-11 days, four standard deviations: ${cite.chen2023}`,
    ),
  },
  clutchSize: assumption({ from: 400, to: 500 }, `borrowed from P. dilectus: ${cite.madhu2016}`),
  larvalDuration: {
    ...larvalThermal,
    medianDays: assumption(26, `P. dilectus starts at 20 and is 82 % juvenile at 30 dph: ${cite.madhu2016}; borrowed`),
    referenceTemperatureC: assumption(27, 'not known to us; common rearing temperature'),
    triedC: assumption({ from: 26, to: 28 }, 'one degree about the assumed temperature'),
    notBeyondC: assumption(31, 'as for clownfish'),
  },
  feeding: {
    firstFood: fromMemory('rotifer', 'small rotifers in the trade; P. dilectus was started on ciliates'),
    firstFeedDay: assumption(0, 'as for clownfish'),
    rotifersPerMl: commonPractice({ from: 5, to: 10 }, 'as for clownfish'),
    rotiferLastDay: assumption(15, `enriched rotifers on days 6-15 in P. dilectus: ${cite.madhu2016}; borrowed`),
    artemiaFirstDay: assumption(12, 'overlaps the last rotifer days; no study found'),
    artemiaPerMl: commonPractice({ from: 0.5, to: 1 }, 'starting density of newly hatched nauplii'),
    artemiaAtMostPerMl: fromMemory(3, 'textbooks and reviews, 0.5-3 per mL'),
    weaningFirstDay: assumption(30, `most are juveniles at 30 dph in P. dilectus: ${cite.madhu2016}; borrowed`),
    weaningLastDay: assumption(45, `all are juveniles at 45 dph in P. dilectus: ${cite.madhu2016}; borrowed`),
    weanedTo: commonPractice('dry', 'fine pellets, with frozen food beside it'),
  },
  growth: asClownfishGrow,
  larvaePerL: assumption({ from: 5, to: 20 }, 'as for clownfish'),
  clutchStages: [],
  permits: [],
  cautions: [
    published(
      'Parents may eat their clutch even when fed to satiation (55 ± 37 % of clutches a month, by pair).',
      cite.chen2023,
    ),
  ],
}
