/** How a fish really breeds and grows; the service has profiles of its own. */
export type Fish = {
  species: string
  /** From laying to the night on which larvae hatch or young are let go, at 27 C. */
  days: number
  eggs: Range
  /** Days until they lay again. */
  rest: Range
  /** Rotifers that one eats in an hour of light on its first day, and more each day. */
  perHour: { first: number; moreADay: number }
  artemiaFromDay: number
  firstDryDay: Range
  settledDay: Range
  /** Set of fish whose eggs float. */
  floats?: Floats
}
/** Eggs laid at dusk on most evenings, that hatch by hours and not by nights, and larvae with mouths too small for rotifers. */
type Floats = {
  eveningsShare: number
  hatchHours: Range
  /** Until when they live on their yolk; their mouths open some hours before. */
  yolkDays: number
  rotifersFromDay: number
}
type Range = readonly [from: number, to: number]

export const clownfish: Fish = {
  ...{ species: 'amphiprion-ocellaris', days: 8, eggs: [150, 450], rest: [2, 6] },
  ...{ perHour: { first: 25, moreADay: 15 }, artemiaFromDay: 5, firstDryDay: [9, 13], settledDay: [10, 15] },
}

// Durations and numbers as breeders tell them; what they eat is an assumption: young that a parent carried are larger.
const carried = { perHour: { first: 120, moreADay: 10 }, artemiaFromDay: 0, settledDay: [0, 0] } as const
const cardinalfish: Fish = {
  ...{ ...carried, species: 'pterapogon-kauderni', days: 28, eggs: [25, 60], rest: [5, 14], firstDryDay: [12, 25] },
}
const seahorse: Fish = {
  ...{ ...carried, species: 'hippocampus-erectus', days: 18, eggs: [120, 400], rest: [3, 8], firstDryDay: [35, 50] },
}
const small = { perHour: { first: 15, moreADay: 10 }, firstDryDay: [24, 32] } as const
const dottyback: Fish = {
  ...{ ...small, species: 'pseudochromis-fridmani', days: 4, eggs: [350, 500], rest: [2, 5] },
  ...{ artemiaFromDay: 11, settledDay: [22, 30] },
}
const goby: Fish = {
  ...{ ...small, species: 'elacatinus-figaro', days: 7, eggs: [300, 700], rest: [1, 4] },
  ...{ artemiaFromDay: 14, settledDay: [26, 34] },
}

// Small batches at dusk on most evenings, 14 to 16 h to hatch at 24-26 C, first food two days later, settled after some two weeks:
// Sadovy, Mitcheson & Rasotto 2001, Aquar. Sci. Conserv. 3:253-263 (from memory). Copepod nauplii first and rotifers once they are
// grown to them, Artemia later still: as breeders tell it, from memory. What they eat in an hour is an assumption.
export const dragonet: Fish = {
  ...{ species: 'other-1f-synchiropus-splendidus', days: 0.6, eggs: [40, 200], rest: [0, 0] },
  ...{ perHour: { first: 8, moreADay: 4 }, artemiaFromDay: 12, firstDryDay: [30, 40], settledDay: [14, 20] },
  floats: { eveningsShare: 0.85, hatchHours: [12, 16], yolkDays: 2, rotifersFromDay: 7 },
}

/** What some rooms breed besides clownfish, in turn. */
export const others: readonly (Fish | null)[] = [null, cardinalfish, seahorse, dottyback, goby]
