import { describe, expect, test } from 'vitest'
import type { TaskDraft } from '../../engine/draft-day.ts'
import type { Rule } from '../../rule/rule.ts'
import { chilledRoom, choose, larvaeRoom } from '../../testing/forms/form-rooms.ts'
import { saidSteps } from '../../testing/said-steps.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, type SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { foodKeepLarvae } from './food-keep-larvae.ts'
import { larvalGreenWater } from './green-water.ts'
import { larvalAmmoniaAct } from './larval-ammonia-act.ts'
import { larvalAmmoniaTest } from './larval-ammonia-test.ts'
import { larvalChilledFeed } from './larval-chilled-feed.ts'
import { larvalHeadCount } from './larval-head-count.ts'
import { larvalLight } from './larval-light.ts'
import { larvalLook } from './larval-look.ts'
import { larvalNoneLeft } from './larval-none-left.ts'
import { larvalSiphon } from './larval-siphon.ts'
import { larvalWaterChange } from './larval-water-change.ts'
import { larvalPreyCount } from './prey-count.ts'
import { larvalPreyTopUp } from './prey-top-up.ts'

const date = '2026-03-10'
const clownfish = 'amphiprion-ocellaris'
const seahorse = 'hippocampus-erectus'
const cardinalfish = 'pterapogon-kauderni'

const first = (room: SnapshotBuilder, rule: Rule, on = date): TaskDraft => {
  const [draft] = room.drafts(on, [rule]).drafts
  if (!draft) throw new Error(`${rule.id} asks for nothing`)
  return draft
}
const lateAfterMinutes = ({ dueAt, lateAt }: TaskDraft) => (Date.parse(lateAt) - Date.parse(dueAt)) / 60_000

const look = [
  'A cup of them against the light: full bellies are round and silvery or green.',
  'Schooling into the current, or lying, spinning, gulping at the surface?',
  'Bars showing, settling on walls and bottom? Bent backs, short gill covers?',
]
// 1,000 to 2,000 lux and twelve hours of the room: common practice.
const light = [
  '1000 lux to 2000 lux at the surface; a little less on the first day.',
  '12 hours of light, from 07:00 to 19:00, dark after that; no glare on one wall.',
  'Where the lamp keeps other hours, set its timer, or write its hours of light on the tank’s page.',
]
// Among other steps it says what it is.
const weekly = [`The light, weekly: ${light[0]}`, ...light.slice(1)]
const siphon = [
  'Turn the air down, light at one end; siphon with a thin hose into a white bowl.',
  'Count the dead in the bowl; put back what swims.',
  'Deformed among the dead: count them too. Bent back, short gill covers, a fin missing.',
]

/** Two hundred that somebody looked at the day before, when it was light and lamp were seen to. */
function lookedAt(hatchedOn: string, days = 1) {
  const made = larvaeRoom({ hatchedOn, larvae: 200 })
  const at = `2026-03-${String(10 - days).padStart(2, '0')}T12:00:00.000Z`
  made.room.fact('observation', made.batch.id, at, { signs: ['all_well'] })
  made.room.fact('care', made.batch.id, at, { act: 'check_light' })
  return made
}

describe('a look', () => {
  test('with the light says both, and with what they are told apart by sight', () => {
    const draft = onlyDraft(larvaeRoom({ hatchedOn: '2026-03-08', larvae: 200 }).room.drafts(date, [larvalLook]))
    expect([draft.roundId, draft.content.verb]).toEqual(['midday', 'look'])
    expect(saidSteps(draft)).toEqual([...look, ...weekly])
    expect(draft.content.looks).toEqual(['full_bellies', 'hungry_larvae', 'settled_larvae', 'deformed_larvae'])
    expect(whyLines(draft)).toEqual(['hatched the night of 2026-03-08', 'and 2 days from one look to the next'])
  })

  test('without the light says when they were looked at last', () => {
    const draft = onlyDraft(lookedAt('2026-03-08', 2).room.drafts(date, [larvalLook]))
    expect(saidTitle(draft)).toBe('Look at the larvae, day 1')
    expect(saidSteps(draft)).toEqual(look)
    expect(whyLines(draft)[1]).toBe('and last looked at')
    expect(signOff(larvalLook, draft, { seen: 'well' }).facts).toHaveLength(1)
  })

  test('writes down what was seen, and that somebody looked where nothing was', () => {
    const { room, batch } = larvaeRoom({ hatchedOn: '2026-03-08', larvae: 200 })
    const draft = onlyDraft(room.drafts(date, [larvalLook]))
    const seen = (values: Record<string, unknown>) => signOff(larvalLook, draft, values).facts[0]?.data
    expect(seen({ seen: 'hungry', note: 'few prey' })).toEqual({
      signs: ['not_eating'],
      note: 'Hungry or thin. few prey',
    })
    expect(seen({ seen: 'poorly', settled: 'some' })).toEqual({ signs: [], note: 'Poorly. Some barred and settled.' })
    expect(seen({ seen: 'hungry', settled: 'most' })).toEqual({
      signs: ['not_eating', 'settled'],
      note: 'Hungry or thin.',
    })
    expect(seen({ seen: 'well', settled: 'none' })).toEqual({ signs: ['all_well'], note: '' })
    expect(seen({})).toEqual({ signs: [], note: 'Looked at.' })
    // A task of before the light went with it.
    expect(signOff(larvalLook, { ...draft, context: {} }, { seen: 'well' }).facts).toMatchObject([
      { kind: 'observation', subjectId: batch.id },
    ])
  })

  test('of the light alone stands where nobody looks, from the first day on', () => {
    const { room } = larvaeRoom({ hatchedOn: date, larvae: 200 })
    room.setting('larval-look', { isOn: false })
    // They hatch in the night of the 10th: their first day is the 11th.
    expect(room.drafts(date, [larvalLight]).drafts).toEqual([])
    const draft = onlyDraft(room.drafts('2026-03-11', [larvalLight]))
    expect([draft.roundId, saidTitle(draft)]).toEqual(['midday', 'Check the light'])
    expect(saidSteps(draft)).toEqual(light)
  })
})

describe('siphoning the bottom', () => {
  test('goes with a look that is due, after the morning', () => {
    const draft = onlyDraft(larvaeRoom({ hatchedOn: '2026-03-07', larvae: 200 }).room.drafts(date, [larvalSiphon]))
    expect([draft.roundId, draft.content.verb]).toEqual(['midday', 'siphon'])
    expect(saidSteps(draft)).toEqual([...look, ...weekly, ...siphon])
    expect(draft.content.looks).toEqual(['full_bellies', 'hungry_larvae', 'settled_larvae', 'deformed_larvae'])
    expect(whyLines(draft)).toEqual(['hatched the night of 2026-03-07', 'and 2 days old when it begins'])
  })

  test('alone asks for the dead and the deformed among them, and for no look', () => {
    const { room, batch } = lookedAt('2026-03-07')
    const draft = onlyDraft(room.drafts(date, [larvalSiphon]))
    expect(saidTitle(draft)).toBe('Siphon the bottom, count the dead')
    expect(saidSteps(draft)).toEqual(siphon)
    expect(draft.content.looks).toEqual(['deformed_larvae'])
    expect(draft.content.fields.map(({ name }) => name)).toEqual(['dead', 'deformed', 'note'])
    const values = { dead: 3, note: 'cloudy', seen: 'well' }
    expect(signOff(larvalSiphon, draft, values).facts).toEqual([
      { kind: 'care', subjectId: batch.id, data: { act: 'siphon_bottom', note: 'cloudy' } },
      { kind: 'loss', subjectId: batch.id, data: { number: 3, of: 'larvae' } },
    ])
  })

  test('a look two days before goes with it, and says when', () => {
    const draft = onlyDraft(lookedAt('2026-03-07', 2).room.drafts(date, [larvalSiphon]))
    expect(saidSteps(draft)).toEqual([...look, ...siphon])
    expect(whyLines(draft).at(-1)).toBe('and last looked at')
  })

  test('no more can be deformed than were dead', () => {
    expect(larvalSiphon.check?.({ deformed: 1 })).toMatchObject([
      { path: 'values.deformed', message: 'More deformed than dead: 0 were dead. Count both in the bowl.' },
    ])
    expect(larvalSiphon.check?.({})).toEqual([])
    expect(larvalWaterChange.check?.({ dead: 2, deformed: 3 })).toHaveLength(1)
  })
})

describe('changing their water', () => {
  const water = 'New water at 30 psu and 27 degC, measured, within 1 of both.'

  test('goes with siphon and look, over an hour, and the prey goes with it', () => {
    const draft = onlyDraft(larvaeRoom({ hatchedOn: '2026-03-06', larvae: 200 }).room.drafts(date, [larvalWaterChange]))
    expect([draft.roundId, saidTitle(draft)]).toEqual(['midday', '4 L new water, bottom siphoned, larvae looked at'])
    expect(saidSteps(draft)).toEqual([
      ...[water, ...look, ...weekly, ...siphon],
      'The rest out through a screen that holds the larvae; in by a drip line, over an hour.',
      'Prey and green water go with it: count and top up afterwards.',
    ])
    // A fifth on day 3: 0.2 x 20 L.
    expect(whyLines(draft)).toEqual([
      ...['hatched the night of 2026-03-06', 'and 0.2 share at first', 'and 0.02 share more each day'],
      ...['equals 0.2 share today', 'times 20 L in Nursery 1'],
    ])
  })

  test('of young that a pouch let go has no green water to think of', () => {
    const { room } = larvaeRoom({ hatchedOn: '2026-03-06', larvae: 200, species: seahorse })
    const draft = onlyDraft(room.drafts(date, [larvalWaterChange]))
    expect(saidSteps(draft).slice(-2)).toEqual([
      'The rest out through a screen that holds the young; in by a drip line, over an hour.',
      'Prey goes with it: before a feed, not after one.',
    ])
    expect(whyLines(draft)[0]).toBe('released the night of 2026-03-06')
  })

  test('by what was read of ammonia says how much that is, and without a look asks for none', () => {
    const { room, tank } = lookedAt('2026-03-06')
    const read = { pH: 8.1, temperatureC: 27, totalAmmoniaNMgPerL: 0.25 }
    room.fact('water_test', tank.id, '2026-03-09T07:05:00.000Z', read)
    const draft = onlyDraft(room.drafts(date, [larvalWaterChange]))
    expect(saidTitle(draft)).toBe('7.3 L new water, bottom siphoned')
    expect(draft.content.looks).toEqual(['deformed_larvae'])
    // 6.3 % of it at pH 8.1, 27 C and 30 is NH3; 1 - 0.01 / 0.0157 of 20 L.
    expect(whyLines(draft).slice(3)).toEqual([
      ...['0.25 mg_per_L total ammonia (as N)', 'and 8.1 pH read in the water'],
      ...['equals 0.016 mg_per_L un-ionised, NH3-N', 'equals 0.364 share today', 'times 20 L in Nursery 1'],
    ])
  })

  test('is signed off as planned where it was kept before a look went with it', () => {
    const { room, tank, batch } = larvaeRoom({ hatchedOn: '2026-03-06', larvae: 200 })
    const draft = onlyDraft(room.drafts(date, [larvalWaterChange]))
    const kept = { ...draft, context: { tankId: tank.id, plannedL: 4 } }
    expect(signOff(larvalWaterChange, kept, { dead: 0, seen: 'well' }).facts).toEqual([
      { kind: 'water_change', subjectId: tank.id, data: { removedL: 4, addedL: 4 } },
      { kind: 'care', subjectId: batch.id, data: { act: 'siphon_bottom' } },
    ])
  })
})

describe('the head count', () => {
  const counted = (given: Parameters<typeof larvaeRoom>[0], on = date) =>
    onlyDraft(larvaeRoom(given).room.drafts(on, [larvalHeadCount]))

  test('of larvae is by a part of the surface, and says what the tank may hold: 20 a litre', () => {
    const draft = counted({ hatchedOn: '2026-03-03', larvae: 200 })
    expect([draft.roundId, saidTitle(draft)]).toEqual(['midday', 'Count the larvae'])
    expect(saidSteps(draft)).toEqual([
      'Light at one end; count a tenth of the surface and ten times that, or a photograph from above.',
      'More than 400 animals in Nursery 1: move those above it to another larval tank, in a jug under water.',
      'Write down how many are left in it; what was moved is written down as a move, on their page.',
    ])
    expect(whyLines(draft)).toEqual([
      ...['hatched the night of 2026-03-03', 'and 5 days old at the count', 'and 7 days old at the latest'],
      ...['and 200 animals by the book', 'and 20 L in Nursery 1', 'times 20 per_L larvae at most'],
    ])
  })

  // 1 to 3 seahorses and 1 to 2 cardinalfish a litre: no study found; forty in 20 to 40 L.
  test('of young that are small fish from the first day allows as many as their kind bears', () => {
    const most = (species: string, mostPerL?: number) => {
      const { room } = larvaeRoom({ hatchedOn: '2026-03-03', species })
      if (mostPerL !== undefined) room.setting('larval-head-count', { parameters: { mostPerL } })
      const draft = onlyDraft(room.drafts(date, [larvalHeadCount]))
      return [draft.content.steps[1]?.quantities.most?.value, whyLines(draft).at(-1)]
    }
    expect(most(seahorse)).toEqual([60, 'times 3 per_L young at most'])
    expect(most(cardinalfish)).toEqual([40, 'times 2 per_L young at most'])
    // A room may allow fewer of them, and more of larvae.
    expect(most(seahorse, 1)).toEqual([20, 'times 1 per_L larvae at most'])
    expect(most(clownfish, 30)).toEqual([600, 'times 30 per_L larvae at most'])
    expect(saidSteps(counted({ hatchedOn: '2026-03-03', species: seahorse }))[0]).toBe(
      'Count them as they pass from one cup to another under water, or on a photograph.',
    )
  })

  test('of young that wait for grow-out measures five, and says when they were counted', () => {
    const { room, batch } = larvaeRoom({ hatchedOn: '2026-01-31', larvae: 200 })
    const asked = () => onlyDraft(room.drafts('2026-03-12', [larvalHeadCount]))
    expect(saidSteps(asked())).toEqual([
      'Count them as they pass from one cup to another under water, or on a photograph from above.',
      'Five of them to a ruler, nose to tail. Sick or bent ones are written down.',
    ])
    const again = 'and 14 days from one count of young that wait for grow-out to the next'
    const born = 'hatched the night of 2026-01-31'
    expect(whyLines(asked())).toEqual([born, again, 'and 200 animals by the book'])
    room.fact('count', batch.id, '2026-02-25T12:00:00.000Z', { of: 'larvae', animals: [150] })
    expect(whyLines(asked())).toEqual([born, 'and last counted', again, 'and 150 animals by the book'])
    // None left by the book is asked about elsewhere.
    room.fact('count', batch.id, '2026-02-26T12:00:00.000Z', { of: 'larvae', animals: [0] })
    expect(room.drafts('2026-03-12', [larvalHeadCount]).drafts).toEqual([])
  })

  test('a sample in so many mL is no head count, and what was measured and noted is kept', () => {
    const { room, batch } = larvaeRoom({ hatchedOn: '2026-03-03', larvae: 200 })
    room.fact('count', batch.id, '2026-03-09T12:00:00.000Z', { of: 'larvae', animals: [4], volumeMl: 100 })
    const draft = onlyDraft(room.drafts(date, [larvalHeadCount]))
    const typed = { number: 159.6, lengthMm: 6, deformed: 2, note: 'by photograph' }
    expect(signOff(larvalHeadCount, draft, typed).facts).toEqual([
      { kind: 'count', subjectId: batch.id, data: { of: 'larvae', animals: [160], lengthMm: 6, deformed: 2 } },
      { kind: 'observation', subjectId: batch.id, data: { note: 'by photograph' } },
    ])
  })
})

describe('rotifers left and given', () => {
  const fedRoom = (perMl = 250) => {
    const made = larvaeRoom({ hatchedOn: '2026-03-07', larvae: 200 })
    const culture = made.room.culture({ startedAt: '2026-02-01T08:00:00.000Z' })
    made.room.count(culture, `${date}T06:30:00.000Z`, [perMl, perMl, perMl])
    made.room.feedLink(made.batch, culture)
    return { ...made, culture }
  }

  test('a count of what is left says how, what was left last, and that it will not wait', () => {
    const { room, batch } = fedRoom()
    room.fact('count', batch.id, '2026-03-09T12:00:00.000Z', { of: 'prey_rotifers', animals: [40], volumeMl: 10 })
    const draft = first(room, larvalPreyCount)
    expect([saidTitle(draft), lateAfterMinutes(draft)]).toEqual(['Count the rotifers left', 60])
    expect(draft.content.looks).toEqual(['full_bellies', 'hungry_larvae'])
    expect(saidSteps(draft)[0]).toBe('Take 3 samples of 10 mL from different places, before feeding.')
    // A. ocellaris eats rotifers until day 11.
    expect(whyLines(draft)).toEqual([
      ...['hatched the night of 2026-03-07', 'and 11 days old when rotifers end', 'and 4 per_mL last counted'],
      ...['and in Nursery 1', 'and 10 mL a sample'],
    ])
  })

  test('a feed says where it comes from, and multiplies out: 10 x 20,000 / 250 / 0.9', () => {
    const draft = first(fedRoom().room, larvalPreyTopUp)
    expect([saidTitle(draft), lateAfterMinutes(draft)]).toEqual([
      '890 mL of R1, sieved, 200,000 rotifers, first feed',
      60,
    ])
    expect(draft.content.amountOf).toBe('R1, sieved')
    expect(saidSteps(draft)).toEqual([
      'Check by eye that there is room for them: bellies and water.',
      'Take 890 mL out of R1, or of its harvest when that is done.',
      'Sieve, rinse, and resuspend in water from the larvae’s tank: culture water never goes into larvae.',
      'Spread them over the surface, with the air gentle.',
    ])
    expect(whyLines(draft)).toEqual([
      ...['10 per_mL rotifers to keep', 'minus 0 per_mL left: none fed yet', 'times 20 L in Nursery 1'],
      ...['equals 200000 animals to add', 'divided by 250 per_mL counted', 'and 0.1 share lost in sieving'],
      ...['and 15 per_mL at most', 'and 20 per_mL at most, where they eat it before the next feed'],
      ...['and usual for ocellaris clownfish 5-10 per mL', 'equals 890 mL of R1, to what a jug or syringe shows'],
    ])
  })

  test('a feed that the morning’s harvest covers is taken of that', () => {
    const { room, batch, culture } = fedRoom()
    const parts = [{ to: 'larval_batch' as const, subjectId: batch.id, volumeL: 2 }]
    room.fact('harvest', culture.id, `${date}T06:50:00.000Z`, { volumeL: 2, parts })
    expect(saidSteps(first(room, larvalPreyTopUp))[1]).toBe(
      'Take 890 mL of what was harvested from R1 for Batch 1 today.',
    )
  })

  test('a feed that is smaller than they want says what holds it back', () => {
    const last = (perMl: number, tankL: number) => {
      const { room, tank } = fedRoom(perMl)
      tank.volumeL = tankL
      const draft = first(room, larvalPreyTopUp)
      return [saidSteps(draft).at(-1), ...whyLines(draft).slice(2, 5)]
    }
    const none = 'No other culture has any left today: Food ahead says what can be done.'
    // All of 9 L at 225 a mL for the morning's half of the day: a million, of the million and a half of 150 L.
    expect(last(250, 150)).toEqual([
      `R1 cannot give it all: no more than half of it in a day, shared between all that eat from it. ${none}`,
      ...['times 150 L in Nursery 1', 'times 0.67 share of it, as far as R1 goes', 'equals 1000000 animals to add'],
    ])
    expect(last(80, 100)).toEqual([
      `R1 cannot give it all without falling under its floor: what it has is shared between all that eat from it. ${none}`,
      ...['times 100 L in Nursery 1', 'times 0.17 share of it, as far as R1 goes', 'equals 170000 animals to add'],
    ])
  })

  test('a feed by the plan of the food says how many litres that is in a day, and what the plan keeps back', () => {
    const { room, batch, culture } = fedRoom()
    const planned = (share: number) => {
      const batches = [{ batchId: batch.id, share, from: [{ cultureId: culture.id, volumeL: 1, animals: 200_000 }] }]
      const cultures = [{ cultureId: culture.id, fedL: 1, spareL: 0 }]
      room.snapshot.foodPlan = { madeAt: `${date}T06:50:00.000Z`, days: [{ date, batches, cultures }] }
      return first(room, larvalPreyTopUp)
    }
    expect(planned(0.5).content.amount).toEqual({ value: 440, unit: 'mL' })
    expect(saidSteps(planned(0.5)).at(-1)).toBe(
      'The plan of the food has less for them today than they want, so that R1 lasts. Food ahead says what can be done about the rest.',
    )
    expect(whyLines(planned(0.5)).slice(2, 5)).toEqual([
      ...['times 20 L in Nursery 1', 'times 0.5 share of it, by the plan of the food', 'equals 100000 animals to add'],
    ])
    expect(whyLines(planned(0.5)).slice(-2)).toEqual([
      ...['and 1 L of R1 over the whole day', 'equals 440 mL of R1, to what a jug or syringe shows'],
    ])
    expect(saidSteps(planned(1)).at(-1)).toBe('Spread them over the surface, with the air gentle.')
  })

  test('what they are known to eat is told with the counts that say so, and the hours of light and of dark', () => {
    const { room, batch, culture } = fedRoom()
    const prey = (at: string, n: number) =>
      room.fact('count', batch.id, at, { of: 'prey_rotifers', animals: [n, n, n], volumeMl: 10 })
    prey('2026-03-09T07:00:00.000Z', 0)
    const fed = { food: 'rotifers', fromCultureId: culture.id, amountMl: 890, animals: 200_000 } as const
    room.fact('feeding', batch.id, '2026-03-09T07:30:00.000Z', fed)
    prey('2026-03-09T12:30:00.000Z', 60)
    const drafts = () => room.drafts(date, [larvalPreyTopUp]).drafts
    const eaten = 'eaten until the next feed, learned from one count here, light and dark apart'
    prey(`${date}T06:50:00.000Z`, 20)
    // 80 a larva an hour by light: 200 x 80 x 5.5 h. By night none is known to be eaten.
    expect(whyLines(drafts()[0]).slice(3, 6)).toEqual([
      ...[
        `plus 88000 animals ${eaten}`,
        'and 5.5 hours in the light until the next feed',
        'equals 250000 animals to add',
      ],
    ])
    expect(whyLines(drafts()[2]).slice(3, 6)).toEqual([
      ...[`plus 8000 animals ${eaten}`, 'and 0.5 hours in the light until the next feed'],
      'and 12 hours in the dark until the next feed',
    ])
    // Two stretches: five hours by day, and the night before last that ate nothing.
    room.fact('feeding', batch.id, '2026-03-09T12:40:00.000Z', { ...fed, animals: 80_000 })
    prey('2026-03-09T18:30:00.000Z', 60)
    expect(whyLines(drafts()[0]).join()).toMatch(/learned from [2-9] counts here/)
  })

  test('prey from a saltier or a fresher culture is brought over in three parts, and fed as it is where they are alike', () => {
    const steps = (salinity: number) => {
      const { room, tank } = fedRoom()
      tank.salinity = salinity
      return saidSteps(first(room, larvalPreyTopUp)).slice(3, -1)
    }
    expect(steps(30)).toEqual([])
    // A quarter of 890 mL; what is added three times leaves a quarter of the difference.
    expect(steps(33)).toEqual([
      'R1 is at 25 psu, Nursery 1 at 33 psu: rinse them into 0.22 L of water at 25 psu, with air.',
      'Add 0.22 L of water from Nursery 1 three times, 10 minutes apart; then they may go in.',
    ])
  })

  test('what came straight out of the culture is written down as taken, from a millilitre on', () => {
    const { room, batch, culture } = fedRoom()
    const parts = [{ to: 'larval_batch' as const, subjectId: batch.id, volumeL: 0.5 }]
    room.fact('harvest', culture.id, `${date}T06:50:00.000Z`, { volumeL: 0.5, parts })
    const draft = first(room, larvalPreyTopUp)
    const taken = (amountMl: number) =>
      signOff(larvalPreyTopUp, draft, { amountMl }).facts.flatMap((fact) =>
        fact.kind === 'harvest' ? [fact.data.volumeL] : [],
      )
    expect([500, 500.5, 501, 700].map(taken)).toEqual([[], [], [0.001], [0.2]])
  })

  test('of a reserve in the cold says how much of which jar, and what lives in it', () => {
    const draft = first(chilledRoom(), larvalChilledFeed)
    expect(draft.content.amountOf).toBe('what is left in the jar')
    expect(saidSteps(draft)).toEqual([
      'Turn the jar over gently; a drop of it, warm for a quarter of an hour, under the lens: do most swim?',
      'Sieve 0.26 share of it, rinse, and resuspend in water from the larvae’s tank.',
      'Beside the feeds from the cultures, not in place of them: the plan counts on both.',
    ])
    // 2 L at 240 a mL, of which nine in ten live after each day: 391,280 (Assavaaree et al. 2001); 100,000 are 26 %.
    expect(whyLines(draft)).toEqual([
      ...['100000 animals what no culture can give', 'and 2 L chilled'],
      'and 390000 animals alive in it after 2 days, about',
    ])
  })
})

describe('water that larvae live in', () => {
  test('is greened out of a strong bottle in two steps, or in one', () => {
    const steps = (cellsPerMl: number) => {
      const { room } = larvaeRoom({ hatchedOn: '2026-03-08' })
      room.concentrate({ cellsPerMl })
      return saidSteps(first(room, larvalGreenWater))
    }
    const looked = 'Look through the tank: a hand’s breadth deep it should be tinted, never a soup.'
    const shaken = 'Shake the bottle gently; back into the cold at once.'
    // 200,000 x 20,000 mL are 4e9 cells.
    expect(steps(65e9)).toEqual([
      ...[looked, shaken, 'Stir 1 mL of it into 9 mL of tank water: that is 1 in 10.'],
      'Pour 0.6 mL in near the air, a little at a time. Still green from yesterday? Give half.',
    ])
    expect(steps(1e9)).toEqual([
      ...[looked, shaken],
      'Pour 4 mL in near the air, a little at a time. Still green from yesterday? Give half.',
    ])
  })

  test('is greened from the bottle that feeds their rotifers, else from the only one', () => {
    const from = (linked: boolean) => {
      const { room, batch } = larvaeRoom({ hatchedOn: '2026-03-08' })
      room.concentrate({ name: 'the old bottle' })
      const { id } = room.concentrate({ name: 'the new bottle' })
      if (linked) room.feedLink(batch, room.culture({ startedAt: '2026-02-01T08:00:00.000Z', concentrateId: id }))
      const { drafts, gaps } = room.drafts(date, [larvalGreenWater])
      return drafts[0]?.content.amountOf ?? gaps[0]?.message
    }
    expect(from(true)).toContain('the new bottle')
    expect(from(false)).toContain('Say which concentrate greens the water')
  })

  test('is green already where algae of any kind went in today, and after them is greened by half; prey is no algae', () => {
    const asked = (food: 'concentrate' | 'live_microalgae' | 'rotifers', at: string) => {
      const { room, batch } = larvaeRoom({ hatchedOn: '2026-03-07' })
      room.concentrate({ cellsPerMl: 1e9 })
      room.fact('feeding', batch.id, at, { food })
      return room.drafts(date, [larvalGreenWater]).drafts[0]?.content.amount?.value
    }
    const [today, yesterday] = [`${date}T06:30:00.000Z`, '2026-03-09T07:30:00.000Z']
    expect((['concentrate', 'live_microalgae', 'rotifers'] as const).map((food) => asked(food, today))).toEqual([
      ...[undefined, undefined, 4],
    ])
    expect((['concentrate', 'live_microalgae', 'rotifers'] as const).map((food) => asked(food, yesterday))).toEqual([
      ...[2, 2, 4],
    ])
  })

  test('is tested for ammonia: from how much on it is changed, and when it was tested last', () => {
    const { room, tank } = larvaeRoom({ hatchedOn: '2026-03-06' })
    const test1 = first(room, larvalAmmoniaTest)
    // At pH 8.2, 27 C and 30 about 7.7 % of it is NH3: 0.02 / 0.077.
    expect(saidSteps(test1).at(-1)).toBe(
      'From 0.26 mg_per_L on, water is changed at once: at 8.2 pH that much is poisonous here. Any colour below it is watched; none is best.',
    )
    expect(whyLines(test1)).toEqual(['tests so far none', 'and 2 days from one test to the next'])
    expect(lateAfterMinutes(test1)).toBe(120)
    const read = { totalAmmoniaNMgPerL: 0.5, pH: 8.1, temperatureC: 27 }
    room.fact('water_test', tank.id, `${date}T06:40:00.000Z`, read)
    const act = first(room, larvalAmmoniaAct)
    expect([saidTitle(act), lateAfterMinutes(act)]).toEqual(['10 L new water, against ammonia', 60])
    expect(saidSteps(act)).toEqual([
      'New water at 30 psu and 27 degC, measured, within 1 of both.',
      'Half an hour by a drip line, not at once. It is tested again in the next round.',
      'Look for the cause: dead animals, food left over, a filter that stands.',
    ])
    expect(whyLines(act)).toEqual([
      ...[
        '0.5 mg_per_L total ammonia (as N)',
        'and 8.1 pH read in the water',
        'equals 0.031 mg_per_L un-ionised, NH3-N',
      ],
      ...['and 0.02 mg_per_L NH3-N from which to act', 'and 0.01 mg_per_L NH3-N to come down to'],
      ...['equals 0.5 share to change', 'and 0.5 share at most at once', 'times 20 L in Nursery 1'],
    ])
    room.fact('water_change', tank.id, `${date}T07:40:00.000Z`, { removedL: 10, addedL: 10 })
    const again = first(room, larvalAmmoniaTest)
    expect([saidTitle(again), lateAfterMinutes(again)]).toEqual(['Test the ammonia again, after the change', 60])
    expect(whyLines(again)).toEqual([
      ...['last tested', 'and water changed against it', 'and 2 days from one test to the next'],
    ])
  })
})

describe('too many, and none', () => {
  test('larvae above what there is food for are decided on by whoever keeps them, not by a stand-in', () => {
    const { room, batch } = larvaeRoom({ hatchedOn: '2026-03-09', larvae: 600 })
    choose(room, { kind: 'keep_larvae', subjectId: batch.id, larvae: 300 })
    const draft = onlyDraft(room.drafts(date, [foodKeepLarvae]))
    expect([draft.roundId, draft.isForStandIn, saidTitle(draft)]).toEqual([
      ...['morning', false, 'Keep 300 larvae, 600 by the book'],
    ])
    expect(whyLines(draft)).toEqual(['300 animals fed by the plan', 'and 600 animals there are'])
    const facts = (values: Record<string, unknown>) => signOff(foodKeepLarvae, draft, values).facts
    expect(facts({ placed: 0, culled: 1, note: 'by the vet' })).toEqual([
      { kind: 'outcome', subjectId: batch.id, data: { outcome: 'culled', number: 1, note: 'by the vet' } },
    ])
    expect(facts({ placed: 3 }).map(({ data }) => data)).toEqual([{ outcome: 'placed', number: 3 }])
    expect(foodKeepLarvae.check?.({})).toEqual([{ path: 'placed', message: 'how many went, and where; 0 if none did' }])
    expect(foodKeepLarvae.check?.({ culled: 0 })).toEqual([])
    expect(foodKeepLarvae.check?.({ placed: 0 })).toEqual([])
  })

  test('what was chosen last holds, from the hatch night on', () => {
    const { room, batch } = larvaeRoom({ hatchedOn: '2026-03-10', larvae: 600 })
    choose(room, { kind: 'keep_larvae', subjectId: batch.id, larvae: 400 })
    choose(room, { kind: 'keep_larvae', subjectId: batch.id, larvae: 300 })
    expect(room.drafts('2026-03-09', [foodKeepLarvae]).drafts).toEqual([])
    expect(onlyDraft(room.drafts(date, [foodKeepLarvae])).content.amount).toEqual({ value: 300, unit: 'animals' })
    // Nobody knows whether larvae that nobody numbered are too many.
    const unnumbered = larvaeRoom({ hatchedOn: '2026-03-09' })
    choose(unnumbered.room, { kind: 'keep_larvae', subjectId: unnumbered.batch.id, larvae: 300 })
    expect(unnumbered.room.drafts(date, [foodKeepLarvae]).drafts).toEqual([])
  })

  test('two batches of one tank that are both empty by their book are two looks', () => {
    const { room, batch, tank } = larvaeRoom({ hatchedOn: '2026-03-01', larvae: 200 })
    const other = room.batch({ name: 'Batch 2', hatchedOn: '2026-03-02', tankId: tank.id, larvae: 10 })
    room.fact('loss', batch.id, '2026-03-09T12:00:00.000Z', { of: 'larvae', number: 200, cause: 'other' })
    room.fact('loss', other.id, '2026-03-09T12:00:00.000Z', { of: 'larvae', number: 10, cause: 'other' })
    expect(room.drafts(date, [larvalNoneLeft]).drafts.map((draft) => [draft.ordinal, saidTitle(draft)])).toEqual([
      [1, 'Look for larvae of Batch 1: by the book none are left'],
      [2, 'Look for larvae of Batch 2: by the book none are left'],
    ])
  })

  test('larvae of a species that nobody knows here are not guessed at: their food is asked about, the rest waits', () => {
    const { room } = larvaeRoom({ hatchedOn: '2026-02-20', species: 'gobiodon-unknown', larvae: 100 })
    room.concentrate()
    const rules = [larvalGreenWater, larvalPreyCount, larvalHeadCount, larvalSiphon, larvalLook, larvalAmmoniaTest]
    expect(room.drafts(date, rules)).toEqual({ drafts: [], gaps: [] })
  })

  test('a tank that is empty by its book is looked through, and what is found is counted', () => {
    const { room, batch } = larvaeRoom({ hatchedOn: '2026-03-01', larvae: 200 })
    room.fact('loss', batch.id, '2026-03-09T12:00:00.000Z', { of: 'larvae', number: 200, cause: 'other' })
    const draft = onlyDraft(room.drafts(date, [larvalNoneLeft]))
    expect(saidSteps(draft)).toEqual([
      'A torch along the surface, the corners and the bottom: larvae that nobody counted starve unseen.',
      'Some are there? Write how many: their feeds come back to the list at once.',
      'None? Write 0. Nursery 1 is then emptied, disinfected, rinsed and dried for the next.',
    ])
    expect(whyLines(draft)).toEqual(['0 animals larvae by the book'])
    expect(signOff(larvalNoneLeft, draft, { number: 12.4, note: 'in the corner' }).facts).toEqual([
      { kind: 'count', subjectId: batch.id, data: { of: 'larvae', animals: [12] } },
      { kind: 'observation', subjectId: batch.id, data: { note: 'in the corner' } },
    ])
  })
})
