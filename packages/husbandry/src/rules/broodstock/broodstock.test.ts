import { describe, expect, test } from 'vitest'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { clutchLook } from './clutch-look.ts'
import { pairFeed } from './pair-feed.ts'
import { pairLookForEggs } from './pair-look-for-eggs.ts'

const date = '2026-03-10'

describe('looking at the eggs', () => {
  const clutchRoom = (spawnedAt: string) => {
    const room = new SnapshotBuilder()
    // The morning after would take the look's place on a likely night's morning.
    room.setting('clutch-morning-after', { isOn: false })
    const pair = room.pair({ name: 'Pair A' })
    const clutch = room.clutch(pair, { name: 'A1', spawnedAt, eggs: 400 })
    return { room, pair, clutch }
  }

  test('is daily from the day after spawning until it hatches, and says the day', () => {
    const { room, clutch } = clutchRoom('2026-03-09T10:00:00.000Z')
    expect(room.drafts('2026-03-09', [clutchLook]).drafts).toEqual([])
    expect(saidTitle(onlyDraft(room.drafts(date, [clutchLook])))).toBe('Look at the eggs, day 1')
    room.fact('hatch', clutch.id, '2026-03-16T08:00:00.000Z', { hatchedOn: '2026-03-15' })
    expect(room.drafts('2026-03-16', [clutchLook]).drafts).toEqual([])
  })

  test('says how likely tonight is: day 7 at 27 C is the night of ocellaris', () => {
    const early = onlyDraft(clutchRoom('2026-03-07T10:00:00.000Z').room.drafts(date, [clutchLook]))
    expect(early.content.steps[0]?.text).toMatch(/^Likeliest night of hatching: 2026-03-1[34]/)
    const late = onlyDraft(clutchRoom('2026-03-03T10:00:00.000Z').room.drafts(date, [clutchLook]))
    expect(late.content.steps[0]?.text).toMatch(/^Tonight: hatching (likely|almost certain) \(\d+%\)\.$/)
    expect(late.content.because.at(-2)?.quantity?.unit).toBe('share')
  })

  test('silver eyes seen on day 6 make tonight likelier than no look at all', () => {
    const chance = (stage: 'orange' | 'silver' | null) => {
      const { room, clutch } = clutchRoom('2026-03-04T10:00:00.000Z')
      if (stage)
        room.fact('observation', clutch.id, '2026-03-09T08:00:00.000Z', { signs: ['eggs_seen'], eggStage: stage })
      return onlyDraft(room.drafts(date, [clutchLook])).content.because.at(-2)?.quantity?.value ?? 0
    }
    expect(chance('silver')).toBeGreaterThan(chance(null))
  })

  test('signing off records the colour and the dead eggs', () => {
    const { room, clutch } = clutchRoom('2026-03-07T10:00:00.000Z')
    const draft = onlyDraft(room.drafts(date, [clutchLook]))
    expect(signOff(clutchLook, draft, { eggStage: 'dark', dead: 12, note: 'male fans' }).facts).toEqual([
      {
        kind: 'observation',
        subjectId: clutch.id,
        data: { signs: ['eggs_seen'], eggStage: 'dark', note: 'male fans' },
      },
      { kind: 'loss', subjectId: clutch.id, data: { number: 12, of: 'eggs' } },
    ])
  })

  test('a look today is not asked for again; one far too old is asked about, not a crash', () => {
    const { room, clutch } = clutchRoom('2026-03-07T10:00:00.000Z')
    room.fact('observation', clutch.id, '2026-03-10T06:00:00.000Z', { signs: ['eggs_seen'], eggStage: 'dark' })
    expect(room.drafts(date, [clutchLook]).drafts).toEqual([])
    const old = clutchRoom('2026-01-07T10:00:00.000Z')
    old.room.fact('observation', old.clutch.id, '2026-03-09T06:00:00.000Z', { signs: ['eggs_seen'] })
    const { steps } = onlyDraft(old.room.drafts(date, [clutchLook])).content
    expect(steps.at(-1)?.text).toBe('It is late for its kind: look closely whether the eggs are alive.')
  })

  test('a mouthbrooder’s parent is looked at instead, and asked whether it still carries', () => {
    const room = new SnapshotBuilder()
    const pair = room.pair({ species: 'pterapogon-kauderni' })
    room.clutch(pair, { spawnedAt: '2026-03-01T10:00:00.000Z', care: 'mouth' })
    const draft = onlyDraft(room.drafts(date, [clutchLook]))
    expect(saidTitle(draft)).toContain('the parent')
    expect(signOff(clutchLook, draft, { brood: 'gone' }).facts[0]).toMatchObject({ data: { signs: ['no_eggs'] } })
  })

  test('eggs that float are asked for the dead among them, and for no colour', () => {
    const room = new SnapshotBuilder()
    const pair = room.pair({ species: 'other-3f-centropyge-sp' })
    room.clutch(pair, { spawnedAt: '2026-03-09T10:00:00.000Z', care: 'pelagic' })
    const draft = onlyDraft(room.drafts(date, [clutchLook]))
    expect(saidTitle(draft)).toContain('the eggs')
    expect(draft.content.fields.map(({ name }) => name)).toEqual(['eggs', 'dead', 'note'])
    expect(draft.content.steps.map(({ text }) => text).join(' ')).toMatch(/hatching.*Clear eggs that float are alive/)
  })
})

describe('feeding the pairs', () => {
  test('is asked twice a day, frozen and dry by turns; once a day for a resting pair', () => {
    const room = new SnapshotBuilder()
    const pair = room.pair({ name: 'Pair A' })
    room.fact('observation', pair.id, '2026-03-09T18:35:00.000Z', { signs: ['no_eggs'] })
    expect(
      room.drafts(date, [pairFeed]).drafts.map(({ roundId, content }) => [roundId, saidTitle({ content })]),
    ).toEqual([
      ['morning', 'Feed frozen food, first feed'],
      ['evening', 'Feed dry food, second feed'],
    ])
    pair.isResting = true
    expect(saidTitle(onlyDraft(room.drafts(date, [pairFeed])))).toBe('Feed frozen food')
  })

  test('one tap records the food; signs and a note become an observation', () => {
    const room = new SnapshotBuilder()
    const pair = room.pair()
    const [draft] = room.drafts(date, [pairFeed]).drafts
    expect(signOff(pairFeed, draft!).facts).toEqual([{ kind: 'feeding', subjectId: pair.id, data: { food: 'frozen' } }])
    expect(signOff(pairFeed, draft!, { food: 'fresh', signs: ['fighting'] }).facts).toEqual([
      { kind: 'feeding', subjectId: pair.id, data: { food: 'fresh' } },
      { kind: 'observation', subjectId: pair.id, data: { signs: ['fighting'] } },
    ])
  })
})

describe('looking for eggs', () => {
  // On its own, as where nobody feeds by the list.
  const looks = (room: SnapshotBuilder, on = date) => {
    room.setting('pair-feed', { isOn: false })
    return room.drafts(on, [pairLookForEggs])
  }

  test('goes with the day’s last feed in the light, which records both', () => {
    const room = new SnapshotBuilder()
    const pair = room.pair()
    expect(room.drafts(date, [pairLookForEggs]).drafts).toEqual([])
    const [morning, evening] = room.drafts(date, [pairFeed]).drafts
    expect(saidTitle(morning)).toBe('Feed frozen food, first feed')
    expect(saidTitle(evening)).toBe('Feed dry food, second feed, look for eggs')
    expect(signOff(pairFeed, evening!, { eggs: true, number: 300 })).toEqual({
      facts: [
        { kind: 'observation', subjectId: pair.id, data: { signs: ['eggs_seen'] } },
        { kind: 'feeding', subjectId: pair.id, data: { food: 'dry' } },
      ],
      creations: [{ kind: 'clutch', pairId: pair.id, spawnedAt: '2026-03-10T12:00:00.000Z', eggs: 300 }],
    })
    expect(signOff(pairFeed, evening!, { eggs: false, signs: ['fighting'] }).facts.map(({ data }) => data)).toEqual([
      { signs: ['no_eggs'] },
      { food: 'dry' },
      { signs: ['fighting'] },
    ])
    // The last round is after lights off: they are fed at midday, and that feed asks.
    room.snapshot.room.lightsOffAt = '17:00'
    const midday = room.drafts(date, [pairFeed]).drafts[1]
    expect([midday?.roundId, saidTitle(midday)]).toEqual(['midday', 'Feed dry food, second feed, look for eggs'])
    // Fed without its task in every lit round: the look stands alone.
    for (const at of ['07:05', '12:35']) room.fact('feeding', pair.id, `${date}T${at}:00.000Z`, { food: 'dry' })
    expect(room.drafts(date, [pairLookForEggs]).drafts).toHaveLength(1)
  })

  test('stands alone once the last feed was given without its task, and the morning’s is not made up', () => {
    const room = new SnapshotBuilder()
    const pair = room.pair()
    room.fact('feeding', pair.id, `${date}T18:35:00.000Z`, { food: 'dry' })
    expect(room.drafts(date, [pairFeed]).drafts).toEqual([])
    expect(room.drafts(date, [pairLookForEggs]).drafts).toHaveLength(1)
  })

  test('is asked of a pair that never spawned here every third day, and not while it rests', () => {
    const room = new SnapshotBuilder()
    const pair = room.pair()
    expect(looks(room).drafts).toHaveLength(1)
    room.fact('observation', pair.id, '2026-03-09T12:30:00.000Z', { signs: ['no_eggs'] })
    expect(looks(room).drafts).toEqual([])
    expect(looks(room, '2026-03-12').drafts).toHaveLength(1)
    pair.isResting = true
    expect(looks(room, '2026-03-12').drafts).toEqual([])
  })

  test('is daily in the window of the pair’s own intervals, and stops while it has eggs', () => {
    const room = new SnapshotBuilder()
    const pair = room.pair()
    for (const spawned of ['2026-01-25', '2026-02-08', '2026-02-22']) {
      const clutch = room.clutch(pair, { spawnedAt: `${spawned}T10:00:00.000Z` })
      room.fact('hatch', clutch.id, `${spawned.slice(0, 8)}28T08:00:00.000Z`, { hatchedOn: `${spawned.slice(0, 8)}27` })
    }
    // Every 14 days: the next is likeliest on 8 March, and the window is open on the 7th.
    room.fact('observation', pair.id, '2026-03-06T12:30:00.000Z', { signs: ['no_eggs'] })
    const draft = onlyDraft(looks(room, '2026-03-07'))
    expect(draft.content.steps[1]?.text).toMatch(/^Next spawning likeliest 2026-03-0[78]/)
    room.clutch(pair, { spawnedAt: '2026-03-08T11:00:00.000Z' })
    expect(looks(room, '2026-03-09').drafts).toEqual([])
  })

  test('eggs found make a clutch, laid today or yesterday; none found is written down', () => {
    const room = new SnapshotBuilder()
    const pair = room.pair()
    const draft = onlyDraft(looks(room))
    expect(draft.roundId).toBe('midday')
    expect(signOff(pairLookForEggs, draft, { eggs: true, number: 350 }, '2026-03-10T12:40:00.000Z')).toEqual({
      facts: [{ kind: 'observation', subjectId: pair.id, data: { signs: ['eggs_seen'] } }],
      creations: [{ kind: 'clutch', pairId: pair.id, spawnedAt: '2026-03-10T12:00:00.000Z', eggs: 350 }],
    })
    expect(
      signOff(pairLookForEggs, draft, { eggs: true, laid: 'yesterday' }, '2026-03-10T12:40:00.000Z').creations,
    ).toEqual([{ kind: 'clutch', pairId: pair.id, spawnedAt: '2026-03-09T12:00:00.000Z' }])
    // Seen before noon, they are there already.
    expect(signOff(pairLookForEggs, draft, { eggs: true }, '2026-03-10T09:10:00.000Z').creations).toMatchObject([
      { spawnedAt: '2026-03-10T09:10:00.000Z' },
    ])
    expect(signOff(pairLookForEggs, draft, { eggs: false })).toEqual({
      facts: [{ kind: 'observation', subjectId: pair.id, data: { signs: ['no_eggs'] } }],
    })
  })

  test('a species without a profile is a gap that says so', () => {
    const room = new SnapshotBuilder()
    room.pair({ name: 'Pair X', species: 'gobiodon-unknown' })
    expect(looks(room).gaps[0]?.message).toContain('Pair X: how often its species spawns is not known here')
  })
})
