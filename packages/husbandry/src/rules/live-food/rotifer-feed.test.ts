import { describe, expect, test } from 'vitest'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { rotiferFeed } from './rotifer-feed.ts'

/** 18 L counted at 260 per mL on the day at 06:50, fed from a bottle of 65e9 cells per mL. */
function countedRoom() {
  const room = new SnapshotBuilder()
  const bottle = room.concentrate({ name: 'the green bottle' })
  const culture = room.culture({ startedAt: '2026-03-01T10:00:00.000Z', concentrateId: bottle.id })
  const count = room.count(culture, '2026-03-10T06:50:00.000Z', [250, 270, 260])
  return { room, culture, bottle, count }
}
const feeds = (room: SnapshotBuilder, date = '2026-03-10') => room.drafts(date, [rotiferFeed])

describe('feeding rotifers', () => {
  test('asks for 2.7 mL in two feeds: 260 x 18,000 x 75,000 / 65e9 / 2', () => {
    const { room } = countedRoom()
    const { drafts, gaps } = feeds(room)
    expect(gaps).toEqual([])
    expect(drafts.map(({ roundId, content }) => [roundId, content.amount])).toEqual([
      ['morning', { value: 2.7, unit: 'mL' }],
      ['evening', { value: 2.7, unit: 'mL' }],
    ])
    expect((260 * 18_000 * 75_000) / 65e9 / 2).toBeCloseTo(2.7, 2)
    expect(saidTitle(drafts[1])).toMatch(/^[\d.,]+ \S+ concentrate, second feed$/)
  })

  test('says why from the count down to the label, each with where it was read', () => {
    const { room, culture, count } = countedRoom()
    const because = feeds(room).drafts[0]?.content.because ?? []
    expect(because.map(({ joins, quantity }) => [joins, quantity?.value])).toEqual([
      [null, 260],
      ['times', 18],
      ['times', 75_000],
      ['divided_by', 65e9],
      ['divided_by', 2],
      ['equals', 2.7],
      ['and', undefined],
    ])
    expect(because[0]?.origin).toMatchObject({ kind: 'fact', factId: count.id, at: count.at, byName: 'Ana' })
    expect(because[1]?.origin).toMatchObject({ kind: 'setting', subjectId: culture.id })
    expect(because[2]?.origin).toMatchObject({ source: 'Pfeiffer & Ludwig 2007, N. Am. J. Aquac. 69:239-243' })
  })

  test('feeds what is left after a harvest: a fifth less', () => {
    const { room, culture } = countedRoom()
    room.fact('harvest', culture.id, '2026-03-10T07:20:00.000Z', {
      volumeL: 3.6,
      parts: [{ to: 'drain', volumeL: 3.6 }],
    })
    expect(feeds(room).drafts.map(({ content }) => content.amount?.value)).toEqual([2.2, 2.2])
  })

  test('later feeds follow the newest count', () => {
    const { room, culture } = countedRoom()
    room.count(culture, '2026-03-10T12:00:00.000Z', [400, 400, 400])
    expect(feeds(room).drafts.at(-1)?.content.amount?.value).toBe(4.2)
  })

  test('gives half for a day after it smelt, and no longer without another look', () => {
    const asked = (at: string) => {
      const { room, culture } = countedRoom()
      room.fact('observation', culture.id, at, { signs: ['bad_smell'] })
      return feeds(room).drafts[0]?.content.amount?.value
    }
    expect(asked('2026-03-09T00:30:00.000Z')).toBe(1.4)
    expect(asked('2026-03-08T23:30:00.000Z')).toBe(2.7)
  })

  test('goes by how the water has looked for three days, and no longer', () => {
    const asked = (at: string) => {
      const { room, culture } = countedRoom()
      room.fact('observation', culture.id, at, { signs: ['water_green'] })
      return feeds(room).drafts[0]?.content.amount?.value
    }
    expect(asked('2026-03-07T00:30:00.000Z')).toBe(2.2)
    expect(asked('2026-03-06T23:30:00.000Z')).toBe(2.7)
  })

  test('is never doubled after a day on which nothing was fed', () => {
    const { room, culture } = countedRoom()
    room.count(culture, '2026-03-11T06:50:00.000Z', [260, 260, 260])
    expect(feeds(room, '2026-03-11').drafts.map(({ content }) => content.amount?.value)).toEqual([2.7, 2.7])
  })

  test('does not ask again for a round that was fed without its task', () => {
    const { room, culture, bottle } = countedRoom()
    room.fact('feeding', culture.id, '2026-03-10T06:55:00.000Z', {
      food: 'concentrate',
      concentrateId: bottle.id,
      amountMl: 2.7,
    })
    expect(feeds(room).drafts.map(({ roundId }) => roundId)).toEqual(['evening'])
  })

  test('is spread over as many rounds as the room has', () => {
    const { room } = countedRoom()
    room.setting('rotifer-feed', { parameters: { feedsPerDay: 6 } })
    expect(feeds(room).drafts.map(({ content }) => content.amount?.value)).toEqual([1.8, 1.8, 1.8])
    room.snapshot.room.rounds = [{ id: 'once', name: 'Once', at: '09:00' }]
    expect(onlyDraft(feeds(room)).content.amount?.value).toBe(5.4)
  })

  test('gives less when the water was still green and more when it was clear and sound', () => {
    const green = countedRoom()
    green.room.fact('observation', green.culture.id, '2026-03-10T07:05:00.000Z', { signs: ['water_green'] })
    expect(feeds(green.room).drafts.at(-1)?.content.amount?.value).toBe(2.2)
    const clear = countedRoom()
    clear.room.fact('observation', clear.culture.id, '2026-03-10T07:05:00.000Z', { signs: ['water_clear'] })
    expect(feeds(clear.room).drafts.at(-1)?.content.amount?.value).toBe(3.2)
    const dying = countedRoom()
    dying.room.fact('observation', dying.culture.id, '2026-03-10T07:05:00.000Z', {
      signs: ['water_clear', 'bad_smell'],
    })
    // Half of 2.7 mL, to what a syringe shows: what it does not clear would foul it.
    expect(feeds(dying.room).drafts.at(-1)?.content.amount?.value).toBe(1.4)
  })

  test('a culture just started is fed by its inoculum: a million in 15.9 L is 63 per mL', () => {
    const room = new SnapshotBuilder()
    room.concentrate()
    const culture = room.culture({ startedAt: '2026-03-10T06:00:00.000Z', volumeL: 15.9 })
    room.fact('inoculation', culture.id, '2026-03-10T06:00:00.000Z', { animals: 1e6 })
    // 1e6 x 75,000 / 65e9 / 2 = 0.58 mL
    expect(feeds(room).drafts.map(({ content }) => content.amount?.value)).toEqual([0.6, 0.6])
  })

  test('a dose under a syringe’s mark is given diluted, and recorded as concentrate', () => {
    const room = new SnapshotBuilder()
    room.concentrate()
    const culture = room.culture({ startedAt: '2026-03-01T10:00:00.000Z', volumeL: 1 })
    room.count(culture, '2026-03-10T06:50:00.000Z', [80, 80, 80])
    const draft = feeds(room).drafts[0]!
    // 80 x 1,000 x 75,000 / 65e9 / 2 = 0.046 mL, so 0.5 mL of one in ten.
    expect(draft.content.amount).toEqual({ value: 0.5, unit: 'mL' })
    expect(saidTitle(draft)).toContain('diluted 1 in 10')
    expect(signOff(rotiferFeed, draft).facts[0]).toMatchObject({ data: { amountMl: 0.05 } })
  })

  test('names what is missing: a bottle with its strength, or a count', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt: '2026-03-01T10:00:00.000Z' })
    expect(feeds(room).gaps[0]?.message).toBe('Say which concentrate feeds R1 and its strength from the label.')
    culture.concentrateId = room.concentrate().id
    expect(feeds(room).gaps[0]?.message).toBe('Count R1, or say how dense it was started, and its feeds follow.')
  })

  test('asks nothing of other cultures, before a culture starts, or of one with nothing alive in it', () => {
    const room = new SnapshotBuilder()
    room.concentrate()
    room.culture({ startedAt: '2026-03-01T10:00:00.000Z', kind: 'microalgae', strain: null })
    room.culture({ startedAt: '2026-03-11T10:00:00.000Z' })
    const crashed = room.culture({ startedAt: '2026-03-01T10:00:00.000Z' })
    room.count(crashed, '2026-03-10T06:50:00.000Z', [0, 0, 0])
    expect(feeds(room)).toEqual({ drafts: [], gaps: [] })
  })

  test('signing off records the planned amount from the bottle, or what was really given, and what was seen', () => {
    const { room, culture, bottle } = countedRoom()
    const draft = feeds(room).drafts[0]!
    expect(signOff(rotiferFeed, draft)).toEqual({
      facts: [
        {
          kind: 'feeding',
          subjectId: culture.id,
          data: { food: 'concentrate', concentrateId: bottle.id, amountMl: 2.7 },
        },
        { kind: 'care', subjectId: culture.id, data: { act: 'brush_walls' } },
      ],
    })
    const seen = signOff(rotiferFeed, draft, { amountMl: 2, water: 'water_clear', signs: ['foam'] })
    expect(seen.facts).toMatchObject([
      { data: { amountMl: 2 } },
      { kind: 'observation', data: { signs: ['water_clear', 'foam'] } },
      { kind: 'care', data: { act: 'brush_walls' } },
    ])
  })

  test('the first feed has the walls brushed while they are due; a later one, or an unbrushed one, says nothing of it', () => {
    const { room, culture } = countedRoom()
    const [first, second] = feeds(room).drafts
    expect(saidTitle(first)).toMatch(/^[\d.,]+ \S+ concentrate, first feed, walls brushed$/)
    expect(first?.content.fields.map(({ name }) => name)).toContain('brushed')
    expect(second?.content.fields.map(({ name }) => name)).not.toContain('brushed')
    expect(signOff(rotiferFeed, first!, { brushed: false }).facts.map(({ kind }) => kind)).toEqual(['feeding'])
    room.fact('care', culture.id, '2026-03-10T06:55:00.000Z', { act: 'brush_walls' })
    expect(saidTitle(feeds(room).drafts[0])).toMatch(/^[\d.,]+ \S+ concentrate, first feed$/)
  })

  test('a backup is fed twice a day like the others, half of 5.4 mL at a time', () => {
    const { room, culture } = countedRoom()
    culture.isBackup = true
    const { drafts } = feeds(room)
    expect(drafts.map(({ content }) => content.amount?.value)).toEqual([2.7, 2.7])
    expect(drafts[1]?.content.because.at(-2)?.origin).toMatchObject({ parameter: 'backupFeedsPerDay' })
  })

  test('a culture begun after the morning round gets its first feed now', () => {
    const room = new SnapshotBuilder()
    const bottle = room.concentrate()
    const culture = room.culture({ startedAt: '2026-03-10T09:30:00.000Z', concentrateId: bottle.id })
    room.fact('inoculation', culture.id, '2026-03-10T09:30:00.000Z', { densityPerMl: 100 })
    const { drafts } = room.drafts('2026-03-10', [rotiferFeed])
    expect(drafts.map(({ roundId }) => roundId)).toEqual(['morning', 'evening'])
    expect(room.drafts('2026-03-09', [rotiferFeed]).drafts).toEqual([])
  })

  test('one that smells, sinks or swims slowly gets half a ration, until it is found well', () => {
    const room = new SnapshotBuilder()
    const bottle = room.concentrate()
    const culture = room.culture({ startedAt: '2026-03-01T10:00:00.000Z', concentrateId: bottle.id })
    room.count(culture, '2026-03-10T06:30:00.000Z', [240, 240, 240])
    const given = () => room.drafts('2026-03-10', [rotiferFeed]).drafts[0]?.content.amount?.value ?? Number.NaN
    const full = given()
    room.fact('observation', culture.id, '2026-03-10T06:40:00.000Z', { signs: ['swimming_slow'] })
    expect(given() / full).toBeCloseTo(0.5, 1)
    room.fact('observation', culture.id, '2026-03-10T06:50:00.000Z', { signs: ['swimming_well'] })
    expect(given()).toBe(full)
  })
})
