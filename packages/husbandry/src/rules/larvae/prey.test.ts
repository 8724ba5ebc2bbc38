import { describe, expect, test } from 'vitest'
import type { TaskDraft } from '../../engine/draft-day.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { rotiferEnrich } from '../live-food/rotifer-enrich.ts'
import { larvalPreyCount } from './prey-count.ts'
import { larvalPreyTopUp } from './prey-top-up.ts'

const date = '2026-03-10'

/** A batch of 200 in 20 L, two days old, fed three times a day from a culture counted at 250 per mL this morning. */
function nursery() {
  const room = new SnapshotBuilder()
  const culture = room.culture({ startedAt: '2026-02-01T08:00:00.000Z' })
  room.count(culture, '2026-03-10T06:30:00.000Z', [250, 255, 245])
  const tank = room.tank({ name: 'Nursery 1', volumeL: 20, salinity: 27 })
  const batch = room.batch({ hatchedOn: '2026-03-07', tankId: tank.id, larvae: 200 })
  room.feedLink(batch, culture)
  room.setting('larval-prey-top-up', { parameters: { feedsPerDay: 3 } })
  const prey = (at: string, animals: number[]) =>
    room.fact('count', batch.id, at, { of: 'prey_rotifers', animals, volumeMl: 10 })
  return { room, culture, tank, batch, prey }
}
const animalsOf = (draft: TaskDraft | undefined) =>
  draft && 'deed' in draft.content.title
    ? draft.content.title.details.find((detail) => detail.kind === 'amount')?.quantity
    : undefined
const topUps = (room: SnapshotBuilder) => room.drafts(date, [larvalPreyTopUp])

describe('counting the prey left', () => {
  test('is asked before each feed while the species eats rotifers, from the morning after the hatch night', () => {
    const { room, batch } = nursery()
    const on = (day: string) => room.drafts(day, [larvalPreyCount]).drafts.map(({ roundId }) => roundId)
    expect(on('2026-03-07')).toEqual([])
    // Nothing has been fed yet: the first feed has nothing to count before it.
    expect(on('2026-03-08')).toEqual(['midday', 'evening'])
    room.fact('feeding', batch.id, '2026-03-08T07:30:00.000Z', { food: 'rotifers', animals: 200_000 })
    expect(on('2026-03-08')).toEqual(['midday', 'evening'])
    expect(on('2026-03-09')).toEqual(['morning', 'midday', 'evening'])
    // What was fed in uncounted is not counted after it.
    room.fact('feeding', batch.id, '2026-03-09T07:30:00.000Z', { food: 'rotifers', animals: 100_000 })
    expect(on('2026-03-09')).toEqual(['midday', 'evening'])
    // Ocellaris: rotifers until day 11, which is 19 March.
    expect(on('2026-03-19')).toHaveLength(3)
    expect(on('2026-03-20')).toEqual([])
  })

  test('a noon count without its task is asked for neither at noon nor for the morning; the evening’s is', () => {
    const { room, batch, prey } = nursery()
    prey('2026-03-10T12:10:00.000Z', [40, 40, 40])
    expect(room.drafts(date, [larvalPreyCount]).drafts.map(({ roundId }) => roundId)).toEqual(['evening'])
    const [draft] = room.drafts(date, [larvalPreyCount]).drafts
    expect(draft?.content.fields[0]).toMatchObject({ type: 'count', volumeMl: 10, replicates: 3, usual: 4 })
    const count = { animals: [30, 32, 28], volumeMl: 10 }
    expect(signOff(larvalPreyCount, draft!, { count }).facts).toEqual([
      { kind: 'count', subjectId: batch.id, data: { of: 'prey_rotifers', dilution: 1, ...count } },
    ])
  })
})

describe('topping up the prey', () => {
  test('is asked three times a day, in the light, until a room says otherwise', () => {
    const rounds = (room: SnapshotBuilder) => topUps(room).drafts.map(({ roundId }) => roundId)
    const { room } = nursery()
    room.setting('larval-prey-top-up', {})
    expect(rounds(room)).toEqual(['morning', 'midday', 'evening'])
    // Lights go off at 19:00: a round after that feeds nobody while two lit ones are there.
    const late = { id: 'late', name: 'Late', at: '20:00' }
    room.snapshot.room.rounds = [...room.snapshot.room.rounds, late]
    expect(rounds(room)).toEqual(['morning', 'midday', 'evening'])
    // Better in the dark than once a day.
    room.snapshot.room.rounds = [room.snapshot.room.rounds[0]!, late]
    expect(rounds(room)).toEqual(['morning', 'late'])
  })

  test('turns to another culture by name when its own smells, and asks for a look when there is none', () => {
    const { room, culture } = nursery()
    room.fact('observation', culture.id, '2026-03-10T06:40:00.000Z', { signs: ['bad_smell'] })
    expect(topUps(room).gaps[0]?.message).toContain(`${culture.name} is in doubt and feeds nobody`)
    const other = room.culture({ name: 'R7', startedAt: '2026-02-01T08:00:00.000Z' })
    room.count(other, '2026-03-10T06:30:00.000Z', [200, 200, 200])
    expect(saidTitle(topUps(room).drafts[0])).toContain('of R7')
    expect(topUps(room).gaps).toEqual([])
  })

  test('names whoever can give what its own cannot, and feeds what was harvested there', () => {
    const { room, batch, tank } = nursery()
    Object.assign(tank, { volumeL: 150 })
    const last = () => topUps(room).drafts.at(-1)?.content.steps.at(-1)
    expect(last()?.text).toContain('No other culture has any left today')
    const backup = room.culture({ name: 'R5', startedAt: '2026-02-01T08:00:00.000Z', isBackup: true })
    room.count(backup, '2026-03-10T06:30:00.000Z', [300, 300, 300])
    expect(last()?.text).toContain('No other culture has any left today')
    const other = room.culture({ name: 'R7', startedAt: '2026-02-01T08:00:00.000Z', volumeL: 10 })
    room.count(other, '2026-03-10T06:30:00.000Z', [200, 200, 200])
    expect(last()?.text).toContain('R7 can give {rest} more today')
    // Half of it at most.
    expect(last()?.quantities.rest).toEqual({ value: 5, unit: 'L' })
    const parts = [{ to: 'larval_batch', subjectId: batch.id, volumeL: 2 }] as const
    room.fact('harvest', other.id, '2026-03-10T06:55:00.000Z', { volumeL: 2, parts: [...parts] })
    // The first feed takes that, and what the half of R7 still holds; for the others its own is enough.
    const [first, ...others] = topUps(room).drafts
    expect(saidTitle(first)).toContain('5 L of R7')
    expect(others.flatMap(({ content }) => content.steps).filter(({ text }) => text.includes('cannot give'))).toEqual(
      [],
    )
    room.fact('observation', other.id, '2026-03-10T06:58:00.000Z', { signs: ['bad_smell'] })
    expect(last()?.text).toContain('No other culture has any left today')
  })

  test('turns to another for the days in which its own has just been emptied and begun again', () => {
    const { room, culture } = nursery()
    const other = room.culture({ name: 'R7', startedAt: '2026-02-01T08:00:00.000Z', isBackup: true })
    room.count(other, '2026-03-10T06:30:00.000Z', [200, 200, 200])
    const fedFrom = (on: string) => saidTitle(room.drafts(on, [larvalPreyTopUp]).drafts[0])
    expect(fedFrom(date)).toContain(`of ${culture.name}`)
    room.fact('care', culture.id, '2026-03-10T06:35:00.000Z', { act: 'restart_culture' })
    room.fact('inoculation', culture.id, '2026-03-10T06:36:00.000Z', { animals: 1_260_000, fromCultureId: other.id })
    expect(fedFrom(date)).toContain('of R7')
    expect(fedFrom('2026-03-12')).toContain('of R7')
    expect(fedFrom('2026-03-13')).toContain(`of ${culture.name}`)
  })

  test('eats from another that is linked while its first has just been begun again', () => {
    const { room, culture, batch } = nursery()
    const other = room.culture({ name: 'R7', startedAt: '2026-02-01T08:00:00.000Z' })
    room.count(other, '2026-03-10T06:30:00.000Z', [200, 200, 200])
    room.feedLink(batch, other)
    const fedFrom = () => saidTitle(topUps(room).drafts[0])
    expect(fedFrom()).toContain(`of ${culture.name}`)
    room.fact('care', culture.id, '2026-03-10T06:35:00.000Z', { act: 'restart_culture' })
    room.fact('inoculation', culture.id, '2026-03-10T06:36:00.000Z', { animals: 1_260_000 })
    expect(fedFrom()).toContain('of R7')
  })

  test('fills up what is missing: (10 - 4) x 20,000 animals, 530 mL of a culture of 250 per mL with a tenth lost', () => {
    const { room, prey } = nursery()
    prey('2026-03-10T06:50:00.000Z', [40, 40, 40])
    const [morning] = topUps(room).drafts
    expect(animalsOf(morning)).toEqual({ value: 120_000, unit: 'animals' })
    expect(((10 - 4) * 20_000) / (250 * 0.9)).toBeCloseTo(533, 0)
    expect(morning?.content.amount).toEqual({ value: 530, unit: 'mL' })
  })

  test('is not asked when enough is left, and asks in full before the first feed', () => {
    const enough = nursery()
    enough.prey('2026-03-10T06:50:00.000Z', [60, 62, 58])
    // Later feeds stand open until their own count.
    expect(topUps(enough.room).drafts.map(({ roundId }) => roundId)).toEqual(['midday', 'evening'])
    const [first] = topUps(nursery().room).drafts
    // 10 x 20,000 / (250 x 0.9) = 889 mL.
    expect(first?.content.amount?.value).toBe(890)
    expect(first?.content.because[1]?.label).toBe('left: none fed yet')
  })

  test('asks for more to be left over a longer light, until counts show what they eat', () => {
    const asked = (left: number, more: (given: ReturnType<typeof nursery>) => void = () => undefined) => {
      const given = nursery()
      const { room, tank, prey } = given
      room.snapshot.room.rounds = room.snapshot.room.rounds.filter(({ id }) => id !== 'midday')
      tank.lightHours = 16
      more(given)
      prey('2026-03-10T06:50:00.000Z', [left, left, left])
      return topUps(room).drafts.some(({ roundId }) => roundId === 'morning')
    }
    // 11.5 h of light to the evening round: 5 per mL do for the 8 h of a third of a day, 7.2 for these.
    expect([asked(71), asked(73)]).toEqual([true, false])
    // Of 5.9 they left 5.4 in as long a light: that is enough.
    const seen = ({ prey }: ReturnType<typeof nursery>) => {
      prey('2026-03-09T07:00:00.000Z', [59, 59, 59])
      prey('2026-03-09T18:20:00.000Z', [54, 54, 54])
    }
    expect([asked(71, seen), asked(54, seen)]).toEqual([false, true])
  })

  test('says of what is left whether it was counted, when, or is only taken to be so', () => {
    const left = (more: (given: ReturnType<typeof nursery>) => void) => {
      const given = nursery()
      more(given)
      return topUps(given.room)
        .drafts.map(({ content }) => content.because[1])
        .map((link) => [link?.label, link?.quantity?.value, link?.origin.kind])
    }
    const counted = left(({ prey }) => prey('2026-03-10T06:50:00.000Z', [40, 40, 40]))
    expect(counted[0]).toEqual(['left, counted', 4, 'fact'])
    expect(counted[1]).toEqual(['left at the last count', 4, 'fact'])
    const fed = left(({ room, batch }) =>
      room.fact('feeding', batch.id, '2026-03-09T18:30:00.000Z', { food: 'rotifers', animals: 100_000 }),
    )
    expect(fed[0]).toEqual(['left, until it is counted taken as', 5, 'parameter'])
  })

  test('before a count the last one stands in, for a day; then half the target does', () => {
    const { room, batch, culture, prey } = nursery()
    prey('2026-03-10T06:50:00.000Z', [20, 20, 20])
    const fed = { food: 'rotifers', fromCultureId: culture.id, amountMl: 700, animals: 160_000 } as const
    room.fact('feeding', batch.id, '2026-03-10T07:05:00.000Z', fed, { taskId: room.nextId() })
    const midday = topUps(room).drafts.find(({ roundId }) => roundId === 'midday')
    // (10 - 2) x 20,000 / 225 = 711 mL, from the last count.
    expect(midday?.content.amount?.value).toBe(710)
    expect(midday?.content.steps[0]?.text).toContain('Count what is left first')
  })

  test('what was counted more than a day before is not believed any more: half the target is', () => {
    const asked = (countedAt: string) => {
      const { room, batch, prey } = nursery()
      prey(countedAt, [90, 90, 90])
      room.fact('feeding', batch.id, countedAt, { food: 'rotifers', animals: 20_000 })
      return topUps(room).drafts[0]?.content.amount?.value
    }
    // (10 - 9) x 20,000 / 225 = 89 mL; (10 - 5) x 20,000 / 225 = 444 mL.
    expect(asked('2026-03-09T00:30:00.000Z')).toBe(90)
    expect(asked('2026-03-08T23:30:00.000Z')).toBe(440)
  })

  test('adds what the larvae are known to eat by the next feed, learned from this room’s own counts', () => {
    const { room, batch, culture, prey } = nursery()
    prey('2026-03-09T07:00:00.000Z', [0, 0, 0])
    const fed = { food: 'rotifers', fromCultureId: culture.id, amountMl: 890, animals: 200_000 } as const
    room.fact('feeding', batch.id, '2026-03-09T07:30:00.000Z', fed)
    // 10 per mL at 07:30, 6 at 12:30: 4 x 20,000 / (200 x 5 h) = 80 a larva an hour.
    prey('2026-03-09T12:30:00.000Z', [60, 60, 60])
    prey('2026-03-10T06:50:00.000Z', [20, 20, 20])
    const [morning] = topUps(room).drafts
    // (10 - 2) x 20,000 + 200 x 80 x 5.5 h = 248,000, 1102 mL of 225 per mL.
    expect(animalsOf(morning)?.value).toBe(250_000)
    expect(morning?.content.amount?.value).toBe(1100)
  })

  test('never goes above the most per mL, nor takes more than half a culture in a day', () => {
    const hungry = nursery()
    hungry.room.setting('larval-prey-top-up', { parameters: { targetPerMl: 30, feedsPerDay: 3 } })
    // Bounded by 15 per mL: 300,000 animals, 1,333 mL.
    expect(topUps(hungry.room).drafts[0]?.content.amount?.value).toBe(1300)
    const small = nursery()
    small.culture.volumeL = 2
    // Half of 2 L, shared out by what each feed wants: 889, 444 and 444 mL.
    const { drafts } = topUps(small.room)
    expect(drafts.map(({ content }) => content.amount?.value)).toEqual([500, 250, 250])
    expect(drafts[0]?.content.steps.at(-1)?.text).toContain('no more than half of it in a day')
  })

  test('gives more than the usual most where they eat it before the next feed, and says when even that is gone', () => {
    const morning = (eatenBy: string) => {
      const { room, batch, tank, prey } = nursery()
      room.snapshot.room.rounds = room.snapshot.room.rounds.filter(({ id }) => id !== 'midday')
      tank.lightHours = 16
      prey('2026-03-09T06:55:00.000Z', [20, 20, 20])
      room.fact('feeding', batch.id, '2026-03-09T07:00:00.000Z', { food: 'rotifers', animals: 260_000 })
      prey(eatenBy, [0, 0, 0])
      prey('2026-03-10T06:50:00.000Z', [30, 30, 30])
      const draft = topUps(room).drafts.find(({ roundId }) => roundId === 'morning')
      return { animals: animalsOf(draft)?.value, last: draft?.content.steps.at(-1) }
    }
    // 15 per mL eaten in 10 h are 17.25 in the 11.5 h to the evening: the water may hold 20, of which 3 are there: 17 x 20,000.
    expect(morning('2026-03-09T17:00:00.000Z').animals).toBe(340_000)
    // 20 per mL last longer than 11.5 h of that, so that nobody has to come between.
    expect(morning('2026-03-09T17:00:00.000Z').last?.text).not.toContain('gone after')
    // Eaten in 14 h they are 12.3 by the evening: 17.3 per mL leave the 5 at which one tops up.
    expect(morning('2026-03-09T21:00:00.000Z').animals).toBeCloseTo(20_000 * (12.32 + 5 - 3), -4)
    // Eaten in 6 h 20 per mL are gone after 8 h, 3.5 h before the evening.
    const hungry = morning('2026-03-09T13:00:00.000Z')
    expect(hungry.animals).toBe(340_000)
    expect(hungry.last?.text).toContain('feed once more in between and write it down on the page of Batch 1')
    expect(hungry.last?.quantities).toEqual({ after: { value: 8, unit: 'hours' }, before: { value: 4, unit: 'hours' } })
  })

  test('asks for no feed that no count could tell from none, however hungry they are', () => {
    const morning = (left: number) => {
      const { room, batch, culture, prey } = nursery()
      prey('2026-03-09T07:00:00.000Z', [10, 10, 10])
      const fed = { food: 'rotifers', fromCultureId: culture.id, amountMl: 1200, animals: 280_000 } as const
      room.fact('feeding', batch.id, '2026-03-09T07:30:00.000Z', fed)
      prey('2026-03-09T12:30:00.000Z', [20, 20, 20])
      prey('2026-03-10T06:50:00.000Z', [left, left, left])
      return topUps(room).drafts.find(({ roundId }) => roundId === 'morning')?.content.amount?.value
    }
    // They eat 14.3 per mL by the next feed, so that the water may hold 19.3: 4 per mL are 356 mL, 0.7 are 62 mL, and 0.4 are
    // not worth a walk.
    expect([153, 186, 189].map(morning)).toEqual([360, 60, undefined])
  })

  test('batches on one culture share what it can give: no more than half of it in all, and never under its floor', () => {
    const takenL = (perMl: number) => {
      const room = new SnapshotBuilder()
      const culture = room.culture({ startedAt: '2026-02-01T08:00:00.000Z' })
      room.count(culture, '2026-03-10T06:30:00.000Z', [perMl, perMl, perMl])
      for (const name of ['A', 'B', 'C']) {
        const batch = room.batch({ name, hatchedOn: '2026-03-07', tankId: room.tank({ volumeL: 40 }).id, larvae: 300 })
        room.feedLink(batch, culture)
      }
      const { drafts, gaps } = room.drafts(date, [larvalPreyTopUp])
      return { litres: drafts.reduce((sum, { content }) => sum + (content.amount?.value ?? 0) / 1000, 0), gaps }
    }
    // 18 L: half is 9 L, to a jug's mark at each of nine feeds.
    expect(takenL(150).litres).toBeGreaterThan(8.5)
    expect(takenL(150).litres).toBeLessThan(9.3)
    // 80 per mL: 1 - 50/80 = 0.375 of 18 L would leave the floor of 50 per mL; a single count is in doubt by a sixth or so.
    expect(takenL(80).litres).toBeLessThan(6.75 - 1)
    expect(takenL(80).litres).toBeGreaterThan(4)
    // At the floor nothing is left to give, and each batch is told so rather than left out.
    expect(takenL(50)).toMatchObject({ litres: 0, gaps: [{}, {}, {}] })
    expect(takenL(50).gaps[0]?.message).toContain('from another culture')
  })

  test('what was taken already today counts against it', () => {
    const { room, culture } = nursery()
    const part = { to: 'drain', volumeL: 8.9 } as const
    room.fact('harvest', culture.id, '2026-03-10T06:45:00.000Z', { volumeL: 8.9, parts: [part] })
    const litres = topUps(room).drafts.reduce((sum, { content }) => sum + (content.amount?.value ?? 0) / 1000, 0)
    expect(litres).toBeCloseTo(0.1, 1)
  })

  test('signing off books the animals on the batch and takes them out of the culture', () => {
    const { room, batch, culture, prey } = nursery()
    prey('2026-03-10T06:50:00.000Z', [40, 40, 40])
    const [draft] = topUps(room).drafts
    expect(signOff(larvalPreyTopUp, draft!).facts).toEqual([
      {
        kind: 'feeding',
        subjectId: batch.id,
        data: { food: 'rotifers', fromCultureId: culture.id, amountMl: 530, animals: 530 * 225 },
      },
      {
        kind: 'harvest',
        subjectId: culture.id,
        data: { volumeL: 0.53, parts: [{ to: 'larval_batch', subjectId: batch.id, volumeL: 0.53 }] },
      },
    ])
  })

  test('what this morning’s harvest set aside is not taken a second time', () => {
    const { room, batch, culture, prey } = nursery()
    prey('2026-03-10T06:50:00.000Z', [40, 40, 40])
    room.fact('harvest', culture.id, '2026-03-10T06:55:00.000Z', {
      volumeL: 3.6,
      parts: [
        { to: 'larval_batch', subjectId: batch.id, volumeL: 1.6 },
        { to: 'drain', volumeL: 2 },
      ],
    })
    const [draft] = topUps(room).drafts
    expect(signOff(larvalPreyTopUp, draft!).facts.map(({ kind }) => kind)).toEqual(['feeding'])
  })

  test('nauplii of copepods set aside for the batch stand for no rotifers', () => {
    const { room, culture, batch, prey } = nursery()
    const copepods = room.culture({ kind: 'copepod', strain: null, startedAt: '2026-02-01T08:00:00.000Z' })
    prey('2026-03-10T06:50:00.000Z', [40, 40, 40])
    room.fact('harvest', copepods.id, '2026-03-10T06:55:00.000Z', {
      volumeL: 2.5,
      parts: [{ to: 'larval_batch', subjectId: batch.id, volumeL: 2.5 }],
    })
    const [draft] = topUps(room).drafts
    expect(draft?.content.steps.map(({ text }) => text).join(' ')).not.toContain('what was harvested')
    const { facts } = signOff(larvalPreyTopUp, draft!)
    expect(facts.map(({ kind, subjectId }) => [kind, subjectId])).toEqual([
      ['feeding', batch.id],
      ['harvest', culture.id],
    ])
  })

  test('what was harvested before the culture was filled up is as dense as it was then', () => {
    const { room, culture, batch, prey } = nursery()
    prey('2026-03-10T06:50:00.000Z', [40, 40, 40])
    room.fact('harvest', culture.id, '2026-03-10T06:55:00.000Z', {
      volumeL: 3,
      parts: [{ to: 'larval_batch', subjectId: batch.id, volumeL: 3 }],
    })
    const [morning] = topUps(room).drafts
    // 120,000 animals of 250 per mL, a tenth lost: 530 mL as before the harvest, not of what is thinner now.
    expect(morning?.content.amount).toEqual({ value: 530, unit: 'mL' })
    const [fed] = signOff(larvalPreyTopUp, morning!).facts
    expect(fed).toMatchObject({
      kind: 'feeding',
      data: { amountMl: 530, animals: expect.closeTo(530 * 250 * 0.9, -1) },
    })
  })

  test('a feed that the harvest does not cover takes the rest out of what is thinner by now', () => {
    const { room, culture, batch, prey } = nursery()
    prey('2026-03-10T06:50:00.000Z', [40, 40, 40])
    room.fact('harvest', culture.id, '2026-03-10T06:55:00.000Z', {
      volumeL: 3.6,
      parts: [
        { to: 'larval_batch', subjectId: batch.id, volumeL: 0.1 },
        { to: 'drain', volumeL: 3.5 },
      ],
    })
    const [morning] = topUps(room).drafts
    // 133,333 before a tenth is lost: 25,000 in the 100 mL that stand ready at 250, the rest in 542 mL at 200 per mL.
    expect(morning?.content.amount).toEqual({ value: 640, unit: 'mL' })
    const [fed, taken] = signOff(larvalPreyTopUp, morning!).facts
    expect(fed).toMatchObject({ data: { amountMl: 640, animals: 640 * 208 * 0.9 } })
    expect(taken).toMatchObject({ kind: 'harvest', data: { volumeL: 0.54 } })
  })

  test('names what is missing: the culture, or its count', () => {
    const { room, culture } = nursery()
    room.snapshot.feedLinks = []
    expect(topUps(room).gaps[0]?.message).toBe('Say which rotifer culture feeds Batch 1.')
    const uncounted = nursery()
    uncounted.room.snapshot.facts = uncounted.room.snapshot.facts.filter(({ subjectId }) => subjectId !== culture.id)
    expect(topUps(uncounted.room).gaps[0]?.message).toBe('Batch 1 is fed from R1: count R1, and the amount follows.')
  })

  test('young of a species that takes Artemia from birth are not given rotifers', () => {
    const room = new SnapshotBuilder()
    room.batch({ hatchedOn: '2026-03-07', species: 'hippocampus-erectus' })
    expect(room.drafts(date, [larvalPreyCount, larvalPreyTopUp])).toEqual({ drafts: [], gaps: [] })
  })
})

describe('enriching rotifers', () => {
  test('less than a scale shows is taken out of a blend of what one does', () => {
    const { room, batch, tank } = nursery()
    room.setting('rotifer-enrich', { isOn: true })
    const step = () => room.drafts(date, [rotiferEnrich]).drafts[0]?.content.steps[1]
    const { weighed, blend, part } = step()!.quantities
    const gramsIn = (weighed!.value * part!.value) / blend!.value
    const asked = room.drafts(date, [rotiferEnrich]).drafts[0]!.content.amount!.value
    expect(asked).toBeLessThan(0.1)
    expect(gramsIn).toBeCloseTo(asked, 4)
    // As many larvae in eight tanks' worth of water eat from a culture that can give it.
    Object.assign(tank, { volumeL: 400 })
    const big = room.culture({ name: 'R9', volumeL: 400, startedAt: '2026-02-01T08:00:00.000Z' })
    room.count(big, '2026-03-10T06:30:00.000Z', [250, 250, 250])
    room.snapshot.feedLinks = []
    room.feedLink(batch, big)
    expect(step()?.quantities).toEqual({ amount: room.drafts(date, [rotiferEnrich]).drafts[0]!.content.amount })
  })

  test('is off until a room wants it, then 0.1 g to a million of what the later feeds take, once a day', () => {
    const { room, culture } = nursery()
    expect(room.drafts(date, [rotiferEnrich]).drafts).toEqual([])
    room.setting('rotifer-enrich', { isOn: true })
    const later = topUps(room)
      .drafts.filter(({ roundId }) => roundId !== 'morning')
      .reduce((sum, draft) => sum + (animalsOf(draft)?.value ?? 0), 0)
    const [draft, ...others] = room.drafts(date, [rotiferEnrich]).drafts
    expect(others).toEqual([])
    expect(later).toBeGreaterThan(0)
    expect(draft?.content.amount?.value).toBeCloseTo(Math.max(0.01, later / 1e7), 2)
    // 500 rotifers per mL while enriching: FAO Fish. Tech. Pap. 361, sect. 3.5; from memory.
    const { number, water } = draft?.content.steps[0]?.quantities ?? {}
    expect((number?.value ?? 0) / ((water?.value ?? 0) * 1000)).toBeGreaterThan(450)
    expect((number?.value ?? 0) / ((water?.value ?? 0) * 1000)).toBeLessThan(550)
    room.append(signOff(rotiferEnrich, draft!).facts[0]!, { at: `${date}T07:40:00.000Z` })
    expect(room.drafts(date, [rotiferEnrich]).drafts).toEqual([])
    expect(culture.id).toBe(draft?.subjectId)
  })
})
