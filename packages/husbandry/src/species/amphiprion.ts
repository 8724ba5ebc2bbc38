import { cite } from './citations.ts'
import { clownfish, clownfishFeeding, incubationThermal, spawnIntervalSpread } from './clownfish.ts'
import type { SpeciesProfile } from './schema.ts'
import { assumption, fromMemory, published } from './source.ts'
import { larvalThermal, notBeyond31Melanopus } from './thermal-defaults.ts'

export const amphiprionOcellaris: SpeciesProfile = {
  ...clownfish,
  id: 'amphiprion-ocellaris',
  scientificName: 'Amphiprion ocellaris',
  tradeName: 'ocellaris clownfish',
  incubation: {
    ...incubationThermal,
    medianDays: published(6.83, `geometric mean of 152 h, ${cite.yasirQin2007}, and 177 h, ${cite.cheng2015}`),
    referenceTemperatureC: published(27.35, `mean of 27-28 °C, ${cite.yasirQin2007}, and 27.2 °C, ${cite.cheng2015}`),
  },
  spawnInterval: {
    ...spawnIntervalSpread,
    medianDays: published(
      14.8,
      `geometric mean of 12-14 (${cite.raheem2021}) and 16.9, 372 d / 22 (${cite.cheng2015})`,
    ),
  },
  clutchSize: published({ from: 500, to: 1200 }, `${cite.cheng2015}; a first spawning 200-300, ${cite.raheem2021}`),
  larvalDuration: {
    ...larvalThermal,
    medianDays: fromMemory(
      11.2,
      'bars appear at about 9-14 dph (geometric mean): Roux et al. 2019, Dev. Dyn. 248:545-568',
    ),
    referenceTemperatureC: fromMemory(26.5, '26-27 °C: Roux et al. 2019'),
    triedC: fromMemory({ from: 26, to: 28 }, 'Roux et al. 2019, and common rearing temperatures'),
  },
  feeding: {
    ...clownfishFeeding,
    artemiaFirstDay: published(5, `earliest of 3, 5 and 7 dph without loss: ${cite.murray2025}`),
    weaningFirstDay: published(5, `best of 5, 8 and 11 dph for a first micro-diet: ${cite.murray2025}`),
    weaningLastDay: published(25, `begins to take pellets at 25 dph: ${cite.cheng2015}`),
  },
}

export const amphiprionPercula: SpeciesProfile = {
  ...clownfish,
  id: 'amphiprion-percula',
  scientificName: 'Amphiprion percula',
  tradeName: 'true percula clownfish',
  incubation: {
    ...incubationThermal,
    medianDays: published(6.31, `151-152 h: ${cite.dhaneesh2009}`),
    referenceTemperatureC: fromMemory(27, `26-28 °C: ${cite.dhaneesh2009}`),
  },
  spawnInterval: {
    ...spawnIntervalSpread,
    medianDays: published(10.9, `30.4 / 2.78 spawnings a month, 18 pairs: ${cite.setiawati2012}`),
  },
  clutchSize: published({ from: 168, to: 678 }, `423 ± 255 eggs: ${cite.setiawati2012}`),
  larvalDuration: {
    ...larvalThermal,
    medianDays: published(10.5, `fed daily: ${cite.mcLeod2013}`),
    referenceTemperatureC: published(30.7, cite.mcLeod2013),
    triedC: assumption({ from: 29, to: 31 }, `only the warm cells are known to us: ${cite.mcLeod2013}`),
  },
  feeding: {
    ...clownfishFeeding,
    weaningFirstDay: fromMemory(15, 'Gordon & Hecht 2002, J. Appl. Ichthyol. 18:113-117'),
    weaningLastDay: fromMemory(20, 'Gordon & Hecht 2002, J. Appl. Ichthyol. 18:113-117'),
  },
}

export const amphiprionClarkii: SpeciesProfile = {
  ...clownfish,
  id: 'amphiprion-clarkii',
  scientificName: 'Amphiprion clarkii',
  tradeName: "Clark's clownfish",
  incubation: {
    ...incubationThermal,
    medianDays: published(6, `a rounded figure: ${cite.sarvi}`),
    referenceTemperatureC: published(28, cite.sarvi),
  },
  spawnInterval: {
    ...spawnIntervalSpread,
    medianDays: assumption(
      15,
      `about 15 days in well-fed Amphiprion pairs (${cite.rodrigues2017}); 15-20 in summer, five species (${cite.uthayaSiva2017})`,
    ),
  },
  clutchSize: published({ from: 300, to: 400 }, cite.sarvi),
  larvalDuration: {
    ...larvalThermal,
    medianDays: published(10, 'two bars visible at 10 dph: Cheng, Yeh & Ho 2019, J. Taiwan Fish. Res. 27(2):41-53'),
    referenceTemperatureC: assumption(27, 'not in the abstract; common rearing temperature'),
    triedC: published(
      { from: 23, to: 29 },
      'larvae reared at 23, 26 and 29 °C: Ye et al. 2011, Acta Ecol. Sinica 31 (abstract)',
    ),
  },
  feeding: {
    ...clownfishFeeding,
    rotiferLastDay: published(14, `rotifers and Artemia only in the first two weeks: ${cite.sarvi}`),
    artemiaFirstDay: published(
      2,
      `best of 2, 4 and 6 days for metamorphosis, survival alike: ${cite.artemiaStart2016}`,
    ),
    weaningFirstDay: published(15, cite.sarvi),
    weaningLastDay: published(25, cite.sarvi),
  },
}

export const amphiprionFrenatus: SpeciesProfile = {
  ...clownfish,
  id: 'amphiprion-frenatus',
  scientificName: 'Amphiprion frenatus',
  tradeName: 'tomato clownfish',
  incubation: {
    ...incubationThermal,
    medianDays: published(9, `middle of 8-10 days: ${cite.lu2021}`),
    referenceTemperatureC: published(27, `27 ± 1 °C: ${cite.lu2021}`),
  },
  spawnInterval: {
    ...spawnIntervalSpread,
    medianDays: assumption(15, `about 15 days in well-fed Amphiprion pairs: ${cite.rodrigues2017}`),
  },
  clutchSize: assumption({ from: 300, to: 800 }, `none found; borrowed from P. biaculeatus, ${cite.premnasThesis2016}`),
  larvalDuration: {
    ...larvalThermal,
    medianDays: published(20, `first white stripe on day 20: ${cite.lu2021}`),
    referenceTemperatureC: published(27, cite.lu2021),
    triedC: published({ from: 26, to: 28 }, `27 ± 1 °C: ${cite.lu2021}`),
  },
  feeding: clownfishFeeding,
}

export const amphiprionMelanopus: SpeciesProfile = {
  ...clownfish,
  id: 'amphiprion-melanopus',
  scientificName: 'Amphiprion melanopus',
  tradeName: 'cinnamon clownfish',
  incubation: {
    ...incubationThermal,
    medianDays: published(9, `laboratory: ${cite.melanopusKorea2007}`),
    referenceTemperatureC: assumption(27, `not in the abstract, which tried 24 to 30 °C: ${cite.melanopusKorea2007}`),
    triedC: published({ from: 24, to: 30 }, `shorter incubation going 24 to 30 °C: ${cite.melanopusKorea2007}`),
    notBeyondC: notBeyond31Melanopus,
  },
  spawnInterval: {
    ...spawnIntervalSpread,
    medianDays: published(23.2, `1092 d / 47 intervals of one female, rests included: ${cite.melanopusKorea2007}`),
  },
  clutchSize: published({ from: 440, to: 650 }, cite.melanopusKorea2007),
  larvalDuration: {
    ...larvalThermal,
    medianDays: published(9, cite.greenFisher2004),
    referenceTemperatureC: published(28, cite.greenFisher2004),
    q10: published(2.83, `(12.3 / 9)^(10 / 3), 12.3 d at 25 °C and 9 d at 28 °C: ${cite.greenFisher2004}`),
    triedC: published({ from: 25, to: 28 }, cite.greenFisher2004),
    notBeyondC: notBeyond31Melanopus,
  },
  feeding: clownfishFeeding,
}

export const premnasBiaculeatus: SpeciesProfile = {
  ...clownfish,
  id: 'premnas-biaculeatus',
  scientificName: 'Premnas biaculeatus',
  tradeName: 'maroon clownfish',
  incubation: {
    ...incubationThermal,
    medianDays: published(7, cite.premnasThesis2016),
    referenceTemperatureC: published(27.5, `27-28 °C: ${cite.premnasThesis2016}`),
  },
  hatchHoursAfterLightsOff: published({ from: 0, to: 1 }, `within 1 h of sunset: ${cite.premnasThesis2016}`),
  spawnInterval: {
    ...spawnIntervalSpread,
    medianDays: published(
      26,
      `8 spawnings of one pair from February to August 2004, 22-30 days by the unknown ends: ${cite.kim2007}`,
    ),
  },
  clutchSize: published({ from: 300, to: 800 }, cite.premnasThesis2016),
  larvalDuration: {
    ...larvalThermal,
    medianDays: published(15, `full juvenile colour at 15 dph: ${cite.premnasThesis2016}`),
    referenceTemperatureC: published(27.5, `27-28 °C: ${cite.premnasThesis2016}`),
    triedC: published({ from: 27, to: 28 }, cite.premnasThesis2016),
  },
  feeding: clownfishFeeding,
}
