/** What one room's days came to. */
export type Tally = {
  days: number
  tasks: number
  /** Days on which larvae found too little for hours, while a culture had enough to spare. */
  starvedDays: number
  /** The same with nothing to spare anywhere. */
  hungryDays: number
  larvalDays: number
  /** Mornings on which a harvest left a culture under the floor. */
  underFloor: number
  harvestDays: number
  /** Cultures that began to die of something that is nobody's fault, and days on which one was dying or empty. */
  crashes: number
  sickDays: number
  cultureDays: number
  /** Days on which ammonia was over what is safe for those who live in it. */
  foulLarvae: number
  foulJuveniles: number
  foulPairs: number
  foulCultures: number
  /** Days on which nitrite was over what is safe for anybody who lives in it, and the most that any of them had. */
  foulByNitrite: number
  mostNitriteMgPerL: number
  juvenileDays: number
  /** Batches and groups that ammonia killed some of, each with their share of all that came. */
  poisoned: Record<string, number>
  /** Water that each day's changes took. */
  changedL: number[]
  artemiaShort: number
  artemiaFeeds: number
  artemiaEmpty: number
  conesLost: number
  spawned: number
  hatched: number
  /** Hatched with nobody ever having been asked whether there are eggs. */
  eggsUnseen: number
  /** Floating eggs of an evening that nobody collected. */
  eveningsPassed: number
  /** Days on which a culture of copepods was too thin to give any, of all its days. */
  thinCopepods: number
  copepodDays: number
  /** Hatched, and by noon no list had asked where they are. */
  hatchesMissed: number
  /** Made by a person beside the list, because nothing on it did. */
  linksByHand: number
  /** Filters that a task said were missing. */
  filtersHung: number
  raised: number
  /** Tasks that an earlier look at the day's list had shown open and a later one no longer does, by rule. */
  withdrawn: Record<string, number>
  /** More litres than the vessel holds, or nothing at all. */
  impossible: string[]
  refusals: string[]
}

export const emptyTally = (): Tally => ({
  ...{
    days: 0,
    tasks: 0,
    starvedDays: 0,
    hungryDays: 0,
    larvalDays: 0,
    underFloor: 0,
    harvestDays: 0,
    crashes: 0,
    sickDays: 0,
    cultureDays: 0,
  },
  ...{
    foulLarvae: 0,
    foulJuveniles: 0,
    foulPairs: 0,
    foulCultures: 0,
    foulByNitrite: 0,
    mostNitriteMgPerL: 0,
    juvenileDays: 0,
    poisoned: {},
    changedL: [],
  },
  ...{
    artemiaShort: 0,
    artemiaFeeds: 0,
    artemiaEmpty: 0,
    conesLost: 0,
    spawned: 0,
    hatched: 0,
    eggsUnseen: 0,
    hatchesMissed: 0,
  },
  ...{ eveningsPassed: 0, thinCopepods: 0, copepodDays: 0 },
  ...{ linksByHand: 0, filtersHung: 0, raised: 0, withdrawn: {}, impossible: [], refusals: [] },
})

export function sumOf(tallies: readonly Tally[]): Tally {
  const sum = emptyTally()
  for (const tally of tallies) {
    for (const name of Object.keys(sum) as (keyof Tally)[]) {
      const [all, one] = [sum[name], tally[name]]
      if (typeof all === 'number' && typeof one === 'number') Object.assign(sum, { [name]: all + one })
    }
    for (const [ruleId, times] of Object.entries(tally.withdrawn))
      sum.withdrawn[ruleId] = (sum.withdrawn[ruleId] ?? 0) + times
    sum.mostNitriteMgPerL = Math.max(...tallies.map(({ mostNitriteMgPerL }) => mostNitriteMgPerL))
    Object.assign(sum.poisoned, tally.poisoned)
    sum.changedL.push(...tally.changedL)
    sum.impossible.push(...tally.impossible)
    sum.refusals.push(...tally.refusals)
  }
  return sum
}

export function summaryOf(tally: Tally): string {
  const perDay = (tally.tasks / Math.max(1, tally.days)).toFixed(1)
  return [
    `${tally.days} days of rooms, ${perDay} tasks a day`,
    `${tally.spawned} clutches laid, ${tally.hatched} hatched, ${tally.eggsUnseen} of eggs that no list had asked about, ${tally.hatchesMissed} that none asked about by noon; ${tally.raised} larvae settled`,
    `larvae: ${tally.larvalDays} days of batches; starved on ${tally.starvedDays} while a culture could have fed them, on ${tally.hungryDays} with nothing to spare`,
    `cultures: ${tally.harvestDays} harvests, ${tally.underFloor} that left one under the floor; ${tally.crashes} crashed, dying on ${tally.sickDays} of ${tally.cultureDays} days`,
    `ammonia over what is safe: ${tally.foulLarvae} of ${tally.larvalDays} days of batches, ${tally.foulJuveniles} of ${tally.juvenileDays} of juveniles, ${tally.foulPairs} of pairs, ${tally.foulCultures} of cultures; killed by it: ${byShare(tally.poisoned) || 'none'}; nitrite ${tally.mostNitriteMgPerL.toFixed(1)} mg/L at most, over what is safe on ${tally.foulByNitrite} days`,
    `water changed: ${quantile(tally.changedL, 0.5)} L on the middle day, ${quantile(tally.changedL, 0.9)} L on one in ten, ${quantile(tally.changedL, 1)} L at most`,
    `Artemia: ${tally.artemiaFeeds} feeds, ${tally.artemiaShort} without enough of them; ${tally.artemiaEmpty} harvests before they were out; ${tally.conesLost} cones started again before they were harvested`,
    ...(tally.copepodDays > 0 ? [openWater(tally)] : []),
    `beside the list: ${tally.linksByHand} batches linked to a culture by hand; ${tally.filtersHung} filters hung in, as a task said`,
    `asked and withdrawn: ${byTimes(tally.withdrawn) || 'none'}; more than a vessel holds, or nothing: ${tally.impossible.join('; ') || 'none'}`,
    `refused: ${tally.refusals.length}${[...new Set(tally.refusals)]
      .slice(0, 8)
      .map((one) => `\n  ${one}`)
      .join('')}`,
  ].join('\n')
}

const openWater = ({ eveningsPassed, thinCopepods, copepodDays }: Tally): string =>
  `floating eggs of ${eveningsPassed} evenings that nobody collected; copepods too thin on ${thinCopepods} of ${copepodDays} days`

const quantile = (values: readonly number[], share: number): number => {
  const sorted = [...values].sort((a, b) => a - b)
  return Math.round(sorted[Math.ceil(share * (sorted.length - 1))] ?? 0)
}

const byShare = (shares: Record<string, number>): string =>
  Object.entries(shares)
    .filter(([, share]) => share >= 0.05)
    .sort(([, a], [, b]) => b - a)
    .map(([name, share]) => `${Math.round(share * 100)} % of ${name}`)
    .join(', ')

const byTimes = (times: Record<string, number>): string =>
  Object.entries(times)
    .sort(([, a], [, b]) => b - a)
    .map(([ruleId, number]) => `${ruleId} ${number}`)
    .join(', ')
