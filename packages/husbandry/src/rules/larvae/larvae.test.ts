import { unionisedAmmoniaNitrogen } from '@fryward/seawater'
import { defaultRounds, type PlainDate } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import { addDays, husbandryDay } from '../../calendar/husbandry-day.ts'
import { needsAhead } from '../../food/needs.ts'
import { freeLarvalTanks } from '../../plans/hatch-tank-plan.ts'
import { waterNeeds } from '../../plans/water-needs.ts'
import { clownfishGrowth } from '../../species/clownfish-growth.ts'
import { lengthMmAt, weightGOf } from '../../species/juvenile-growth.ts'
import { batchNumbers } from '../../state/batch-state.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { steadyCulture } from '../../testing/steady-culture.ts'
import { pairFeed } from '../broodstock/pair-feed.ts'
import { rules } from '../index.ts'
import { rotiferHarvest } from '../live-food/rotifer-harvest.ts'
import { larvalArtemiaFeed } from './artemia-feed.ts'
import { larvalGreenWater } from './green-water.ts'
import { larvalAmmoniaAct } from './larval-ammonia-act.ts'
import { larvalAmmoniaTest } from './larval-ammonia-test.ts'
import { larvalHeadCount } from './larval-head-count.ts'
import { larvalLight } from './larval-light.ts'
import { larvalLook } from './larval-look.ts'
import { larvalMove } from './larval-move.ts'
import { larvalNoneLeft } from './larval-none-left.ts'
import { larvalSiphon } from './larval-siphon.ts'
import { larvalWaterChange } from './larval-water-change.ts'
import { larvalWean } from './larval-wean.ts'

const date = '2026-03-10'

const daysFrom = ({ snapshot: { room } }: SnapshotBuilder, today: PlainDate) => ({
  today: husbandryDay({ room, date: today }),
  tomorrow: husbandryDay({ room, date: addDays(today, 1) }),
})

/** 200 ocellaris in 20 L at 30 and 27 C. */
function nursery(hatchedOn: string) {
  const room = new SnapshotBuilder()
  const tank = room.tank({ name: 'Nursery 1', volumeL: 20 })
  const batch = room.batch({ hatchedOn, tankId: tank.id, larvae: 200 })
  return { room, tank, batch }
}

/** What one weighs at that age. */
const clownfishG = (ageDays: number) => weightGOf(clownfishGrowth, lengthMmAt(clownfishGrowth, ageDays))

describe('green water', () => {
  /** Millilitres of a draft by its own chain of why: cells per mL, times litres, times the share, by the bottle's. */
  const chainMl = ({ content }: ReturnType<typeof onlyDraft>) =>
    content.because.reduce((value, { joins, quantity }) => {
      const number = quantity?.value ?? 1
      return joins === 'times' ? value * number : joins === 'divided_by' ? value / number : value === 0 ? number : value
    }, 0) * 1000
  const shown = ({ content }: ReturnType<typeof onlyDraft>) =>
    content.because.find(({ label }) => label.startsWith('to what a syringe shows'))?.label

  test('fills the tank to 200,000 cells per mL at first, then replaces half a day: 20,000 mL of it', () => {
    const { room, batch } = nursery('2026-03-08')
    const bottle = room.concentrate({ name: 'the bottle', cellsPerMl: 1e9 })
    // 200,000 x 20,000 / 1e9 = 4 mL.
    const draft = onlyDraft(room.drafts(date, [larvalGreenWater]))
    expect(draft.content.amount).toEqual({ value: 4, unit: 'mL' })
    const told = (of: typeof draft) => of.content.steps.map(({ text }) => text).join(' ')
    expect(told(draft)).not.toContain('Stir 1 mL')
    expect([draft.content.amountOf, saidTitle(draft)]).toEqual([bottle.name, `4 mL ${bottle.name}, to green the water`])
    // More or less may be given: up to a syringe of 50 mL, to its tenth.
    expect(draft.content.fields).toMatchObject([
      { label: `Given, of ${bottle.name}`, maximum: 50, usual: 4, step: 0.1 },
    ])
    expect(signOff(larvalGreenWater, draft, { amountMl: 3 }).facts[0]).toMatchObject({ data: { amountMl: 3 } })
    expect(told(draft)).toContain('a little at a time')
    const [fact] = signOff(larvalGreenWater, draft).facts
    expect(fact).toEqual({
      kind: 'feeding',
      subjectId: batch.id,
      data: { food: 'concentrate', concentrateId: bottle.id, amountMl: 4 },
    })
    room.append(fact!, { at: '2026-03-10T07:20:00.000Z' })
    expect(room.drafts(date, [larvalGreenWater]).drafts).toEqual([])
    const next = onlyDraft(room.drafts('2026-03-11', [larvalGreenWater]))
    expect(next.content.amount?.value).toBe(2)
    // What is told as why multiplies out: all of it at first, half of it the day after, and when it was greened last.
    expect([chainMl(draft), chainMl(next)]).toEqual([expect.closeTo(4, 9), expect.closeTo(2, 9)])
    expect(next.content.because.at(-1)?.label).toBe('last greened')
    expect([shown(draft), shown(next)]).toEqual(Array(2).fill('to what a syringe shows'))
  })

  test('of a strong bottle is given diluted, and ends with the rotifers', () => {
    const { room } = nursery('2026-03-08')
    room.concentrate({ cellsPerMl: 65e9 })
    const draft = onlyDraft(room.drafts(date, [larvalGreenWater]))
    // 0.0615 mL, so 0.6 mL of one in ten.
    expect(draft.content.amount?.value).toBe(0.6)
    expect(draft.content.steps.map(({ text }) => text).join(' ')).toContain('Stir 1 mL of it into 9 mL of tank water')
    expect(draft.content.amountOf).toBe('the bottle diluted 1 in 10')
    expect(chainMl(draft)).toBeCloseTo(0.0615, 4)
    expect(shown(draft)).toBe('to what a syringe shows, diluted 1 in 10')
    expect(signOff(larvalGreenWater, draft).facts[0]).toMatchObject({ data: { amountMl: 0.06 } })
    expect(room.drafts('2026-03-22', [larvalGreenWater])).toEqual({ drafts: [], gaps: [] })
  })

  test('without a bottle asks for one', () => {
    expect(nursery('2026-03-08').room.drafts(date, [larvalGreenWater]).gaps[0]?.message).toContain(
      'strength from the label',
    )
  })
})

describe('siphoning', () => {
  test('is daily from day 2, and its dead are losses', () => {
    const { room, batch } = nursery('2026-03-07')
    expect(room.drafts('2026-03-09', [larvalSiphon]).drafts).toEqual([])
    room.fact('observation', batch.id, '2026-03-09T12:30:00.000Z', { signs: ['all_well'] })
    const draft = onlyDraft(room.drafts(date, [larvalSiphon]))
    const facts = signOff(larvalSiphon, draft, { dead: 7, deformed: 2 }).facts
    expect(facts).toEqual([
      { kind: 'care', subjectId: batch.id, data: { act: 'siphon_bottom' } },
      { kind: 'loss', subjectId: batch.id, data: { number: 7, of: 'larvae', deformed: 2 } },
    ])
    expect(signOff(larvalSiphon, draft, { dead: 0 }).facts).toHaveLength(1)
    expect(larvalSiphon.check?.({ dead: 7, deformed: 7 })).toEqual([])
    expect(larvalSiphon.check?.({ dead: 1, deformed: 2 })?.[0]?.path).toBe('values.deformed')
    room.append(facts[0]!, { at: '2026-03-10T07:30:00.000Z' })
    expect(room.drafts(date, [larvalSiphon]).drafts).toEqual([])
  })

  test('is part of the water change on days that have one, which asks for the dead itself', () => {
    const { room, batch } = nursery('2026-03-06')
    room.fact('observation', batch.id, '2026-03-09T12:30:00.000Z', { signs: ['all_well'] })
    const draft = onlyDraft(room.drafts(date, [larvalSiphon, larvalWaterChange]))
    expect(draft.ruleId).toBe('larval-water-change')
    expect(signOff(larvalWaterChange, draft, { dead: 3 }).facts.slice(1)).toEqual([
      { kind: 'care', subjectId: batch.id, data: { act: 'siphon_bottom' } },
      { kind: 'loss', subjectId: batch.id, data: { number: 3, of: 'larvae' } },
    ])
    room.setting('larval-water-change', { isOn: false })
    expect(onlyDraft(room.drafts(date, [larvalSiphon, larvalWaterChange])).ruleId).toBe('larval-siphon')
  })
})

describe('changing the larvae’s water', () => {
  test('begins on day 3 with a fifth, grows by two hundredths a day, and ends at half', () => {
    const litres = (hatchedOn: string) =>
      nursery(hatchedOn)
        .room.drafts(date, [larvalWaterChange])
        .drafts.map(({ content }) => content.amount?.value)
    expect(litres('2026-03-07')).toEqual([])
    expect(litres('2026-03-06')).toEqual([4])
    expect(litres('2026-03-01')).toEqual([6])
    expect(litres('2026-02-10')).toEqual([10])
  })

  test('takes as much as brings down what the last test read, while it read more than is left of ammonia', () => {
    const { room, tank } = nursery('2026-03-06')
    const read = (at: string, nh3: number) => {
      const water = { pH: 8.1, temperatureC: 27, salinity: 30 }
      const each = unionisedAmmoniaNitrogen({ ...water, totalAmmoniaNitrogenMgPerL: 1 })
      room.fact('water_test', tank.id, at, { pH: 8.1, temperatureC: 27, totalAmmoniaNMgPerL: nh3 / each })
    }
    const asked = () => onlyDraft(room.drafts(date, [larvalWaterChange])).content
    read('2026-03-09T07:00:00.000Z', 0.009)
    expect(asked().amount?.value).toBe(4)
    // 1 - 0.01 / 0.016 of 20 L, told the day before.
    read('2026-03-09T07:05:00.000Z', 0.016)
    expect(asked().amount?.value).toBe(7.5)
    expect(asked().because.map(({ label }) => label)).toContain('un-ionised, NH3-N')
    expect(waterNeeds(room.snapshot, daysFrom(room, '2026-03-09')).map(({ litres }) => litres)).toEqual([7.5])
    read('2026-03-09T07:10:00.000Z', 0.1)
    expect(asked().amount?.value).toBe(10)
    room.setting('larval-ammonia-act', { isOn: false })
    expect(asked().amount?.value).toBe(4)
  })

  test('is recorded on the tank with what was measured, and not asked twice', () => {
    const { room, tank } = nursery('2026-03-06')
    const draft = onlyDraft(room.drafts(date, [larvalWaterChange]))
    expect(draft.content.steps[0]?.quantities).toMatchObject({ salinity: { value: 30 }, temperature: { value: 27 } })
    const [fact] = signOff(larvalWaterChange, draft, { amountL: 3, temperatureC: 26.5 }).facts
    expect(fact).toEqual({
      kind: 'water_change',
      subjectId: tank.id,
      data: { removedL: 3, addedL: 3, temperatureC: 26.5 },
    })
    room.append(fact!, { at: '2026-03-10T12:50:00.000Z' })
    expect(room.drafts(date, [larvalWaterChange]).drafts).toEqual([])
  })
})

describe('ammonia', () => {
  test('is tested every other day from day 1 and recorded on the tank', () => {
    const { room, tank } = nursery('2026-03-08')
    const draft = onlyDraft(room.drafts(date, [larvalAmmoniaTest]))
    const [fact] = signOff(larvalAmmoniaTest, draft, { totalAmmoniaNMgPerL: 0.5, pH: 8.1 }).facts
    expect(fact).toEqual({ kind: 'water_test', subjectId: tank.id, data: { totalAmmoniaNMgPerL: 0.5, pH: 8.1 } })
    room.append(fact!, { at: '2026-03-10T07:10:00.000Z' })
    expect(room.drafts(date, [larvalAmmoniaTest]).drafts).toEqual([])
    expect(room.drafts('2026-03-11', [larvalAmmoniaTest]).drafts).toEqual([])
    expect(room.drafts('2026-03-12', [larvalAmmoniaTest]).drafts).toHaveLength(1)
  })

  const tested = (totalAmmoniaNMgPerL: number) => {
    const made = nursery('2026-03-06')
    made.room.fact('water_test', made.tank.id, '2026-03-10T06:40:00.000Z', {
      totalAmmoniaNMgPerL,
      pH: 8.1,
      temperatureC: 27,
    })
    return made
  }

  test('at 0.5 mg/L and pH 8.1 is brought down by half the water, the most at once', () => {
    const water = { pH: 8.1, temperatureC: 27, salinity: 30 }
    const nh3 = unionisedAmmoniaNitrogen({ ...water, totalAmmoniaNitrogenMgPerL: 0.5 })
    expect(nh3).toBeGreaterThan(0.02)
    const { room, tank } = tested(0.5)
    const draft = onlyDraft(room.drafts(date, [larvalAmmoniaAct]))
    expect(draft.content.amount).toEqual({ value: 10, unit: 'L' })
    room.append(signOff(larvalAmmoniaAct, draft).facts[0]!, { at: '2026-03-10T07:30:00.000Z' })
    expect(room.snapshot.facts.at(-1)).toMatchObject({ subjectId: tank.id, data: { removedL: 10 } })
    expect(room.drafts(date, [larvalAmmoniaAct]).drafts).toEqual([])
  })

  test('is tested again in the next round after a change, and changed again where that is not enough', () => {
    const { room, tank } = tested(0.5)
    expect(room.drafts(date, [larvalAmmoniaTest]).drafts).toEqual([])
    const change = onlyDraft(room.drafts(date, [larvalAmmoniaAct]))
    expect(change.roundId).toBe('morning')
    room.append(signOff(larvalAmmoniaAct, change).facts[0]!, { at: '2026-03-10T07:30:00.000Z' })
    const again = onlyDraft(room.drafts(date, [larvalAmmoniaTest]))
    expect(again).toMatchObject({
      roundId: 'midday',
      content: { title: { thing: 'the ammonia again, after the change' } },
    })
    const values = { totalAmmoniaNMgPerL: 0.4, pH: 8.1 }
    room.append(signOff(larvalAmmoniaTest, again, values).facts[0]!, { at: '2026-03-10T12:35:00.000Z' })
    expect(onlyDraft(room.drafts(date, [larvalAmmoniaAct])).roundId).toBe('midday')
    room.fact('water_change', tank.id, '2026-03-10T18:50:00.000Z', { removedL: 10, addedL: 10 })
    // After the day's last round it is tomorrow's first.
    expect(room.drafts(date, [larvalAmmoniaTest]).drafts).toEqual([])
    expect(onlyDraft(room.drafts('2026-03-11', [larvalAmmoniaTest])).roundId).toBe('morning')
  })

  test('the test says from how much on the rule acts, and the rule acts from just that on', () => {
    const { room } = nursery('2026-03-08')
    const { steps, fields } = onlyDraft(room.drafts(date, [larvalAmmoniaTest])).content
    const total = steps.at(-1)?.quantities.total?.value ?? 0
    // At pH 8.2, 27 C and 30: about 8 % of it is NH3.
    const water = { pH: 8.2, temperatureC: 27, salinity: 30 }
    expect(unionisedAmmoniaNitrogen({ ...water, totalAmmoniaNitrogenMgPerL: total })).toBeCloseTo(0.02, 3)
    const acts = (read: number) => {
      const made = nursery('2026-03-06')
      made.room.fact('water_test', made.tank.id, '2026-03-10T06:40:00.000Z', { totalAmmoniaNMgPerL: read })
      return made.room.drafts(date, [larvalAmmoniaAct]).drafts.length
    }
    expect([acts(total * 0.95), acts(total * 1.05)]).toEqual([0, 1])
    // What is measured is typed: there is nothing to accept in one tap.
    expect(fields.map((field) => (field.type === 'number' ? field.usual : null))).toEqual([null, null, null])
  })

  test('takes just the share that brings it to 0.01, where that is less than half', () => {
    const water = { pH: 8.1, temperatureC: 27, salinity: 30 }
    // The total at which NH3-N is 0.0201: a change of 1 - 0.01 / 0.0201 is a hair over half; so allow more.
    const total = 0.0201 / unionisedAmmoniaNitrogen({ ...water, totalAmmoniaNitrogenMgPerL: 1 })
    const { room } = tested(Number(total.toFixed(4)))
    room.setting('larval-ammonia-act', { parameters: { mostShare: 0.9, watchMgPerL: 0.015 } })
    const amount = onlyDraft(room.drafts(date, [larvalAmmoniaAct])).content.amount?.value ?? 0
    expect(amount).toBeCloseTo(20 * (1 - 0.015 / 0.0201), 1)
  })

  test('read where no filter runs asks for a ripe sponge, once larvae are old enough for Artemia', () => {
    const says = ({ hatchedOn = '2026-03-02', total = 0.5, hasFilter = false }, rule = larvalWaterChange) => {
      const { room, tank } = nursery(hatchedOn)
      tank.hasFilter = hasFilter
      room.fact('water_test', tank.id, '2026-03-10T06:40:00.000Z', {
        totalAmmoniaNMgPerL: total,
        pH: 8.1,
        temperatureC: 27,
      })
      return onlyDraft(room.drafts(date, [rule])).content.steps.some(({ text }) => text.includes('hang in a sponge'))
    }
    expect([says({}), says({}, larvalAmmoniaAct)]).toEqual([true, true])
    expect(says({ hatchedOn: '2026-03-06' })).toBe(false)
    expect(says({ total: 0.1 })).toBe(false)
    expect(says({ hasFilter: true })).toBe(false)
  })

  test('under the limit asks nothing; a test without pH is taken at 8.2 and says so', () => {
    expect(tested(0.1).room.drafts(date, [larvalAmmoniaAct]).drafts).toEqual([])
    const { room, tank } = nursery('2026-03-06')
    room.fact('water_test', tank.id, '2026-03-10T06:40:00.000Z', { totalAmmoniaNMgPerL: 1 })
    const { because } = onlyDraft(room.drafts(date, [larvalAmmoniaAct])).content
    expect(because.find(({ label }) => label === 'taken for the water')?.quantity?.value).toBe(8.2)
  })

  test('a test without pH goes by what a gauge read within half a day of it, and says which gauge', () => {
    const asked = (readAt: string) => {
      const { room, tank } = nursery('2026-03-06')
      room.fact('water_test', tank.id, '2026-03-10T06:40:00.000Z', { totalAmmoniaNMgPerL: 1, temperatureC: 27 })
      const gauge = { gaugeId: '019abc00-0000-7000-8000-000000000001', gaugeKey: 'probe-3', readings: 3600 }
      room.fact('water_reading', tank.id, readAt, { ...gauge, from: readAt, pH: 8 })
      const { because } = onlyDraft(room.drafts(date, [larvalAmmoniaAct])).content
      return because.find(({ quantity }) => quantity?.unit === 'pH')
    }
    expect(asked('2026-03-09T18:45:00.000Z')).toMatchObject({ label: 'read by gauge probe-3', quantity: { value: 8 } })
    expect(asked('2026-03-09T18:35:00.000Z')).toMatchObject({ quantity: { value: 8.2 } })
  })
})

describe('the head count', () => {
  test('is asked once between day 5 and day 7, says what a tank may hold, and begins the book anew', () => {
    const asked = (hatchedOn: string) => nursery(hatchedOn).room.drafts(date, [larvalHeadCount]).drafts.length
    // Day 4, 5, 7 and 8.
    expect(['2026-03-05', '2026-03-04', '2026-03-02', '2026-03-01'].map(asked)).toEqual([0, 1, 1, 0])
    const { room, batch } = nursery('2026-03-04')
    const draft = onlyDraft(room.drafts(date, [larvalHeadCount]))
    // 20 a litre in 20 L.
    expect(draft.content.steps[1]?.quantities.most?.value).toBe(400)
    const [count] = signOff(larvalHeadCount, draft, { number: 160 }).facts
    room.append(count!, { at: '2026-03-10T12:40:00.000Z' })
    expect(batchNumbers(room.build(), batch).now).toBe(160)
    expect(room.drafts('2026-03-11', [larvalHeadCount]).drafts).toEqual([])
  })

  test('young that find no place in grow-out are counted again every fortnight', () => {
    const { room, batch } = nursery('2026-01-31')
    const asked = (on: string) => room.drafts(on, [larvalHeadCount]).drafts
    // Ocellaris eat dry food alone by day 26; a fortnight later nearly all have moved.
    const first = [...Array(60).keys()].map((days) => addDays('2026-02-09', days)).find((on) => asked(on).length > 0)
    expect(first).toBe('2026-03-12')
    const [draft] = asked('2026-03-12')
    expect(saidTitle(draft)).toBe('Count the young')
    room.append(signOff(larvalHeadCount, draft!, { number: 140 }).facts[0]!, { at: '2026-03-12T12:40:00.000Z' })
    expect(asked('2026-03-25')).toEqual([])
    expect(asked('2026-03-26')).toHaveLength(1)
    expect(batchNumbers(room.build(), batch).now).toBe(140)
  })
})

describe('growing up', () => {
  test('dry food is offered from the species’ weaning day, twice a day', () => {
    // Ocellaris: day 5, which is 10 March for a hatch night of the 4th.
    expect(nursery('2026-03-05').room.drafts(date, [larvalWean]).drafts).toEqual([])
    const { room, batch } = nursery('2026-03-04')
    room.setting('larval-artemia-feed', { isOn: false })
    const { drafts } = room.drafts(date, [larvalWean])
    expect(drafts.map(({ roundId }) => roundId)).toEqual(['morning', 'evening'])
    expect(signOff(larvalWean, drafts[0]!, { taken: 'some' }).facts).toEqual([
      { kind: 'feeding', subjectId: batch.id, data: { food: 'dry', note: 'Some take it.' } },
    ])
  })

  test('once it is all they eat they are fed as juveniles are, weighed, for as long as they wait for grow-out', () => {
    const { room, batch } = nursery('2026-02-07')
    const taken = (on: string) =>
      room.fact('feeding', batch.id, `${on}T07:10:00.000Z`, { food: 'dry', note: 'Nearly all take it.' })
    taken('2026-03-09')
    expect(room.drafts(date, [larvalWean]).drafts.map(({ content }) => content.amount)).toEqual([null])
    taken('2026-03-03')
    const { drafts } = room.drafts(date, [larvalWean])
    expect(drafts.map(({ roundId }) => roundId)).toEqual(['morning', 'midday', 'evening'])
    const number = batchNumbers(room.build(), batch).now ?? 0
    // Thirty days old; a tenth of their weight a day in three feeds.
    const feedG = (number * clownfishG(30) * 0.1) / 3
    expect(drafts[0]?.content.amount?.value).toBeCloseTo(feedG, 1)
    expect(signOff(larvalWean, drafts[0]!).facts).toEqual([
      { kind: 'feeding', subjectId: batch.id, data: { food: 'dry', amountG: drafts[0]?.content.amount?.value } },
    ])
    // Half a year on they are as long as a pair: a twentieth, in two feeds.
    const grown = room.drafts('2026-08-07', [larvalWean]).drafts
    expect(grown.map(({ roundId }) => roundId)).toEqual(['morning', 'evening'])
    const pairsG = number * clownfishG(180) * 0.05
    expect(grown[0]?.content.amount?.value).toBeCloseTo(pairsG / 2, 0)
  })

  test('dry food goes with the Artemia feed of its round, before the live food', () => {
    const { room, batch } = nursery('2026-03-01')
    expect(onlyDraft(room.drafts(date, [larvalWean])).roundId).toBe('evening')
    const [feed] = room.drafts(date, [larvalArtemiaFeed]).drafts
    expect(saidTitle(feed)).toMatch(/^[\d.,]+ Artemia nauplii, first feed, dry food first$/)
    expect(signOff(larvalArtemiaFeed, feed!, { taken: 'all' }).facts.at(-1)).toEqual({
      kind: 'feeding',
      subjectId: batch.id,
      data: { food: 'dry', note: 'Nearly all take it.' },
    })
    // What went with the morning's Artemia is not asked for again once the midday's are in.
    const [morning, midday] = room.drafts(date, [larvalArtemiaFeed]).drafts
    const done = (draft: typeof morning, at: string) => {
      for (const fact of signOff(larvalArtemiaFeed, draft!, { taken: 'none' }).facts)
        room.append(fact, { at, taskId: room.nextId() })
    }
    done(morning, '2026-03-10T07:10:00.000Z')
    done(midday, '2026-03-10T12:40:00.000Z')
    expect(onlyDraft(room.drafts(date, [larvalWean])).roundId).toBe('evening')
    room.snapshot.facts = room.snapshot.facts.filter(({ kind }) => kind !== 'feeding')
    // The evening is too near the dark for Artemia: its dry food stands alone.
    room.setting('larval-wean', { parameters: { feedsPerDay: 3 } })
    expect(onlyDraft(room.drafts(date, [larvalWean])).roundId).toBe('evening')
    room.setting('larval-artemia-feed', { isOn: false })
    expect(room.drafts(date, [larvalWean]).drafts).toHaveLength(3)
  })

  test('a look every other day says how they are, and sees to the light weekly', () => {
    const { room, batch } = nursery('2026-03-08')
    const draft = onlyDraft(room.drafts(date, [larvalLook]))
    expect(saidTitle(draft)).toBe('Look at the larvae, day 1, and the light')
    expect(draft.content.fields.map(({ name }) => name)).toEqual(['seen', 'settled', 'deformed', 'note'])
    const { facts } = signOff(larvalLook, draft, { seen: 'well', settled: 'most', deformed: 3 })
    expect(facts).toEqual([
      {
        kind: 'observation',
        subjectId: batch.id,
        data: { signs: ['all_well', 'settled'], note: '', deformed: 3 },
      },
      { kind: 'care', subjectId: batch.id, data: { act: 'check_light' } },
    ])
    for (const fact of facts) room.append(fact, { at: '2026-03-10T12:40:00.000Z' })
    for (const rule of ['larval-siphon', 'larval-water-change']) room.setting(rule, { isOn: false })
    expect(room.drafts('2026-03-11', [larvalLook]).drafts).toEqual([])
    expect(saidTitle(onlyDraft(room.drafts('2026-03-12', [larvalLook])))).toBe('Look at the larvae, day 3')
    expect(saidTitle(onlyDraft(room.drafts('2026-03-17', [larvalLook])))).toContain(', and the light')
  })

  test('the look goes with a siphoning or a water change, and the light is checked alone where nobody looks', () => {
    const siphoned = nursery('2026-03-07')
    expect(siphoned.room.drafts(date, [larvalLook]).drafts).toEqual([])
    const siphon = onlyDraft(siphoned.room.drafts(date, [larvalSiphon]))
    expect(saidTitle(siphon)).toBe('Siphon the bottom, count the dead, look at the larvae')
    const seen = { kind: 'observation', subjectId: siphoned.batch.id, data: { signs: ['all_well'], note: '' } }
    const light = { kind: 'care', subjectId: siphoned.batch.id, data: { act: 'check_light' } }
    expect(signOff(larvalSiphon, siphon, { dead: 0, seen: 'well' }).facts.slice(1)).toEqual([seen, light])
    const changed = nursery('2026-03-05')
    expect(changed.room.drafts(date, [larvalLook]).drafts).toEqual([])
    const change = onlyDraft(changed.room.drafts(date, [larvalWaterChange]))
    expect(saidTitle(change)).toMatch(/^[\d.,]+ \S+ new water, bottom siphoned, larvae looked at$/)
    expect(signOff(larvalWaterChange, change, { dead: 0, seen: 'poorly' }).facts).toContainEqual({
      kind: 'observation',
      subjectId: changed.batch.id,
      data: { signs: [], note: 'Poorly.' },
    })
    changed.room.setting('larval-look', { isOn: false })
    expect(saidTitle(onlyDraft(changed.room.drafts(date, [larvalWaterChange])))).not.toContain('looked')
    const alone = onlyDraft(changed.room.drafts(date, [larvalLight]))
    changed.room.append(signOff(larvalLight, alone).facts[0]!, { at: '2026-03-10T12:45:00.000Z' })
    expect(changed.room.drafts('2026-03-16', [larvalLight]).drafts).toEqual([])
    expect(changed.room.drafts('2026-03-17', [larvalLight]).drafts).toHaveLength(1)
  })

  test('settled young are moved with a head count into a group of their own', () => {
    const { room, batch } = nursery('2026-02-20')
    expect(room.drafts(date, [larvalMove])).toEqual({ drafts: [], gaps: [] })
    room.fact('observation', batch.id, '2026-03-09T12:00:00.000Z', { signs: ['settled'] })
    // Settled, and not known to eat dry food yet: they stay with their live food.
    expect(room.drafts(date, [larvalMove])).toEqual({ drafts: [], gaps: [] })
    room.fact('feeding', batch.id, '2026-03-09T18:30:00.000Z', { food: 'dry', note: 'Nearly all take it.' })
    expect(room.drafts(date, [larvalMove]).gaps[0]?.message).toContain('add a grow-out tank')
    const growOut = room.tank({ name: 'Grow-out', kind: 'grow_out', volumeL: 420 })
    const draft = onlyDraft(room.drafts(date, [larvalMove]))
    const group = { kind: 'juvenile_group', tankId: growOut.id, fromBatchId: batch.id, settledOn: date, number: 140 }
    const measured = { lengthMm: 11, deformed: 2 }
    expect(signOff(larvalMove, draft, { number: 140 })).toEqual({ facts: [], creations: [group] })
    expect(signOff(larvalMove, draft, { number: 140, ...measured }).creations).toEqual([{ ...group, ...measured }])
  })

  test('they get used to the water of the other tank on a drip line, and wait for it where it is far from theirs', () => {
    const steps = (salinity: number) => {
      const { room, batch, tank } = nursery('2026-02-20')
      room.fact('observation', batch.id, '2026-03-09T12:00:00.000Z', { signs: ['settled'] })
      room.fact('feeding', batch.id, '2026-03-09T18:30:00.000Z', { food: 'dry', note: 'Nearly all take it.' })
      room.tank({ name: 'Grow-out', kind: 'grow_out', volumeL: 420, salinity: tank.salinity + salinity })
      return onlyDraft(room.drafts(date, [larvalMove])).content.steps.filter(({ text }) => /drip line|days/.test(text))
    }
    expect(steps(0).map(({ quantities }) => quantities)).toEqual([{}])
    const [near, ...none] = steps(4)
    expect(none).toEqual([])
    expect(near!.quantities.ours!.value - near!.quantities.theirs!.value).toBe(4)
    const [wait, drip] = steps(-4.5)
    expect(wait?.text).toContain('too far to move them today')
    expect(drip!.quantities.ours!.value - drip!.quantities.theirs!.value).toBe(-4.5)
  })

  test('they move to the tank with just room enough, and are split where none takes all: half a fish a litre', () => {
    const { room, batch } = nursery('2026-02-20')
    room.fact('observation', batch.id, '2026-03-09T12:00:00.000Z', { signs: ['settled'] })
    room.fact('feeding', batch.id, '2026-03-09T18:30:00.000Z', { food: 'dry', note: 'Nearly all take it.' })
    room.fact('count', batch.id, '2026-03-09T18:40:00.000Z', { of: 'larvae', animals: [100] })
    const taken = room.tank({ name: 'A', kind: 'grow_out', volumeL: 400 })
    room.group({ settledOn: '2026-02-01', tankId: taken.id, number: 180 })
    room.tank({ name: 'B', kind: 'grow_out', volumeL: 120 })
    const split = onlyDraft(room.drafts(date, [larvalMove])).content
    // B has room for 60, A for 200 less the 180 that are in it.
    expect(saidTitle({ content: split })).toBe('Move to B, 60 at most, counted')
    expect(split.steps.map(({ text }) => text).join(' ')).toContain('A (20)')
    room.tank({ name: 'C', kind: 'grow_out', volumeL: 1000 })
    room.tank({ name: 'D', kind: 'grow_out', volumeL: 220 })
    expect(saidTitle(onlyDraft(room.drafts(date, [larvalMove])))).toBe('Move to D, counted')
    // They will be fed: a filter goes before a tight fit.
    room.tank({ name: 'E', kind: 'grow_out', volumeL: 900, hasFilter: true })
    expect(onlyDraft(room.drafts(date, [larvalMove])).content.title).toMatchObject({ to: [{ name: 'E' }] })
  })

  test('a batch that nobody has called settled is asked about a week after it should have been', () => {
    const { room } = nursery('2026-02-01')
    room.tank({ name: 'Grow-out', kind: 'grow_out' })
    // Only dry food from day 25, and a week: day 32 is 6 March.
    expect(room.drafts('2026-03-05', [larvalMove]).drafts).toEqual([])
    expect(room.drafts('2026-03-06', [larvalMove]).drafts).toHaveLength(1)
  })
})

describe('a batch that is empty by its book', () => {
  const empty = () => {
    const { room, batch, tank } = nursery('2026-03-04')
    room.concentrate()
    room.feedLink(batch, steadyCulture(room, { date }))
    room.fact('loss', batch.id, '2026-03-09T12:00:00.000Z', { of: 'larvae', number: 200, cause: 'other' })
    return { room, batch, tank }
  }
  const larval = rules.filter(({ station }) => station === 'larvae')

  test('asks for nothing but a look whether any are left, of its tank and of its culture', () => {
    const { room, batch } = empty()
    const draft = onlyDraft(room.drafts(date, larval))
    expect(saidTitle(draft)).toBe('Look for larvae of Batch 1: by the book none are left')
    const harvest = onlyDraft(room.drafts(date, [rotiferHarvest]))
    expect(saidTitle(harvest)).not.toContain(batch.name)
    expect(waterNeeds(room.build(), daysFrom(room, date)).map(({ name }) => name)).not.toContain(batch.name)
    const horizon = { today: date, days: 14, futures: 3 }
    expect(needsAhead(room.build(), { horizon, changes: [], lived: [] }).eaters).toEqual([])
  })

  test('is looked at once: none are left, or so many, and they are fed again', () => {
    const none = empty()
    const facts = (room: SnapshotBuilder, number: number) =>
      signOff(larvalNoneLeft, onlyDraft(room.drafts(date, [larvalNoneLeft])), { number }).facts
    for (const fact of facts(none.room, 0)) none.room.append(fact, { at: '2026-03-10T07:10:00.000Z' })
    expect(none.room.drafts('2026-03-11', larval).drafts).toEqual([])
    expect(freeLarvalTanks(none.room.build()).map(({ id }) => id)).toContain(none.tank.id)
    const some = empty()
    for (const fact of facts(some.room, 40)) some.room.append(fact, { at: '2026-03-10T07:10:00.000Z' })
    expect(batchNumbers(some.room.build(), some.batch).now).toBe(40)
    expect(some.room.drafts('2026-03-11', larval).drafts.map(({ ruleId }) => ruleId)).toContain('larval-prey-top-up')
  })

  test('is looked at in the round in which the last was lost, or in the first of the days after', () => {
    const asked = (on: string) => {
      const { room, batch } = nursery('2026-03-01')
      room.fact('loss', batch.id, '2026-03-09T13:00:00.000Z', { of: 'larvae', number: 150, cause: 'other' })
      room.fact('loss', batch.id, '2026-03-10T13:00:00.000Z', { of: 'larvae', number: 50, cause: 'other' })
      return room.drafts(on, [larvalNoneLeft]).drafts.map(({ roundId }) => roundId)
    }
    expect([asked(date), asked('2026-03-11')]).toEqual([['midday'], ['morning']])
  })

  test('is asked of each tank for itself, and no count of prey answers it', () => {
    const { room, batch, tank } = nursery('2026-03-01')
    const other = room.batch({ hatchedOn: '2026-03-01', larvae: 30 })
    const lose = (subjectId: string, number: number) =>
      room.fact('loss', subjectId, '2026-03-09T13:00:00.000Z', { of: 'larvae', number, cause: 'other' })
    const asked = () => room.drafts(date, [larvalNoneLeft]).drafts.map(({ subjectId }) => subjectId)
    lose(batch.id, 200)
    expect(asked()).toEqual([tank.id])
    lose(other.id, 30)
    expect(asked().sort()).toEqual([tank.id, other.tankId].sort())
    room.fact('count', batch.id, '2026-03-09T14:00:00.000Z', { of: 'prey_rotifers', animals: [30], volumeMl: 10 })
    expect(asked()).toHaveLength(2)
    room.fact('count', batch.id, '2026-03-09T15:00:00.000Z', { of: 'larvae', animals: [0] })
    expect(asked()).toEqual([other.tankId])
  })

  test('is told from one that nobody has numbered', () => {
    const room = new SnapshotBuilder()
    room.batch({ hatchedOn: '2026-03-04' })
    expect(room.drafts(date, [larvalNoneLeft, larvalAmmoniaTest]).drafts.map(({ ruleId }) => ruleId)).toEqual([
      'larval-ammonia-test',
    ])
  })
})

describe('by the light over their tank', () => {
  // Rounds at 07:00, 12:30, 18:30 and 22:00; the room is lit until 20:00.
  const late = [...defaultRounds, { id: 'night', name: 'Night', at: '22:00' }]

  test('dry food is offered while they see it', () => {
    const dryRounds = (lightHours: number) => {
      const room = new SnapshotBuilder({ rounds: late, lightsOffAt: '20:00' })
      room.batch({ hatchedOn: '2026-02-24', larvae: 200, tankId: room.tank({ lightHours }).id })
      room.setting('larval-artemia-feed', { isOn: false })
      return room.drafts(date, [larvalWean]).drafts.map(({ roundId }) => roundId)
    }
    // Lit until 23:00, and until 19:00.
    expect(dryRounds(16)).toEqual(['morning', 'night'])
    expect(dryRounds(12)).toEqual(['morning', 'evening'])
  })

  test('pairs are fed while they see it', () => {
    const room = new SnapshotBuilder({ rounds: late, lightsOffAt: '20:00' })
    room.pair()
    expect(room.drafts(date, [pairFeed]).drafts.map(({ roundId }) => roundId)).toEqual(['morning', 'evening'])
  })
})
