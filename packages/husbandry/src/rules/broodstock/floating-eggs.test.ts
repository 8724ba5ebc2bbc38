import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../../calendar/husbandry-day.ts'
import { lacksForEggs } from '../../plans/egg-look-plan.ts'
import { culturesLinked } from '../../state/feed-links.ts'
import { larvalDiet } from '../../state/larval-diet.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { clutchLook } from './clutch-look.ts'
import { clutchMorningAfter } from './clutch-morning-after.ts'
import { clutchReady } from './clutch-ready.ts'
import { clutchWatch } from './clutch-watch.ts'
import { pairFeed } from './pair-feed.ts'
import { pairLookForEggs } from './pair-look-for-eggs.ts'

const species = 'other-1f-synchiropus-splendidus'
const date = '2026-03-10'
// Lights go off over the pair at 19:00 in UTC.
const dusk = '2026-03-09T19:00:00.000Z'

function dragonets({ larvalTanks = 1 } = {}) {
  const room = new SnapshotBuilder({ lightsOnAt: '07:00', lightsOffAt: '19:00', timeZone: 'Etc/GMT' })
  const pair = room.pair({ species })
  for (let tank = 1; tank <= larvalTanks; tank += 1) room.tank({ name: `Larval ${tank}`, kind: 'larval', volumeL: 30 })
  return { room, pair }
}
const looks = ({ room }: ReturnType<typeof dragonets>, on = date) => room.drafts(on, [pairFeed, pairLookForEggs]).drafts
const lacksOf = ({ room, pair }: ReturnType<typeof dragonets>) => {
  const snapshot = room.build()
  return lacksForEggs(snapshot, pair, husbandryDay({ room: snapshot.room, date }))
}
const lookOf = (made: ReturnType<typeof dragonets>, on = date) =>
  looks(made, on).find(({ ruleId }) => ruleId === 'pair-look-for-eggs')

describe('eggs that float', () => {
  test('are looked for the morning after dusk, or after dark where somebody comes then, and not with a feed by day', () => {
    const made = dragonets()
    expect(looks(made).some((draft) => saidTitle(draft).includes('look for eggs'))).toBe(false)
    expect(lookOf(made)?.roundId).toBe('morning')
    made.room.snapshot.room.rounds = [...made.room.snapshot.room.rounds, { id: 'night', name: 'Night', at: '21:30' }]
    expect(lookOf(made)?.roundId).toBe('night')
  })

  test('were laid at the last dusk: in the morning at last evening’s, after dark at this one’s', () => {
    const draft = lookOf(dragonets())!
    const laidBy = (at: string) => {
      const [made] = signOff(pairLookForEggs, draft, { eggs: true, number: 80 }, at).creations ?? []
      return made
    }
    expect(laidBy('2026-03-10T07:05:00.000Z')).toMatchObject({ spawnedAt: dusk, intent: 'raise_all', eggs: 80 })
    expect(laidBy('2026-03-10T21:35:00.000Z')).toMatchObject({ spawnedAt: '2026-03-10T19:00:00.000Z' })
  })

  test('are looked for only while a larval tank is free of larvae and of eggs to come', () => {
    expect(lookOf(dragonets({ larvalTanks: 0 }))).toBeDefined()
    const full = dragonets({ larvalTanks: 2 })
    const [first] = full.room.snapshot.tanks.filter(({ kind }) => kind === 'larval')
    full.room.batch({ tankId: first!.id, hatchedOn: '2026-03-01' })
    expect(lookOf(full)).toBeDefined()
    expect(lacksOf(full)).toEqual([])
    const nest = full.room.pair({ species: 'amphiprion-ocellaris' })
    full.room.clutch(nest, { spawnedAt: '2026-03-08T12:00:00.000Z', intent: 'raise_all' })
    expect(lookOf(full)).toBeUndefined()
    expect(lacksOf(full)).toEqual(['larval_tank'])
    // Whoever rests is not looked at anyway, and eggs of a nest wait for no tank.
    const [dragonet, clownfish] = full.room.build().pairs
    const lacksAs = (pair: typeof dragonet) => lacksOf({ ...full, pair: pair! })
    expect([lacksAs({ ...dragonet!, isResting: true }), lacksAs(clownfish)]).toEqual([[], []])
  })

  test('are looked for only while grow-out has room for more than the larvae that are here', () => {
    const made = dragonets({ larvalTanks: 2 })
    const [first] = made.room.snapshot.tanks.filter(({ kind }) => kind === 'larval')
    made.room.tank({ kind: 'grow_out', volumeL: 100 })
    made.room.batch({ tankId: first!.id, hatchedOn: '2026-03-01', larvae: 49 })
    expect([lookOf(made) !== undefined, lacksOf(made)]).toEqual([true, []])
    // Half a fish a litre, as the rule of grow-out has it, is 50 in 100 L.
    made.room.batch({ tankId: first!.id, hatchedOn: '2026-03-01', larvae: 1 })
    expect([lookOf(made) !== undefined, lacksOf(made)]).toEqual([false, ['grow_out']])
  })

  test('are left to the parents while the copepods would not feed their larvae', () => {
    const asked = (naupliiPerMl: number) => {
      const made = dragonets()
      const { id } = made.room.culture({
        name: 'C1',
        kind: 'copepod',
        strain: null,
        volumeL: 30,
        startedAt: '2026-02-01T08:00:00.000Z',
      })
      const counted = (of: 'culture' | 'copepod_nauplii', perMl: number) =>
        made.room.fact('count', id, '2026-03-09T07:10:00.000Z', { of, animals: [perMl * 10], volumeMl: 10 })
      counted('culture', 2)
      counted('copepod_nauplii', naupliiPerMl)
      expect(lacksOf(made)).toEqual(lookOf(made) ? [] : ['nauplii'])
      return lookOf(made) !== undefined
    }
    // Half of 30 L at 4 a mL is 2 a mL in 30 L.
    expect([4, 3.9].map(asked)).toEqual([true, false])
  })

  test('that were left where they are make no clutch, and are not asked about again for three days', () => {
    const made = dragonets()
    const { facts, creations } = signOff(pairLookForEggs, lookOf(made)!, { eggs: true, intent: 'leave_with_parents' })
    expect(creations).toBeUndefined()
    for (const fact of facts) made.room.append(fact, { at: `${date}T07:05:00.000Z` })
    expect(['2026-03-11', '2026-03-12', '2026-03-13'].map((on) => lookOf(made, on) !== undefined)).toEqual([
      false,
      false,
      true,
    ])
  })

  test('are put into their tank as it is readied, in the same round, and neither looked at again that day nor watched by night', () => {
    const { room, pair } = dragonets()
    room.fact('observation', pair.id, `${date}T07:05:00.000Z`, { signs: ['eggs_seen'] })
    room.clutch(pair, { spawnedAt: dusk, care: 'pelagic', intent: 'raise_all' })
    const ready = onlyDraft(room.drafts(date, [clutchReady, clutchLook, clutchWatch]))
    expect([ready.roundId, saidTitle(ready)]).toEqual(['morning', 'Ready Larval 1 for the eggs'])
    expect(ready.content.steps.map(({ text }) => text).join(' ')).toMatch(/copepod nauplii.*Now the eggs into it/)
  })

  test('hatch into larvae that every working copepod culture feeds, from their second morning on', () => {
    const { room, pair } = dragonets()
    const startedAt = '2026-02-01T08:00:00.000Z'
    const copepods = ['C1', 'C2', 'C3'].map((name) =>
      room.culture({ name, kind: 'copepod', strain: null, startedAt, isBackup: name === 'C3' }),
    )
    const rotifers = room.culture({ name: 'R1', startedAt })
    room.clutch(pair, { spawnedAt: '2026-03-08T19:00:00.000Z', care: 'pelagic', intent: 'raise_all' })
    const morning = onlyDraft(room.drafts(date, [clutchMorningAfter]))
    const [made] = signOff(clutchMorningAfter, morning, { hatched: 'all', larvae: 60 }).creations ?? []
    expect(made).toMatchObject({
      hatchedOn: '2026-03-09',
      cultureIds: [rotifers, ...copepods.slice(0, 2)].map(({ id }) => id),
    })
    const batch = room.batch({ species, hatchedOn: '2026-03-09' })
    for (const culture of copepods.slice(0, 2)) room.feedLink(batch, culture)
    expect(culturesLinked(room.build(), batch, date).map(({ name }) => name)).toEqual(['C1', 'C2'])
    // Mouths that open some two days after the hatch find food on the second morning.
    expect([date, '2026-03-11'].map((on) => larvalDiet(batch, on)?.isOnRotifers)).toEqual([false, true])
  })
})
