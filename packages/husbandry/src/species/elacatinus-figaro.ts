import { cite } from './citations.ts'
import { asClownfishGrow } from './clownfish-growth.ts'
import type { SpeciesProfile } from './schema.ts'
import { assumption, commonPractice, fromMemory, published } from './source.ts'
import { durationSpread, embryoQ10, larvalThermal } from './thermal-defaults.ts'

export const elacatinusFigaro: SpeciesProfile = {
  copiedFrom: null,
  id: 'elacatinus-figaro',
  scientificName: 'Elacatinus figaro',
  tradeName: 'Brazilian neon goby',
  care: fromMemory('nest', 'eggs in a tube or shell, tended by the male'),
  incubation: {
    medianDays: published(7.5, `middle of 7-8 days: ${cite.shei2008}`),
    referenceTemperatureC: published(26, cite.shei2008),
    q10: embryoQ10,
    triedC: assumption({ from: 25, to: 27 }, `one degree about 26 °C: ${cite.shei2008}`),
    notBeyondC: assumption(31, 'as for clownfish'),
    ...durationSpread,
  },
  broodingAfterHatchDays: commonPractice(0, 'larvae leave the nest as they hatch'),
  hatchHoursAfterLightsOff: assumption({ from: 0, to: 3 }, 'as for clownfish; no hour found'),
  secondNightShare: assumption(0.15, 'as for clownfish'),
  spawnInterval: {
    medianDays: published(9, `middle of 8-10 days: ${cite.shei2008}`),
    spreadBetweenPairs: assumption(0.1, `range 8-10 days: ${cite.shei2008}`),
    spreadWithinPair: assumption(0.17, 'as for P. fridmani'),
  },
  clutchSize: published({ from: 465, to: 831 }, `648 ± 183 eggs: ${cite.shei2008}`),
  larvalDuration: {
    ...larvalThermal,
    medianDays: published(28, `settle from day 28: ${cite.shei2008}; so the first fish, not the middle one`),
    referenceTemperatureC: published(26, cite.shei2008),
    triedC: assumption({ from: 25, to: 27 }, `one degree about 26 °C: ${cite.shei2008}`),
    notBeyondC: assumption(31, 'as for clownfish'),
  },
  feeding: {
    firstFood: published('rotifer', `rotifers on days 1-20: ${cite.shei2008}`),
    firstFeedDay: assumption(0, 'as for clownfish'),
    rotifersPerMl: assumption(
      { from: 10, to: 15 },
      `10, 15 and 20 per mL alike in E. lori and E. colini: ${cite.majoris2018}`,
    ),
    rotiferLastDay: published(20, cite.shei2008),
    artemiaFirstDay: published(15, cite.shei2008),
    artemiaPerMl: commonPractice({ from: 0.5, to: 1 }, 'starting density of newly hatched nauplii'),
    artemiaAtMostPerMl: fromMemory(3, 'textbooks and reviews, 0.5-3 per mL'),
    weaningFirstDay: assumption(30, `after the first fish settle at 28: ${cite.shei2008}`),
    weaningLastDay: assumption(45, 'no study found'),
    weanedTo: commonPractice('dry', 'fine pellets, with frozen food beside it'),
  },
  growth: asClownfishGrow,
  larvaePerL: assumption({ from: 5, to: 20 }, 'as for clownfish'),
  clutchStages: [],
  cautions: [],
  permits: [
    fromMemory(
      'Elacatinus figaro is protected in Brazil: keep captive-bred fish with papers and check local law before moving them.',
      'Brazilian list of threatened species',
    ),
  ],
}
