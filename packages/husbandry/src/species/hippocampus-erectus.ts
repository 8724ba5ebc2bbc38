import { cite } from './citations.ts'
import type { SpeciesProfile } from './schema.ts'
import { seahorseGrowth } from './seahorse-growth.ts'
import { assumption, commonPractice, fromMemory, published } from './source.ts'
import { embryoQ10 } from './thermal-defaults.ts'

export const hippocampusErectus: SpeciesProfile = {
  copiedFrom: null,
  id: 'hippocampus-erectus',
  scientificName: 'Hippocampus erectus',
  tradeName: 'lined seahorse',
  care: published('pouch', `pouch gestation: ${cite.lin2008}`),
  incubation: {
    medianDays: published(17.33, `gestation 17.33 ± 2.94 days: ${cite.lin2008}`),
    referenceTemperatureC: assumption(
      28,
      `28-29 °C was best for growth (${cite.lin2008}); that of the gestation is not known to us`,
    ),
    q10: embryoQ10,
    triedC: assumption({ from: 27, to: 29 }, 'one degree about the assumed temperature'),
    notBeyondC: assumption(31, 'as for clownfish; juveniles were tried from 24 to 33 °C'),
    spreadBetweenPairs: assumption(0.14, `with 0.1 within a pair makes 2.94 / 17.33 = 17 %: ${cite.lin2008}`),
    spreadWithinPair: assumption(0.1, `part of 2.94 / 17.33 = 17 %: ${cite.lin2008}`),
  },
  broodingAfterHatchDays: published(0, `gestation runs to the birth: ${cite.lin2008}`),
  hatchHoursAfterLightsOff: fromMemory({ from: 0, to: 12 }, 'births at night or before dawn, the hour varies'),
  secondNightShare: assumption(0.1, 'now and then a brood comes over two nights; the share is chosen'),
  spawnInterval: {
    medianDays: assumption(21, 'gestation of 17 days and a few days to the next mating; no interval found'),
    spreadBetweenPairs: assumption(0.2, 'as for clownfish'),
    spreadWithinPair: assumption(0.28, 'as for clownfish'),
  },
  clutchSize: published(
    { from: 206, to: 339 },
    `272.33 ± 66.45 young: ${cite.lin2008}; 85 in a first brood, 466 in a sixth: Lin et al. 2012, Biol. Open 1:391-396`,
  ),
  larvalDuration: null,
  feeding: {
    firstFood: fromMemory('artemia', 'copepods or Artemia'),
    firstFeedDay: commonPractice(0, 'fed on the day of birth'),
    rotifersPerMl: fromMemory(null, 'young take Artemia or copepods from birth'),
    rotiferLastDay: fromMemory(null, 'young take Artemia or copepods from birth'),
    artemiaFirstDay: fromMemory(0, 'from birth'),
    artemiaPerMl: commonPractice({ from: 0.5, to: 1 }, 'starting density of newly hatched nauplii'),
    artemiaAtMostPerMl: fromMemory(3, 'textbooks and reviews, 0.5-3 per mL'),
    weaningFirstDay: assumption(
      56,
      `to frozen mysids: those weaned at 42 and 49 days lost weight at first, of 56, 63 and 70 that is not said: ${cite.lin2009}`,
    ),
    weaningLastDay: published(70, `grew best when weaned at 70 days, of 42 to 70: ${cite.lin2009}`),
    weanedTo: commonPractice('frozen', 'thawed mysids and small shrimp; few seahorses take dry food'),
  },
  growth: seahorseGrowth,
  larvaePerL: assumption({ from: 1, to: 3 }, 'no study found'),
  clutchStages: [],
  cautions: [],
  permits: [
    published(
      'All seahorses are in CITES Appendix II since 2004: permits for trade across borders.',
      `as stated in ${cite.lin2008}`,
    ),
  ],
}
