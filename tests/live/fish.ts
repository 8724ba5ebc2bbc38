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

/** What some rooms breed besides clownfish, in turn. */
export const others: readonly (Fish | null)[] = [null, cardinalfish, seahorse, dottyback, goby]
