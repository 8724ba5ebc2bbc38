import type { FoodChange } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import { addDays } from '../calendar/husbandry-day.ts'
import type { SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { steadyCulture } from '../testing/steady-culture.ts'
import { crashDays, sharedCauses } from './crash-days.ts'
import { meanWanted } from './eater-ahead.ts'
import { type FoodAhead, foodAhead } from './food-ahead.ts'

const today = '2026-03-10'
const at = (date: string, time = '12:00') => `${date}T${time}:00.000Z`
const days = 21
const futures = 200

function ahead(room: SnapshotBuilder, changes: FoodChange[] = []): FoodAhead {
  return foodAhead(room.build(), {
    horizon: { today, days, futures },
    changes,
    record: { crashes: 0, cultureDays: 0, lived: [] },
  })
}
const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0)
/** Expected of one eater on each day. */
const wantedBy = (food: FoodAhead, id: string) => {
  const eater = food.eaters.find((each) => each.id === id)
  return eater ? meanWanted(eater, days) : null
}

describe('what is wanted', () => {
  test('of a batch today is what its feeds ask, and nothing after its last day on rotifers', () => {
    const room = new SnapshotBuilder()
    const culture = steadyCulture(room, { date: today })
    // Hatched on the 4th: day 5 of life today, day 11 on the 16th.
    const batch = room.batch({ hatchedOn: '2026-03-04', larvae: 300 })
    room.feedLink(batch, culture)
    const wanted = wantedBy(ahead(room), batch.id)!
    // 20 L: 10 per mL into nothing, then 5 and 5 to bring 5 back to 10.
    expect(wanted[0]).toBeCloseTo(20_000 * 20, 0)
    // Three feeds of 5 per mL where nobody has counted what is eaten, give or take.
    expect(wanted[1]! / (20_000 * 15)).toBeGreaterThan(0.9)
    expect(wanted[1]! / (20_000 * 15)).toBeLessThan(1.2)
    expect(wanted.map((animals) => animals > 0)).toEqual([...new Array(7).fill(true), ...new Array(14).fill(false)])
    expect(ahead(room).eaters[0]).toMatchObject({ kind: 'larval_batch', larvae: 300, fedFrom: [culture.id] })
  })

  test('of a clutch begins the morning after its nights, as likely as they are', () => {
    const room = new SnapshotBuilder()
    const clutch = room.clutch(room.pair(), { spawnedAt: at('2026-03-06'), eggs: 400 })
    const food = ahead(room)
    const eater = food.eaters.find(({ id }) => id === clutch.id)!
    expect(sum(eater.nights.map(({ probability }) => probability))).toBeCloseTo(1, 9)
    expect(eater.larvae).toBe(320)
    for (const { date, probability } of eater.nights.filter((night) => night.probability > 0.1)) {
      const by = eater.nights.filter((night) => night.date <= date)
      const day = sum(by.map(() => 1)) + (Date.parse(eater.nights[0]!.date) - Date.parse(today)) / 86_400_000
      const eats = eater.futures.filter((future) => future[day]! > 0).length / futures
      expect(eats).toBeGreaterThan(sum(by.map((night) => night.probability)) - 0.12)
      expect(eats).toBeLessThan(sum(by.map((night) => night.probability)) + 0.12)
      expect(probability).toBeLessThanOrEqual(1)
    }
  })

  test('of a clutch whose nights are over is nothing, and the plan asks what became of it', () => {
    const room = new SnapshotBuilder()
    const clutch = room.clutch(room.pair(), { spawnedAt: at('2026-02-12'), eggs: 400 })
    const food = ahead(room)
    expect(food.eaters.map(({ id }) => id)).not.toContain(clutch.id)
    expect(food.gaps).toEqual([
      `${clutch.name}: it should have hatched by now. Say what became of it, and the plan counts on that.`,
    ])
  })

  test('grows with the clutch: left with its parents it wants nothing, of fewer larvae less', () => {
    const room = new SnapshotBuilder()
    const pair = room.pair()
    const clutch = room.clutch(pair, { spawnedAt: at('2026-03-06'), eggs: 1200 })
    const all = sum(wantedBy(ahead(room), clutch.id)!)
    const few = sum(wantedBy(ahead(room, [{ kind: 'keep_larvae', subjectId: clutch.id, larvae: 200 }]), clutch.id)!)
    expect(few).toBeLessThan(all / 3)
    expect(few).toBeGreaterThan(0)
    expect(wantedBy(ahead(room, [{ kind: 'leave_clutch', clutchId: clutch.id }]), clutch.id)).toBeNull()
    // What was decided of a clutch holds for the batch that it hatches into.
    const batch = room.batch({ hatchedOn: '2026-03-08', larvae: 900, clutchIds: [clutch.id] })
    const kept = ahead(room, [{ kind: 'keep_larvae', subjectId: clutch.id, larvae: 200 }])
    expect(kept.eaters.find(({ id }) => id === batch.id)?.larvae).toBe(200)
    room.fact('decision', clutch.id, at('2026-03-09'), { intent: 'leave_with_parents' })
    expect(wantedBy(ahead(room), clutch.id)).toBeNull()
  })

  test('ends sooner where Artemia takes over two days after its first', () => {
    const room = new SnapshotBuilder()
    const batch = room.batch({ hatchedOn: '2026-03-08', larvae: 200 })
    const lastDay = (food: FoodAhead) => wantedBy(food, batch.id)!.findLastIndex((animals) => animals > 0)
    // Day 1 of life today: day 11 in ten days, day 7 in six.
    expect([lastDay(ahead(room)), lastDay(ahead(room, [{ kind: 'artemia_sooner' }]))]).toEqual([10, 6])
  })

  test('knows of clutches still to be laid, and of one laid tonight', () => {
    const room = new SnapshotBuilder()
    const pair = room.pair()
    for (const date of ['2026-01-30', '2026-02-13', '2026-02-27']) {
      const clutch = room.clutch(pair, { spawnedAt: at(date), eggs: 400, intent: 'leave_with_parents' })
      room.fact('loss', clutch.id, at(addDays(date, 1)), { of: 'eggs', number: 400, cause: 'other' })
    }
    const named = ahead(room).eaters.map(({ kind, subjectId }) => [kind, subjectId])
    expect(named).toContainEqual(['spawning', pair.id])
    const tonight = ahead(room, [{ kind: 'pair_spawns', pairId: pair.id }])
    const wanted = wantedBy(tonight, `tonight ${pair.id}`)!
    expect(wanted.slice(0, 4)).toEqual([0, 0, 0, 0])
    expect(wanted[10]).toBeGreaterThan(0)
    const more = ahead(room, [{ kind: 'another_pair', likePairId: pair.id }])
    const spawning = ({ eaters }: FoodAhead) => eaters.filter(({ kind }) => kind === 'spawning')
    expect(spawning(more).map(({ name }) => name)).toEqual([
      ...spawning(ahead(room)).map(({ name }) => name),
      ...new Array(spawning(more).length / 2).fill(`another pair like ${pair.name}`),
    ])
    // What the pair itself is to lay stays as it was drawn.
    expect(spawning(more).slice(0, spawning(more).length / 2)).toEqual(spawning(ahead(room)))
    room.snapshot.pairs[0]!.isResting = true
    expect(ahead(room, [{ kind: 'another_pair', likePairId: pair.id }]).eaters).toEqual([])
  })

  test('says which pairs can be asked about: no mouthbrooders and no seahorses, and nobody who rests', () => {
    const room = new SnapshotBuilder()
    const said = () =>
      ahead(room).pairs.map(({ firstFood, eatsRotifers, isPlanned }) => [firstFood, eatsRotifers, isPlanned])
    const clownfish = room.pair()
    room.pair({ species: 'pterapogon-kauderni' })
    room.pair({ species: 'hippocampus-erectus' })
    const asked = [
      ['rotifer', true, true],
      ['artemia', false, false],
      ['artemia', false, false],
    ]
    expect(said()).toEqual(asked)
    // What cannot be asked would have changed nothing.
    const changed = ahead(room, [{ kind: 'pair_spawns', pairId: room.snapshot.pairs[2]!.id }])
    expect(changed.eaters).toEqual(ahead(room).eaters)
    clownfish.isResting = true
    expect(said()).toEqual(asked.slice(1))
  })

  test('knows of a third clutch of a pair that spawns every week', () => {
    const room = new SnapshotBuilder()
    const pair = room.pair({ species: 'pseudochromis-fridmani' })
    for (const date of ['2026-02-17', '2026-02-24', '2026-03-03']) {
      const clutch = room.clutch(pair, { spawnedAt: at(date), eggs: 400, intent: 'leave_with_parents' })
      room.fact('loss', clutch.id, at(addDays(date, 1)), { of: 'eggs', number: 400, cause: 'other' })
    }
    const nights = ahead(room).eaters.map(({ kind, nights: its }) => [kind, its.length > 0])
    expect(nights).toEqual(new Array(3).fill(['spawning', true]))
  })

  test('of rotifers is nothing in an empty room, from a pouch, or where the top-up is off', () => {
    const room = new SnapshotBuilder()
    expect(ahead(room)).toMatchObject({ cultures: [], eaters: [], gaps: [] })
    const seahorses = room.pair({ species: 'hippocampus-erectus' })
    room.clutch(seahorses, { spawnedAt: at('2026-02-22'), eggs: 250 })
    const brood = room.batch({ species: 'hippocampus-erectus', hatchedOn: '2026-03-08', larvae: 100 })
    expect(ahead(room).eaters).toEqual([])
    expect(ahead(room).artemia.days[0]!.batches[0]!.wanted).toBeGreaterThan(0)
    expect(brood.species).toBe('hippocampus-erectus')
    room.clutch(room.pair(), { spawnedAt: at('2026-03-06'), eggs: 400 })
    expect(new Set(ahead(room).eaters.map(({ kind }) => kind))).toEqual(new Set(['clutch', 'spawning']))
    room.setting('larval-prey-top-up', { isOn: false })
    expect(ahead(room).eaters).toEqual([])
  })
})

describe('what cultures can give', () => {
  const byName = (food: FoodAhead) => Object.fromEntries(food.cultures.map((each) => [each.name, each]))

  test('is asked of each as it stands', () => {
    const room = new SnapshotBuilder()
    steadyCulture(room, { date: today })
    const doubted = steadyCulture(room, { date: today })
    room.fact('observation', doubted.id, at(today, '06:40'), { signs: ['bad_smell'] })
    steadyCulture(room, { date: today, isBackup: true })
    room.culture({ startedAt: at('2026-03-01') })
    const young = room.culture({ startedAt: at('2026-03-09') })
    room.fact('inoculation', young.id, at('2026-03-09'), { densityPerMl: 60 })
    const food = ahead(room)
    const { R1, R2, R3, R4, R5 } = byName(food)
    expect([R1, R2, R3, R4, R5].map((each) => each!.standing)).toEqual([
      ...['gives', 'in_doubt', 'backup', 'not_counted', 'too_young'],
    ])
    expect(R5!.firstDay).toBeGreaterThanOrEqual(2)
    expect(food.gaps).toEqual(['R4: count it, and what it can give follows.'])
    // And what its counts are in doubt about: less, the more of them there are.
    expect(R1!.floorAnimals / (50 * 18_000)).toBeGreaterThan(1)
    expect(R1!.floorAnimals / (50 * 18_000)).toBeLessThan(1.1)
    expect(R1!.animals / 18_000).toBeGreaterThan(200)
    expect(R1!.futures).toHaveLength(futures)
    // One that never gets so dense gives nothing for six weeks, longer than any plan looks.
    room.setting('rotifer-harvest', { parameters: { firstHarvestPerMl: 5000 } })
    expect(byName(ahead(room)).R5!.firstDay).toBe(42)
    // A backup is not thinned for anybody.
    expect([R1!.thinnedToAnimals !== null, R3!.thinnedToAnimals]).toEqual([true, null])
  })

  test('is no thinning of one that the list holds back: its eggs are few, though it feeds, or it smells', () => {
    const held = (hold: (room: SnapshotBuilder, culture: SnapshotCulture) => void) => {
      const room = new SnapshotBuilder()
      hold(room, steadyCulture(room, { date: today }))
      const [{ standing, thinnedToAnimals } = {}] = ahead(room).cultures
      return [standing, thinnedToAnimals === null]
    }
    expect(held(() => undefined)).toEqual(['gives', false])
    const fewEggs = { eggs: 2, females: 100 }
    expect(held((room, culture) => room.count(culture, at(today, '06:45'), [230, 230, 230], fewEggs))).toEqual([
      ...['gives', true],
    ])
    expect(held((room, { id }) => room.fact('observation', id, at(today, '06:40'), { signs: ['bad_smell'] }))).toEqual([
      'in_doubt',
      true,
    ])
  })

  test('is as much less today as has gone to others; what stands harvested for larvae is theirs', () => {
    const room = new SnapshotBuilder()
    const culture = steadyCulture(room, { date: today })
    const batch = room.batch({ hatchedOn: '2026-03-04', larvae: 300 })
    const parts = [
      { to: 'larval_batch' as const, subjectId: batch.id, volumeL: 1 },
      { to: 'other_fish' as const, volumeL: 3.6 },
      { to: 'drain' as const, volumeL: 0.9 },
    ]
    const before = ahead(room).cultures[0]!
    room.fact('harvest', culture.id, at(today, '06:30'), { volumeL: 5.5, parts })
    const after = ahead(room).cultures[0]!
    expect([before.goneShare, after.goneShare]).toEqual([0, 0.25])
    // As it stood when the day began, by the count of that very instant.
    expect(after.animals).toBeCloseTo(before.animals, 0)
  })

  test('says of copepods that they come on top, and for whom', () => {
    const room = new SnapshotBuilder()
    const pods = room.culture({ name: 'C1', kind: 'copepod', strain: null, volumeL: 10, startedAt: at('2026-02-01') })
    expect(ahead(room).gaps).toEqual([])
    const batch = room.batch({ hatchedOn: '2026-03-08', larvae: 200 })
    const wanted = ahead(room).eaters
    room.feedLink(batch, pods)
    expect(ahead(room).gaps).toEqual([
      `C1: too young, thin or falling, or not counted of late, so it gives no nauplii for ${batch.name}. Count it.`,
    ])
    room.fact('count', pods.id, at('2026-03-09'), { of: 'culture', animals: [20], volumeMl: 10 })
    const food = ahead(room)
    expect(food.gaps).toEqual([
      `C1: its nauplii come on top for ${batch.name}, and no rotifer is counted less for them.`,
    ])
    expect([food.cultures, food.eaters]).toEqual([[], wanted])
    // Taken this morning, it gives again tomorrow.
    room.fact('harvest', pods.id, at(today, '06:50'), {
      volumeL: 2.5,
      parts: [{ to: 'larval_batch', subjectId: batch.id, volumeL: 2.5 }],
    })
    expect(ahead(room).gaps).toEqual(food.gaps)
    room.fact('loss', batch.id, at(today, '07:00'), { of: 'larvae', number: 200, cause: 'other' })
    expect(ahead(room).gaps).toEqual([])
  })

  test('is the same for the same room, and of one culture whatever else stands there', () => {
    const room = new SnapshotBuilder()
    steadyCulture(room, { date: today, isBackup: true, concentrateId: null })
    const alone = ahead(room)
    expect(ahead(room)).toEqual(alone)
    const { futures: before } = alone.cultures[0]!
    room.culture({ startedAt: at('2026-03-01'), isBackup: true })
    expect(ahead(room).cultures[0]!.futures).toEqual(before)
  })

  test('changes as asked', () => {
    const room = new SnapshotBuilder()
    const culture = steadyCulture(room, { date: today })
    const asIs = ahead(room).cultures[0]!
    const change = (given: FoodChange) => ahead(room, [given]).cultures
    expect(change({ kind: 'culture_crashes', cultureId: culture.id })[0]!.growth[0]!.gain).toBe(0)
    expect(change({ kind: 'thin_less' })[0]!.thinnedToAnimals).toBeNull()
    const away = change({ kind: 'away', days: 2 })[0]!.growth.map(({ gain }) => gain)
    expect(away.slice(0, 4)).toEqual(
      [0, 1, 2, 3].map((day) => {
        const { gain } = asIs.growth[day]!
        return day === 1 || day === 2 ? Math.sqrt(gain) : gain
      }),
    )
    const [, bought] = change({ kind: 'buy_in', animals: 5e6, onDate: addDays(today, 3) })
    expect(bought).toMatchObject({ culture: null, animals: 5e6, firstDay: 3, mostShare: 1, volumeL: 0.25 })
    expect(ahead(room, [{ kind: 'use_backups' }]).mayUseBackups).toBe(true)
  })

  test('of a culture begun from another is none before it is old and dense enough, and the other has so many fewer', () => {
    const room = new SnapshotBuilder()
    const culture = steadyCulture(room, { date: today })
    const asIs = ahead(room).cultures[0]!
    const start = { kind: 'start_culture', cultureId: culture.id, volumeL: 10, animals: 1e6 } as const
    const [source, begun] = ahead(room, [{ ...start, onDate: today }]).cultures
    expect(source!.animals).toBeCloseTo(asIs.animals - 1e6, 3)
    expect(begun).toMatchObject({ animals: 1e6, volumeL: 10 })
    expect(begun!.floorAnimals).toBeCloseTo((asIs.floorAnimals * 10) / asIs.volumeL, 3)
    expect(begun!.firstDay).toBeGreaterThanOrEqual(3)
    const later = ahead(room, [{ ...start, onDate: addDays(today, 4) }]).cultures
    expect(later[0]!.growth[3]!.gain).toBeLessThan(asIs.growth[3]!.gain)
    expect(later[1]!.firstDay).toBeGreaterThanOrEqual(7)
    expect(later[1]!.growth.slice(0, 4)).toEqual(new Array(4).fill({ gain: 1, crowding: 0 }))
    // As old as this room wants it.
    room.setting('rotifer-harvest', { parameters: { firstHarvestAgeDays: 14 } })
    expect(ahead(room, [{ ...start, onDate: today }]).cultures[1]!.firstDay).toBeGreaterThanOrEqual(14)
  })
})

describe('crashes', () => {
  const culture = (id: string, given: object = {}) => ({
    ...{ id, concentrateId: null as string | null, parentCultureId: null as string | null, isBackup: true },
    ...{ airLine: null as string | null, shelf: null as string | null, tools: null as string | null },
    ...given,
  })
  const many = 4000
  const shareBy = (crashes: readonly number[], days: number) => crashes.filter((day) => day < days).length / many
  const drawnFor = (cultures: ReturnType<typeof culture>[]) =>
    crashDays({ cultures, hazardPerDay: 0.02, futures: many })

  test('are as many whatever a culture shares with others', () => {
    const expected = 1 - Math.exp(-0.02 * 21)
    const shared = { concentrateId: 'bottle', parentCultureId: 'mother', isBackup: false }
    for (const cultures of [
      [culture('a')],
      [culture('a', shared), culture('b', shared)],
      [culture('a'), culture('b', { parentCultureId: 'a' })],
    ])
      for (const crashes of drawnFor(cultures)) expect(Math.abs(shareBy(crashes, 21) - expected)).toBeLessThan(0.03)
  })

  test('take several cultures in one night only where these share something', () => {
    const together = (cultures: ReturnType<typeof culture>[]) => {
      const [a, b] = drawnFor(cultures)
      return a!.filter((day, future) => day < 21 && day === b![future]).length / many
    }
    expect(together([culture('a'), culture('b')])).toBe(0)
    const oneCause = together([culture('a', { concentrateId: 'x' }), culture('b', { concentrateId: 'x' })])
    const allCauses = { concentrateId: 'x', parentCultureId: 'm', airLine: 'pump 1', shelf: 'top', tools: 'blue' }
    expect(oneCause).toBeGreaterThan(0.025)
    expect(together([culture('a', allCauses), culture('b', allCauses)])).toBeGreaterThan(2 * oneCause)
  })

  test('have causes that are named', () => {
    const mother = culture('mother', { isBackup: false })
    const child = culture('child', {
      parentCultureId: 'mother',
      isBackup: false,
      concentrateId: 'x',
      airLine: 'Pump 1',
    })
    const other = culture('other', { concentrateId: 'x', airLine: ' pump 1', shelf: 'top', tools: 'its own' })
    const all = [mother, child, other]
    expect(sharedCauses(child, all)).toEqual([
      { cultureId: 'mother', causes: ['parent', 'tools'] },
      { cultureId: 'other', causes: ['air', 'bottle'] },
    ])
  })
})

describe('the chilled reserve', () => {
  /** Two litres of 240 per mL chilled a week ago: 432,000 animals after sieving, of which 0.5^(7/14) = 0.707 live. */
  const chilled = (strain: 'L' | 'SS' = 'L') => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt: at('2026-02-01'), strain })
    room.count(culture, at('2026-03-03', '06:30'), [240, 240, 240])
    room.fact('harvest', culture.id, at('2026-03-03', '08:00'), {
      volumeL: 2,
      parts: [{ to: 'chilled_reserve', volumeL: 2 }],
    })
    const batch = room.batch({ hatchedOn: '2026-03-06', larvae: 300 })
    return { room, culture, batch }
  }
  const reserveOf = (room: SnapshotBuilder, changes: FoodChange[] = []) =>
    ahead(room, changes).cultures.find(({ id }) => id === 'chilled')
  const alive = 432_000 * 0.5 ** 0.5

  test('is a supply of its own that dies by half in a fortnight, and is gone by its last day', () => {
    const reserve = reserveOf(chilled().room)!
    expect(reserve).toMatchObject({ standing: 'chilled', culture: null, floorAnimals: 0, mostShare: 1 })
    expect(reserve.animals).toBeCloseTo(alive, 6)
    expect(reserve.growth[0]!.gain).toBeCloseTo(0.5 ** (1 / 14), 9)
    // Seven days old today: on the seventh day from now it is fourteen.
    expect(reserve.growth.map(({ gain }) => gain > 0)).toEqual([
      ...new Array(6).fill(true),
      ...new Array(15).fill(false),
    ])
  })

  test('is as much less as was fed of it, or discarded; what stands in the cold of SS is counted on by nobody', () => {
    const { room, culture, batch } = chilled()
    const from = { food: 'rotifers', fromCultureId: culture.id, isChilled: true } as const
    room.fact('feeding', batch.id, at('2026-03-09'), { ...from, animals: 100_000 })
    // A day ago 0.5^(6/14) lived: what was drawn then would be fewer by today.
    expect(reserveOf(room)!.animals).toBeCloseTo(alive - 100_000 * 0.5 ** (1 / 14), 3)
    // Five mL of it as it is kept, 20,000 per mL with the dead: as many fewer as were put in.
    room.fact('feeding', batch.id, at('2026-03-09', '12:30'), {
      ...{ food: 'rotifers', fromCultureId: culture.id, isChilled: true, amountMl: 5 },
    })
    expect(reserveOf(room)!.animals).toBeCloseTo(alive - 100_000 * 0.5 ** (1 / 14) - 100_000 * 0.5 ** 0.5, 3)
    room.fact('care', culture.id, at('2026-03-09', '13:00'), { act: 'discard_reserve', forDate: '2026-03-03' })
    expect(reserveOf(room)).toBeUndefined()
    expect(reserveOf(chilled('SS').room)).toBeUndefined()
  })

  test('is not asked until the room says so', () => {
    const { room } = chilled()
    expect(ahead(room).mayUseReserve).toBe(false)
    expect(ahead(room, [{ kind: 'use_reserve' }]).mayUseReserve).toBe(true)
  })
})
