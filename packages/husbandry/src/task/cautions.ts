/** Stands wherever a caution is shown. */
export const generalInformation = 'This is general information; follow local rules and your veterinarian.'

const withGeneral = (...cautions: string[]): string[] => [...cautions, generalInformation]

// GFCI class A trips at 4-6 mA (UL 943), an RCD at 30 mA (IEC 61008); drip loops. from memory
export const electricityCautions = withGeneral(
  'Salt water and electricity: use residual-current (ground-fault) protection and drip loops, dry your hands, and unplug what you handle.',
)

// Onset 2-4 weeks or longer; waterproof gloves, no bare cuts: UC Berkeley wellness letter 2018.
export const fishWaterCautions = withGeneral(
  'Wear waterproof gloves and keep open wounds out of the water (Mycobacterium marinum); tell a doctor about the tank if a sore does not heal.',
)

// FAO Fish. Tech. Pap. 361, sect. 4.2.3, and general chemical safety. from memory
export const decapsulationCautions = withGeneral(
  'Goggles, gloves, fresh air. Hypochlorite never meets acid or ammonia: the gas kills.',
  'Caustic soda goes into water, never water onto caustic soda.',
  'The bath heats itself: have ice ready, and never let it get warmer than the steps say.',
  'Neutralise with thiosulphate and rinse until no chlorine can be measured or smelled before use.',
)

// Chlorine is bound by about 7 mg/L sodium thiosulphate per 1 mg/L (UF/IFAS chlorine sheets). from memory
export const disinfectionCautions = withGeneral(
  'Gloves and goggles. Hypochlorite never meets acid or ammonia: the gas kills.',
  'Rinse and neutralise until no chlorine is left before a tool touches culture or fish water.',
)

export const medicineCautions = withGeneral(
  'Medicines and doses only as a veterinarian has prescribed them; euthanasia by a veterinarian’s advice and local law.',
)

export const larvaeToPartWithCautions = withGeneral(
  'Never release them into the wild. Where they are killed: humanely, as a veterinarian advises and local law allows.',
)

export const releaseCautions = withGeneral('Never release stock or culture water into the wild.')

export const hatchNightCautions = withGeneral(
  'Working in the dark near salt water: residual-current (ground-fault) protection, drip loops, dry hands.',
)
