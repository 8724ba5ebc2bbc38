import { describe, expect, test } from 'vitest'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { steadyCulture } from '../../testing/steady-culture.ts'
import { chilledReserveRule } from './chilled-reserve.ts'
import { rotiferBackupCheck } from './rotifer-backup.ts'
import { rotiferBackupWanted } from './rotifer-backup-wanted.ts'
import { rotiferFilter } from './rotifer-filter.ts'
import { rotiferHarvest } from './rotifer-harvest.ts'
import { rotiferRescue } from './rotifer-rescue.ts'
import { rotiferRestart } from './rotifer-restart.ts'
import { rotiferTrouble } from './rotifer-trouble.ts'

const date = '2026-03-10'

describe('the culture’s filter', () => {
  test('is cleaned weekly where there is one, and nowhere else', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt: '2026-03-01T08:00:00.000Z', hasFilter: true })
    room.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
    const draft = onlyDraft(room.drafts('2026-03-08', [rotiferFilter]))
    expect(room.drafts('2026-03-07', [rotiferFilter]).drafts).toEqual([])
    const [fact] = signOff(rotiferFilter, draft).facts
    expect(fact).toEqual({ kind: 'care', subjectId: culture.id, data: { act: 'clean_filter' } })
    room.append(fact!, { at: '2026-03-08T07:30:00.000Z' })
    expect(room.drafts('2026-03-14', [rotiferFilter]).drafts).toEqual([])
    expect(room.drafts('2026-03-15', [rotiferFilter]).drafts).toHaveLength(1)
  })
})

describe('the backup', () => {
  test('is started where there is something to start it from: 63 x 18 L / (240 x 0.9) = 5.25 L', () => {
    const room = new SnapshotBuilder()
    const culture = steadyCulture(room, { date })
    room.count(culture, '2026-03-10T06:40:00.000Z', [240, 240, 240])
    const wanted = onlyDraft(room.drafts(date, [rotiferBackupWanted, rotiferBackupCheck]))
    expect(saidTitle(wanted)).toBe('Start a second rotifer culture as backup, 5.3 L of R1, sieved')
    expect(rotiferBackupWanted.check?.({ answer: 'started' })).toHaveLength(1)
    const { facts, creations } = signOff(rotiferBackupWanted, wanted, { answer: 'started', volumeL: 10 })
    expect(facts).toEqual([])
    // 5.3 L of 216,000 a litre in 10 L.
    const like = { kind: 'culture', isBackup: true, parentCultureId: culture.id, drawnL: 5.3, volumeL: 10 }
    expect(creations).toEqual([expect.objectContaining({ ...like, startDensityPerMl: 114 })])
    // It has to wait: a week.
    for (const fact of signOff(rotiferBackupWanted, wanted, { answer: 'later' }).facts)
      room.append(fact, { at: '2026-03-10T12:40:00.000Z' })
    expect(room.drafts('2026-03-12', [rotiferBackupWanted]).drafts).toEqual([])
  })

  test('is not asked of a thin, a young or a doubted culture', () => {
    const thin = new SnapshotBuilder()
    thin.count(thin.culture({ startedAt: '2026-03-01T08:00:00.000Z' }), '2026-03-10T06:40:00.000Z', [150, 150, 150])
    const young = new SnapshotBuilder()
    young.count(young.culture({ startedAt: '2026-03-08T08:00:00.000Z' }), '2026-03-10T06:40:00.000Z', [300, 300, 300])
    const doubted = new SnapshotBuilder()
    const smelly = steadyCulture(doubted, { date })
    doubted.fact('observation', smelly.id, '2026-03-10T06:45:00.000Z', { signs: ['bad_smell'] })
    for (const room of [thin, young, doubted]) expect(room.drafts(date, [rotiferBackupWanted]).drafts).toEqual([])
  })

  test('is checked weekly once there is one', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt: '2026-03-01T08:00:00.000Z', isBackup: true })
    const check = onlyDraft(room.drafts(date, [rotiferBackupWanted, rotiferBackupCheck]))
    expect(check.subjectId).toBe(culture.id)
    room.append(signOff(rotiferBackupCheck, check).facts[0]!, { at: '2026-03-10T07:10:00.000Z' })
    expect(room.drafts('2026-03-16', [rotiferBackupCheck]).drafts).toEqual([])
    expect(room.drafts('2026-03-17', [rotiferBackupCheck]).drafts).toHaveLength(1)
  })

  test('is not asked for in a room without rotifers', () => {
    expect(new SnapshotBuilder().drafts(date, [rotiferBackupWanted])).toEqual({ drafts: [], gaps: [] })
  })
})

describe('restarting a culture', () => {
  test('is asked after 28 days, with half of its animals, and starts its age anew', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt: '2026-02-10T08:00:00.000Z' })
    room.count(culture, '2026-03-10T06:30:00.000Z', [200, 200, 200])
    expect(room.drafts('2026-03-09', [rotiferRestart]).drafts).toEqual([])
    const draft = onlyDraft(room.drafts(date, [rotiferRestart]))
    expect(draft.content.amount).toEqual({ value: 9, unit: 'L' })
    expect(draft.content.cautions.length).toBeGreaterThan(1)
    // 9 L x 200,000 a litre, a tenth lost in the sieve: 90 per mL in 18 L.
    const facts = signOff(rotiferRestart, draft).facts
    expect(facts).toEqual([
      { kind: 'care', subjectId: culture.id, data: { act: 'restart_culture', litres: 18 } },
      { kind: 'inoculation', subjectId: culture.id, data: { animals: 1_620_000 } },
    ])
    for (const fact of facts) room.append(fact, { at: '2026-03-10T12:40:00.000Z' })
    expect(room.drafts('2026-03-11', [rotiferRestart]).drafts).toEqual([])
  })

  test('two cultures are never restarted within three days of each other', () => {
    const room = new SnapshotBuilder()
    for (const name of ['R1', 'R2']) {
      const culture = room.culture({ name, startedAt: '2026-02-01T08:00:00.000Z' })
      room.count(culture, '2026-03-10T06:30:00.000Z', [200, 200, 200])
    }
    const [first] = room.snapshot.cultures
    room.fact('care', first!.id, '2026-03-09T12:00:00.000Z', { act: 'restart_culture' })
    expect(room.drafts(date, [rotiferRestart]).drafts).toEqual([])
    expect(onlyDraft(room.drafts('2026-03-12', [rotiferRestart])).subjectName).toBe('R2')
  })

  test('nor on one day, when both are due: the older comes first', () => {
    const room = new SnapshotBuilder()
    for (const [name, startedAt] of [
      ['R1', '2026-02-05T08:00:00.000Z'],
      ['R2', '2026-02-01T08:00:00.000Z'],
    ] as const) {
      const culture = room.culture({ name, startedAt })
      room.count(culture, '2026-03-10T06:30:00.000Z', [200, 200, 200])
    }
    expect(onlyDraft(room.drafts(date, [rotiferRestart])).subjectName).toBe('R2')
  })

  test('an uncounted culture is a question first', () => {
    const room = new SnapshotBuilder()
    room.culture({ startedAt: '2026-02-01T08:00:00.000Z' })
    expect(room.drafts(date, [rotiferRestart]).gaps[0]?.message).toContain('Count R1 before it is restarted')
  })
})

describe('a culture in trouble', () => {
  const withSigns = (...signs: ('swimming_slow' | 'foam' | 'swimming_well')[]) => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
    signs.forEach((sign, index) => {
      room.fact('observation', culture.id, `2026-03-09T1${index}:30:00.000Z`, { signs: [sign] })
    })
    return { room, culture }
  }

  test('slow swimming seen yesterday is seen to this morning, with what to do', () => {
    const { room, culture } = withSigns('swimming_slow')
    const draft = onlyDraft(room.drafts(date, [rotiferTrouble]))
    expect(saidTitle(draft)).toBe('See to it: they swim slowly')
    expect(draft.content.steps.map(({ text }) => text).join(' ')).toContain('Check the air first')
    expect(signOff(rotiferTrouble, draft, { did: 'thinned', signs: ['bad_smell'] }).facts).toEqual([
      {
        kind: 'observation',
        subjectId: culture.id,
        data: { signs: ['bad_smell'], note: 'changed part of the water' },
      },
    ])
    expect(signOff(rotiferTrouble, draft).facts[0]).toMatchObject({ data: { signs: ['swimming_well'] } })
  })

  test('a look that found them well ends it; foam alone is watched, not acted on', () => {
    expect(withSigns('swimming_slow', 'swimming_well').room.drafts(date, [rotiferTrouble]).drafts).toEqual([])
    expect(withSigns('foam').room.drafts(date, [rotiferTrouble]).drafts).toEqual([])
  })

  test('a sign of two days ago no longer counts', () => {
    const { room } = withSigns('swimming_slow')
    expect(room.drafts('2026-03-12', [rotiferTrouble]).drafts).toEqual([])
  })

  test('two counts in a row that fall are trouble, unless the fall is what was taken out', () => {
    const counted = (isHarvested: boolean) => {
      const room = new SnapshotBuilder()
      const culture = room.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
      ;[300, 240, 192].forEach((density, index) => {
        room.count(culture, `2026-03-0${7 + index}T06:30:00.000Z`, [density, density, density])
        if (isHarvested)
          room.fact('harvest', culture.id, `2026-03-0${7 + index}T07:30:00.000Z`, {
            volumeL: 3.6,
            parts: [{ to: 'drain', volumeL: 3.6 }],
          })
      })
      return room.drafts(date, [rotiferTrouble]).drafts
    }
    expect(saidTitle(counted(false)[0])).toContain('the counts fall')
    expect(counted(true)).toEqual([])
  })

  test('far fewer than 0.13 eggs a female say that it is falling already: it is seen to and not thinned, once a count', () => {
    const withEggs = (eggs: number) => {
      const room = new SnapshotBuilder()
      const culture = steadyCulture(room, { date })
      room.count(culture, '2026-03-10T06:35:00.000Z', [260, 260, 260], { eggs, females: 60 })
      return {
        room,
        culture,
        ids: () => room.drafts(date, [rotiferTrouble, rotiferHarvest]).drafts.map(({ ruleId }) => ruleId),
      }
    }
    expect(withEggs(30).ids()).toEqual(['rotifer-harvest'])
    // Six of sixty are what a culture that holds its own shows one time in three.
    expect(withEggs(6).ids()).not.toContain('rotifer-trouble')
    const { room, ids } = withEggs(2)
    expect(ids()).toEqual(['rotifer-trouble'])
    const draft = onlyDraft(room.drafts(date, [rotiferTrouble]))
    expect(saidTitle(draft)).toContain('hardly any carry eggs')
    expect(draft.content.steps.map(({ text }) => text).join(' ')).toContain('Do not thin it')
    for (const fact of signOff(rotiferTrouble, draft).facts) room.append(fact, { at: '2026-03-10T07:10:00.000Z' })
    expect(room.drafts('2026-03-11', [rotiferTrouble]).drafts).toEqual([])
  })
})

describe('a crashed culture', () => {
  const crashed = () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ name: 'R1', startedAt: '2026-02-20T08:00:00.000Z' })
    room.count(culture, '2026-03-08T06:30:00.000Z', [300, 300, 300])
    room.count(culture, '2026-03-10T06:30:00.000Z', [5, 6, 4])
    return { room, culture }
  }

  test('is started again from the backup: 63 x 18 L / (200 x 0.9) = 6.3 L', () => {
    const { room, culture } = crashed()
    const backup = room.culture({ name: 'R2', startedAt: '2026-02-20T08:00:00.000Z', isBackup: true })
    const other = room.culture({ name: 'R3', startedAt: '2026-02-20T08:00:00.000Z' })
    room.count(backup, '2026-03-10T06:30:00.000Z', [200, 200, 200])
    room.count(other, '2026-03-10T06:30:00.000Z', [400, 400, 400])
    const draft = onlyDraft(room.drafts(date, [rotiferRescue]))
    expect(saidTitle(draft)).toMatch(/^[\d.,]+ \S+ of R2, sieved, for a new start$/)
    expect(draft.content.amount).toEqual({ value: 6.3, unit: 'L' })
    expect(signOff(rotiferRescue, draft).facts).toEqual([
      { kind: 'care', subjectId: culture.id, data: { act: 'restart_culture', litres: 18 } },
      {
        kind: 'harvest',
        subjectId: backup.id,
        data: { volumeL: 6.3, parts: [{ to: 'culture', subjectId: culture.id, volumeL: 6.3 }] },
      },
      { kind: 'inoculation', subjectId: culture.id, data: { animals: 1_134_000, fromCultureId: backup.id } },
    ])
  })

  test('takes no more than half of the rescuer, and says so when nobody can help', () => {
    const thin = crashed()
    const backup = thin.room.culture({ name: 'R2', startedAt: '2026-02-20T08:00:00.000Z', isBackup: true, volumeL: 5 })
    thin.room.count(backup, '2026-03-10T06:30:00.000Z', [200, 200, 200])
    expect(onlyDraft(thin.room.drafts(date, [rotiferRescue])).content.amount?.value).toBe(2.5)
    const alone = onlyDraft(crashed().room.drafts(date, [rotiferRescue]))
    expect(alone.content.amount).toBeNull()
    expect(alone.content.steps.at(-1)?.text).toContain('buy a starter')
    expect(signOff(rotiferRescue, alone).facts).toHaveLength(1)
  })

  test('takes nothing from a culture that smells or falls, and no more than it may still give today', () => {
    const { room } = crashed()
    const backup = room.culture({ name: 'R2', startedAt: '2026-02-20T08:00:00.000Z', isBackup: true })
    room.count(backup, '2026-03-10T06:30:00.000Z', [200, 200, 200])
    // Half of 18 L in a day, of which 7 have gone.
    room.fact('harvest', backup.id, '2026-03-10T06:50:00.000Z', { volumeL: 7, parts: [{ to: 'drain', volumeL: 7 }] })
    expect(onlyDraft(room.drafts(date, [rotiferRescue])).content.amount?.value).toBe(2)
    room.fact('observation', backup.id, '2026-03-10T06:55:00.000Z', { signs: ['bad_smell'] })
    const draft = onlyDraft(room.drafts(date, [rotiferRescue]))
    expect(draft.content.amount).toBeNull()
    expect(draft.content.steps.at(-1)?.text).toContain('No other sound culture')
  })

  test('is over once it has been started again; a thinned culture has not crashed', () => {
    const { room, culture } = crashed()
    room.fact('inoculation', culture.id, '2026-03-10T08:00:00.000Z', { animals: 1e6 })
    expect(room.drafts(date, [rotiferRescue]).drafts).toEqual([])
    const steady = new SnapshotBuilder()
    steadyCulture(steady, { date })
    expect(steady.drafts(date, [rotiferRescue]).drafts).toEqual([])
  })
})

describe('the chilled reserve', () => {
  test('is discarded after 14 days, of which half are dead; a younger jar stays', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt: '2026-02-01T08:00:00.000Z' })
    const chill = (at: string) =>
      room.fact('harvest', culture.id, at, { volumeL: 2, parts: [{ to: 'chilled_reserve', volumeL: 2 }] })
    chill('2026-02-24T08:00:00.000Z')
    chill('2026-03-03T08:00:00.000Z')
    expect(room.drafts('2026-03-09', [chilledReserveRule]).drafts).toEqual([])
    const draft = onlyDraft(room.drafts(date, [chilledReserveRule]))
    expect(draft.content.amount).toEqual({ value: 2, unit: 'L' })
    expect(draft.content.because.at(-1)?.quantity).toEqual({ value: 0.5, unit: 'share' })
    const [fact] = signOff(chilledReserveRule, draft).facts
    expect(fact).toEqual({ kind: 'care', subjectId: culture.id, data: { act: 'discard_reserve', litres: 2 } })
    room.append(fact!, { at: '2026-03-10T08:00:00.000Z' })
    expect(room.drafts('2026-03-16', [chilledReserveRule]).drafts).toEqual([])
    expect(room.drafts('2026-03-17', [chilledReserveRule]).drafts).toHaveLength(1)
  })

  test('every jar that is too old goes with the oldest, and all of them are written down', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt: '2026-02-01T08:00:00.000Z' })
    for (const [on, volumeL] of [
      ['2026-02-22', 2],
      ['2026-02-24', 1.5],
      ['2026-03-03', 3],
    ] as const)
      room.fact('harvest', culture.id, `${on}T08:00:00.000Z`, { volumeL, parts: [{ to: 'chilled_reserve', volumeL }] })
    const draft = onlyDraft(room.drafts(date, [chilledReserveRule]))
    expect(saidTitle(draft)).toMatch(/^Discard [\d.,]+ \S+ of chilled rotifers, 16 days old$/)
    expect(draft.content.amount).toEqual({ value: 2, unit: 'L' })
    expect(draft.content.steps[1]).toMatchObject({
      text: 'The later jars that are too old by now go with it: {amount} more.',
      quantities: { amount: { value: 1.5, unit: 'L' } },
    })
    expect(draft.content.because.slice(0, 2).map(({ quantity }) => quantity?.value)).toEqual([2, 1.5])
    const [fact] = signOff(chilledReserveRule, draft).facts
    expect(fact).toMatchObject({ data: { act: 'discard_reserve', litres: 3.5 } })
    room.append(fact!, { at: '2026-03-10T08:00:00.000Z' })
    expect(room.drafts(date, [chilledReserveRule]).drafts).toEqual([])
  })
})
