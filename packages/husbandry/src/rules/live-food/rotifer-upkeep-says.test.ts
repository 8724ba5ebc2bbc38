import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../../calendar/husbandry-day.ts'
import { topUpPlans } from '../../plans/top-up-plan.ts'
import type { SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { disinfectionCautions, releaseCautions } from '../../task/cautions.ts'
import { roundAnimals } from '../../task/measures.ts'
import { saidSteps } from '../../testing/said-steps.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { chilledReserveRule } from './chilled-reserve.ts'
import { cultureWaterTest } from './culture-water-test.ts'
import { rotiferBackupCheck } from './rotifer-backup.ts'
import { rotiferBackupWanted } from './rotifer-backup-wanted.ts'
import { rotiferBrush } from './rotifer-brush.ts'
import { rotiferEnrich } from './rotifer-enrich.ts'
import { rotiferFilter } from './rotifer-filter.ts'
import { rotiferRefill } from './rotifer-refill.ts'
import { rotiferRestart } from './rotifer-restart.ts'

const date = '2026-03-10'

/** R1, 18 L at 25 and 25 °C, three weeks old, beside a culture of live algae. */
function rotiferRoom(given: Partial<SnapshotCulture> = {}) {
  const room = new SnapshotBuilder()
  const startedAt = '2026-02-17T08:00:00.000Z'
  const culture = room.culture({ name: 'R1', startedAt, ...given })
  room.culture({ name: 'A1', kind: 'microalgae', strain: null, startedAt: '2026-01-01T08:00:00.000Z' })
  return { room, culture }
}

describe('jars in the cold', () => {
  const chilled = (given: Partial<SnapshotCulture> = {}) => {
    const made = rotiferRoom({ startedAt: '2026-01-01T08:00:00.000Z', ...given })
    const { room, culture } = made
    const fill = (at: string, volumeL: number) => {
      room.count(culture, at.replace(/T.*/, 'T07:00:00.000Z'), [200, 200, 200])
      room.fact('harvest', culture.id, at, { volumeL, parts: [{ to: 'chilled_reserve', volumeL }] })
    }
    const draw = (amountMl: number) => {
      const data = { food: 'rotifers', isChilled: true, amountMl, fromCultureId: culture.id } as const
      room.fact('feeding', room.nextId(), '2026-03-08T08:00:00.000Z', data)
    }
    return { ...made, fill, draw, asked: () => room.drafts(date, [chilledReserveRule]).drafts }
  }

  test('are thrown away for what nobody has drawn: half of 2 L of 200 a mL is 9 mL of it, packed as it is kept', () => {
    const { fill, draw, asked } = chilled()
    fill('2026-02-24T08:00:00.000Z', 2)
    // 2 L x 200,000 less a tenth in the sieve, 360,000, at 20,000 a mL: 18 mL (Assavaaree et al. 2001).
    draw(9)
    const [draft] = asked()
    expect([draft?.roundId, draft?.content.amount]).toEqual(['morning', { value: 1, unit: 'L' }])
    expect(draft?.content.amountOf).toBe('chilled rotifers')
    expect(signOff(chilledReserveRule, draft!).facts[0]?.data).toEqual({ act: 'discard_reserve', litres: 1 })
    expect(draft?.content.cautions).toEqual(releaseCautions)
  })

  test('with a fiftieth left are empty: nobody can pour that', () => {
    const left = (drawnMl: number) => {
      const { fill, draw, asked } = chilled()
      fill('2026-02-24T08:00:00.000Z', 2)
      draw(drawnMl)
      return asked().length
    }
    // Of 18 mL: 0.4 and 0.3 are left.
    expect([left(17.6), left(17.7)]).toEqual([1, 0])
  })

  test('say what was chilled when, and how many live: 45 % after sixteen days', () => {
    const { fill, asked } = chilled()
    fill('2026-02-22T08:00:00.000Z', 2)
    fill('2026-02-24T08:00:00.000Z', 0.5)
    const [draft] = asked()
    // Half after 14 days, the same share each day: 0.5 to the power of 16/14 is 0.453.
    expect(whyLines(draft)).toEqual([
      ...['2 L chilled', 'and 0.5 L chilled', 'and 14 days at most in the cold'],
      'and 0.45 share still alive, about',
    ])
    expect(saidSteps(draft)).toEqual([
      expect.stringMatching(/^A drop under the lens first/),
      'The later jars that are too old by now go with it: 0.5 L more.',
      expect.stringMatching(/^Put a fresh part/),
    ])
  })

  test('alone are one step fewer', () => {
    const { fill, asked } = chilled()
    fill('2026-02-24T08:00:00.000Z', 2)
    expect(saidSteps(asked()[0])).toHaveLength(2)
  })
})

describe('a culture’s water', () => {
  const tests = (room: SnapshotBuilder, on = date) => room.drafts(on, [cultureWaterTest]).drafts

  test('is read at midday in a week’s turn, and said to have evaporated at one over its salinity', () => {
    const { room } = rotiferRoom()
    const [draft] = tests(room)
    expect([draft?.roundId, saidTitle(draft), draft?.lateAt]).toEqual([
      ...['midday', 'Test the water', '2026-03-10T14:30:00.000Z'],
    ])
    expect(saidSteps(draft)[2]).toBe(
      'Salinity over 26 psu? Water has evaporated: fill up with fresh water, slowly, to the mark.',
    )
    expect(draft?.content.fields.map(({ name }) => name)).toEqual([
      ...['totalAmmoniaNMgPerL', 'pH', 'salinity', 'oxygenMgPerL', 'temperatureC'],
    ])
    expect(whyLines(draft)).toEqual(['tests so far none', 'and 7 days from one test to the next'])
  })

  test('is read again within the hour once it was changed, and says that it was', () => {
    const { room, culture } = rotiferRoom()
    room.fact('water_test', culture.id, '2026-03-10T07:10:00.000Z', { totalAmmoniaNMgPerL: 20, pH: 8.3 })
    room.fact('water_change', culture.id, '2026-03-10T08:00:00.000Z', { removedL: 9, addedL: 9 })
    const [draft] = tests(room)
    expect(draft).toMatchObject({ roundId: 'midday', lateAt: '2026-03-10T13:30:00.000Z' })
    expect(saidTitle(draft)).toBe('Test the water again')
    expect(whyLines(draft)).toEqual([
      ...['last tested', 'and water changed since', 'and 7 days from one test to the next'],
    ])
    // Sound water that was changed by the way is tested in its turn, and nothing is said of the change.
    const sound = rotiferRoom()
    sound.room.fact('water_test', sound.culture.id, '2026-03-03T07:10:00.000Z', { totalAmmoniaNMgPerL: 1, pH: 7.8 })
    sound.room.fact('water_change', sound.culture.id, '2026-03-04T08:00:00.000Z', { removedL: 9, addedL: 9 })
    expect(whyLines(tests(sound.room)[0])).toHaveLength(2)
  })
})

describe('brush, filter and backup', () => {
  test('walls are brushed before the first feed, by the brush that is its own, a backup’s too', () => {
    const { room, culture } = rotiferRoom()
    const draft = () => onlyDraft(room.drafts(date, [rotiferBrush]))
    expect([draft().roundId, saidTitle(draft())]).toEqual(['morning', 'Brush the walls'])
    expect(saidSteps(draft())[0]).toBe('Use the brush that belongs to R1; after the count, before the feed.')
    expect(whyLines(draft())).toEqual([
      'not brushed since its start 2026-02-17',
      'and 1 days from one brushing to the next',
    ])
    room.fact('care', culture.id, '2026-03-09T07:00:00.000Z', { act: 'brush_walls' })
    expect(whyLines(draft())[0]).toBe('last brushed')
  })

  test('a filter is rinsed after the morning’s work, where rotifers have one; by its age while it was never cleaned', () => {
    const { room } = rotiferRoom({ hasFilter: true })
    room.snapshot.cultures[1]!.hasFilter = true
    const draft = onlyDraft(room.drafts(date, [rotiferFilter]))
    expect([draft.subjectName, draft.roundId, saidTitle(draft)]).toEqual(['R1', 'midday', 'Clean the filter'])
    expect(saidSteps(draft).join(' ')).toContain('belong to R1 alone')
  })

  test('a backup is looked at after the morning; what is none is not, nor algae that stand apart', () => {
    const { room } = rotiferRoom()
    const checks = () => room.drafts(date, [rotiferBackupCheck]).drafts
    room.snapshot.cultures[1]!.isBackup = true
    expect(checks()).toEqual([])
    room.snapshot.cultures[0]!.isBackup = true
    expect(checks().map((draft) => [draft.subjectName, draft.roundId, saidTitle(draft)])).toEqual([
      ['R1', 'midday', 'Check that it stands apart'],
    ])
  })
})

describe('a backup that is wanted', () => {
  const wanted = (room: SnapshotBuilder, on = date) => room.drafts(on, [rotiferBackupWanted]).drafts
  const counted = (perMl: number, given: Partial<SnapshotCulture> = {}) => {
    const made = rotiferRoom(given)
    made.room.count(made.culture, `${date}T06:30:00.000Z`, [perMl, perMl, perMl])
    return made
  }

  test('is started from 200 a mL on, from a culture older than three days, by somebody who knows the room', () => {
    expect([wanted(counted(199).room).length, wanted(counted(200).room).length]).toEqual([0, 1])
    const aged = (startedAt: string) => wanted(counted(300, { startedAt }).room).length
    expect([aged('2026-03-07T08:00:00.000Z'), aged('2026-03-06T08:00:00.000Z')]).toEqual([0, 1])
    expect(wanted(counted(300).room)[0]).toMatchObject({ roundId: 'midday', isForStandIn: false })
  })

  test('is started from the culture that holds most, and says how and why', () => {
    const { room } = counted(300)
    const startedAt = '2026-02-17T08:00:00.000Z'
    // 40 L of 220 hold more than 18 L of 300.
    const large = room.culture({ name: 'R2', startedAt, volumeL: 40, salinity: 28 })
    room.count(large, `${date}T06:30:00.000Z`, [220, 220, 220])
    const [draft] = wanted(room)
    // 63 x 40 / (220 x 0.9) = 12.7 L.
    expect(saidTitle(draft)).toBe('Start a second rotifer culture as backup, 12.7 L of R2, sieved')
    expect(draft?.content).toMatchObject({ amount: { value: 12.7, unit: 'L' }, amountOf: 'R2, sieved' })
    expect(saidSteps(draft)[1]).toContain('with 40 L of new water at 28 psu')
    expect(saidSteps(draft)[2]).toBe('Sieve 12.7 L of R2, rinse well, and put the animals in.')
    expect(whyLines(draft)).toEqual([
      ...[
        '220 per_mL counted',
        'and 200 per_mL density to start one from',
        'and 3 days youngest age to start one from',
      ],
      ...['and 63 per_mL rotifers to start with', 'times 40 L a vessel like it', 'equals 12.7 L of R2'],
    ])
    expect(draft?.content.fields).toMatchObject([
      { name: 'answer', isRequired: true, choices: [{ value: 'started' }, { value: 'later' }] },
      { name: 'volumeL', usual: null, likelyMaximum: 120 },
      { name: 'drawnL', usual: 12.7, maximum: 40 },
    ])
  })

  test('is started from where most animals are, not from the largest vessel; of two alike from the older in the book', () => {
    const { room } = counted(500)
    const startedAt = '2026-02-17T08:00:00.000Z'
    // 18 L of 500 hold 9 million, 20 L of 300 six.
    const other = room.culture({ name: 'R2', startedAt, volumeL: 20 })
    room.count(other, `${date}T06:30:00.000Z`, [300, 300, 300])
    expect(wanted(room)[0]?.content.amountOf).toBe('R1, sieved')
    other.volumeL = 18
    room.count(other, `${date}T06:31:00.000Z`, [500, 500, 500])
    room.snapshot.cultures.reverse()
    expect(wanted(room)[0]?.content.amountOf).toBe('R1, sieved')
    // Live algae that stand apart are no backup of rotifers.
    room.snapshot.cultures.find(({ kind }) => kind === 'microalgae')!.isBackup = true
    expect(wanted(room)).toHaveLength(1)
  })

  test('that was started is as thick as what went in: 4 L of 270,000 a litre in 18 L are 60 a mL', () => {
    const { room, culture } = counted(300)
    const draft = wanted(room)[0]!
    const made = (values: Record<string, unknown>) => signOff(rotiferBackupWanted, draft, values)
    expect(made({ answer: 'started', volumeL: 18, drawnL: 4 })).toEqual({
      facts: [],
      creations: [
        {
          ...{ kind: 'culture', isBackup: true, parentCultureId: culture.id, strain: 'L', concentrateId: null },
          ...{ volumeL: 18, temperatureC: 25, salinity: 25, drawnL: 4, startDensityPerMl: 60 },
        },
      ],
    })
    // As planned, 63 x 18 / 270 = 4.2 L; to three figures.
    expect(made({ answer: 'started', volumeL: 18 }).creations).toMatchObject([{ drawnL: 4.2, startDensityPerMl: 63 }])
    expect(made({ answer: 'started', volumeL: 17 }).creations).toMatchObject([{ startDensityPerMl: 66.7 }])
    const waits = { facts: [{ kind: 'care', subjectId: draft.subjectId, data: { act: 'check_backup' } }] }
    expect([made({ answer: 'later', volumeL: 18 }), made({})]).toEqual([waits, waits])
    expect(rotiferBackupWanted.check?.({ answer: 'later' })).toEqual([])
    expect(rotiferBackupWanted.check?.({ answer: 'started', volumeL: 10 })).toEqual([])
    expect(rotiferBackupWanted.check?.({ answer: 'started' })).toEqual([
      { path: 'values.volumeL', message: 'Say how many litres the vessel holds: every amount follows from it.' },
    ])
  })

  test('that has to wait is asked for again after a week; where there is one, never', () => {
    const { room } = counted(300)
    const waits = signOff(rotiferBackupWanted, wanted(room)[0]!, { answer: 'later' }).facts[0]!
    room.append(waits, { at: '2026-03-04T12:40:00.000Z' })
    expect(wanted(room)).toEqual([])
    expect(wanted(room, '2026-03-11')).toHaveLength(1)
    room.culture({ name: 'R9', startedAt: '2026-03-09T08:00:00.000Z', isBackup: true })
    expect(wanted(room, '2026-03-11')).toEqual([])
  })

  test('gets no more than its parent may give in a day, which is half of it', () => {
    const { room } = counted(220)
    room.setting('rotifer-backup-wanted', { parameters: { startPerMl: 150 } })
    // 150 x 18 / 198 would be 13.6 L.
    expect(wanted(room)[0]?.content.amount).toEqual({ value: 9, unit: 'L' })
    const { room: drained, culture } = counted(300)
    drained.fact('harvest', culture.id, `${date}T06:50:00.000Z`, { volumeL: 9, parts: [{ to: 'drain', volumeL: 9 }] })
    expect(wanted(drained)).toEqual([])
  })
})

describe('a refill', () => {
  test('is made in the morning, and names what it makes up', () => {
    const { room, culture } = rotiferRoom()
    const refills = () => room.drafts(date, [rotiferRefill]).drafts
    const taken = (volumeL: number, at: string) =>
      room.fact('harvest', culture.id, at, { volumeL, parts: [{ to: 'drain', volumeL }] })
    taken(2, '2026-03-10T07:10:00.000Z')
    taken(1.5, '2026-03-10T07:20:00.000Z')
    const draft = onlyDraft({ drafts: refills(), gaps: [] })
    expect([draft.roundId, saidTitle(draft), draft.content.amountOf]).toEqual([
      ...['morning', '3.5 L new water in', 'new water'],
    ])
    expect(whyLines(draft).slice(0, 5)).toEqual([
      ...['2 L taken out', 'plus 1.5 L taken out', 'equals 3.5 L still missing'],
      ...['and 25 psu its salinity', 'and 25 degC its temperature'],
    ])
    expect(saidSteps(draft)[0]).toBe('Measure the new water: 25 psu, 25 degC.')
    expect(draft.content.fields.map(({ name }) => name)).toEqual(['amountL', 'salinity', 'temperatureC'])
    expect(signOff(rotiferRefill, draft, { amountL: 3, temperatureC: 24 }).facts[0]?.data).toEqual({
      ...{ removedL: 0, addedL: 3, temperatureC: 24 },
    })
  })
})

describe('a refill of what is hardly missing', () => {
  const missing = (volumes: [litres: number, at: string][], back = 0) => {
    const { room, culture } = rotiferRoom()
    for (const [volumeL, at] of volumes)
      room.fact('harvest', culture.id, `${date}T${at}:00.000Z`, { volumeL, parts: [{ to: 'drain', volumeL }] })
    if (back > 0) room.fact('water_change', culture.id, `${date}T07:30:00.000Z`, { removedL: 0, addedL: back })
    return room.drafts(date, [rotiferRefill]).drafts[0]
  }

  test('is asked for from a tenth of a litre on, as little by little as it went', () => {
    expect(missing([[0.09, '07:10']])).toBeUndefined()
    expect(missing([[0.1, '07:10']])?.content.amount).toEqual({ value: 0.1, unit: 'L' })
    const bit: [number, string][] = [
      [0.6, '07:10'],
      [0.5, '07:20'],
    ]
    expect(whyLines(missing(bit, 0.4)).slice(0, 4)).toEqual([
      ...['0.6 L taken out', 'plus 0.5 L taken out', 'minus 0.4 L put back', 'equals 0.7 L still missing'],
    ])
  })

  test('is of rotifers: algae are filled up with their split', () => {
    const { room } = rotiferRoom()
    const algae = room.snapshot.cultures[1]!
    room.fact('harvest', algae.id, `${date}T07:10:00.000Z`, { volumeL: 3, parts: [{ to: 'drain', volumeL: 3 }] })
    expect(room.drafts(date, [rotiferRefill]).drafts).toEqual([])
  })
})

describe('a restart', () => {
  test('is done at midday with half of the animals; the old vessel is kept until a count says well', () => {
    const { room, culture } = rotiferRoom({ startedAt: '2026-02-10T08:00:00.000Z' })
    room.count(culture, `${date}T06:30:00.000Z`, [200, 200, 200])
    const draft = onlyDraft(room.drafts(date, [rotiferRestart]))
    expect([draft.roundId, saidTitle(draft), draft.content.amountOf]).toEqual([
      ...['midday', '9 L, sieved, into a clean vessel', 'culture, sieved'],
    ])
    expect(saidSteps(draft)[1]).toBe('Sieve 9 L of the culture, rinse well, and put the animals into the new vessel.')
    expect(draft.content.cautions).toEqual(disinfectionCautions)
    expect(draft.content.fields).toMatchObject([
      { name: 'amountL', label: 'Culture carried over', usual: 9, maximum: 18 },
    ])
    expect(whyLines(draft)).toEqual([
      ...['started or last restarted 2026-02-10', 'and 28 days of age', expect.stringMatching(/^and 28 days /)],
      ...['and 18 L in it', expect.stringMatching(/^times 0\.5 share /)],
    ])
    // 6 L x 200,000, a tenth lost in the sieve.
    expect(signOff(rotiferRestart, draft, { amountL: 6 }).facts[1]?.data).toEqual({ animals: 1_080_000 })
  })
})

describe('enriching rotifers', () => {
  /** R1 at 300 a mL feeds larvae of four days in so many litres, three times a day. */
  function feeding(litres: number) {
    const { room, culture } = rotiferRoom()
    room.count(culture, `${date}T06:30:00.000Z`, [300, 300, 300])
    room.setting('rotifer-enrich', { isOn: true })
    const batch = room.batch({ hatchedOn: '2026-03-06', tankId: room.tank({ volumeL: litres }).id, larvae: 300 })
    room.feedLink(batch, culture)
    return { room, culture, asked: () => room.drafts(date, [rotiferEnrich]).drafts }
  }

  test('is for the feeds after the first of the day, a tenth of a gram to each million in water of 500 a mL', () => {
    const { asked } = feeding(150)
    const [draft] = asked()
    expect(draft?.roundId).toBe('morning')
    const grams = draft!.content.amount!.value
    const [first] = saidSteps(draft)
    const [, number, water] = first?.match(/about (\d+) animals, in ([\d.]+) L, strong air/) ?? []
    // 0.05 g/L at 500 a mL: FAO Fish. Tech. Pap. 361, sect. 3.5.
    expect(grams).toBeCloseTo((Number(number) / 1e6) * 0.1, 2)
    expect(Number(water)).toBeCloseTo(Number(number) / 500_000, 1)
    expect(grams).toBeGreaterThanOrEqual(0.1)
    expect(saidSteps(draft)[1]).toContain(`Blend ${grams} g of emulsion`)
    expect(saidSteps(draft)[2]).toContain('After 4 hours sieve them and rinse well')
    expect(saidTitle(draft)).toMatch(/^[\d.]+ g emulsion to the rotifers set aside$/)
    expect(whyLines(draft)).toEqual([
      `${number} animals for the later feeds of Batch 1`,
      'times 0.1 g emulsion to each million',
      'and 4 hours of enriching',
    ])
  })

  test('of what no scale shows blends a tenth of a gram into 10 mL, and pours in the part that is wanted', () => {
    const { asked } = feeding(20)
    const [draft] = asked()
    const grams = draft!.content.amount!.value
    expect(grams).toBeLessThan(0.1)
    // A hundredth of a gram is 1 mL of it.
    expect(saidSteps(draft)[1]).toBe(
      `Too little for a scale: blend 0.1 g of emulsion with 10 mL of water, and pour in ${grams * 100} mL of that. The bottle’s own dose comes first.`,
    )
  })

  test('leaves out the first feed, which is given before the emulsion has been eaten, and what nobody wants', () => {
    const { room, culture, asked } = feeding(150)
    const [batch] = room.snapshot.batches
    const day = husbandryDay({ room: room.snapshot.room, date })
    const feeds = topUpPlans(room.build(), batch!, day)!.map(({ round, animals }) => [round.id, animals] as const)
    expect(feeds.map(([id]) => id)).toEqual(['morning', 'midday', 'evening'])
    const later = feeds.slice(1).reduce((sum, [, animals]) => sum + animals, 0)
    expect(whyLines(asked()[0])[0]).toMatch(new RegExp(`^${roundAnimals(later)} animals `))
    expect(asked()[0]!.content.amount!.value).toBe(Number(((later / 1e6) * 0.1).toFixed(2)))
    // Looked at in the evening and found full: nothing more is set aside.
    const data = { of: 'prey_rotifers' as const, animals: [40_000], volumeMl: 1000 }
    room.fact('count', batch!.id, `${date}T18:35:00.000Z`, data)
    expect(room.drafts(date, [rotiferEnrich]).drafts.filter(({ subjectId }) => subjectId === culture.id)).toEqual([])
  })

  test('is for all who eat of it, and of what they eat of it alone; one of which nobody knows what it eats is no hindrance', () => {
    const { room, culture, asked } = feeding(20)
    const one = asked()[0]!.content.amount!.value
    const other = room.culture({ name: 'R2', startedAt: '2026-02-17T08:00:00.000Z' })
    room.count(other, `${date}T06:30:00.000Z`, [300, 300, 300])
    const larvae = (name: string, species?: string) =>
      room.batch({
        ...{ name, hatchedOn: '2026-03-06', tankId: room.tank({ volumeL: 20 }).id, larvae: 300 },
        ...(species ? { species } : {}),
      })
    room.feedLink(larvae('Elsewhere'), other)
    expect(asked().find(({ subjectId }) => subjectId === culture.id)?.content.amount?.value).toBe(one)
    room.feedLink(larvae('Too'), culture)
    room.feedLink(larvae('Cod', 'gadus-morhua'), culture)
    const both = asked().find(({ subjectId }) => subjectId === culture.id)
    expect(both!.content.amount!.value).toBeCloseTo(2 * one, 9)
    expect(whyLines(both)[0]).toMatch(/animals for the later feeds of Batch 1, Too$/)
  })

  test('is once a day, and not where nobody eats of the culture', () => {
    const { room, culture, asked } = feeding(20)
    room.fact('care', culture.id, `${date}T07:10:00.000Z`, { act: 'brush_walls' })
    expect(asked()).toHaveLength(1)
    room.append(signOff(rotiferEnrich, asked()[0]!).facts[0]!, { at: `${date}T07:20:00.000Z` })
    expect(asked()).toEqual([])
    expect(room.snapshot.facts.at(-1)).toMatchObject({ subjectId: culture.id, data: { act: 'enrich_rotifers' } })
    const { room: alone } = rotiferRoom()
    alone.setting('rotifer-enrich', { isOn: true })
    expect(alone.drafts(date, [rotiferEnrich])).toEqual({ drafts: [], gaps: [] })
  })
})
