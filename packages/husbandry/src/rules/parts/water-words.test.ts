import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../../calendar/husbandry-day.ts'
import { lastAmmoniaTest } from '../../plans/ammonia-plan.ts'
import { saidSteps } from '../../testing/said-steps.ts'
import { SnapshotBuilder } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { ammoniaLinks } from './ammonia-links.ts'
import { bringOverSteps, mostForFish } from './bring-over.ts'
import { mealSteps } from './meal-steps.ts'
import { noFoodSteps } from './no-food-steps.ts'
import { eggSteps, sampleFacts } from './rotifer-sample.ts'
import { waterChangeFact, waterChangeFields } from './water-change.ts'
import { waterTestFacts } from './water-test.ts'

const date = '2026-03-10'

function pairRoom() {
  const room = new SnapshotBuilder()
  const tank = room.tank({ name: 'T', kind: 'broodstock', volumeL: 100, salinity: 35, temperatureC: 26 })
  room.pair({ tankId: tank.id })
  const day = (on = date) => husbandryDay({ room: room.snapshot.room, date: on })
  return { room, tank, day }
}

describe('how much ammonia is poisonous', () => {
  const gauge = { gaugeId: '019abc00-0000-7000-8000-000000000001', readings: 60, from: `${date}T06:00:00.000Z` }
  const why = (values: object, gauges: object[] = []) => {
    const { room, tank, day } = pairRoom()
    for (const read of gauges)
      room.fact('water_reading', tank.id, `${date}T06:30:00.000Z`, { ...gauge, ...read } as never)
    room.fact('water_test', tank.id, `${date}T07:00:00.000Z`, { totalAmmoniaNMgPerL: 1, ...values })
    return whyLines({ content: { because: ammoniaLinks(lastAmmoniaTest(room.build(), tank, day())!) } })
  }

  test('is by the pH that was read with it, by a gauge beside it, or by one on the safe side where none was', () => {
    expect(why({ pH: 8, temperatureC: 26 })[1]).toBe('and 8 pH read in the water')
    expect(why({ temperatureC: 26 }, [{ gaugeKey: 'ph1', pH: 8.1 }])[1]).toBe('and 8.1 pH read by gauge ph1')
    expect(why({ temperatureC: 26 })[1]).toBe('and 8.2 pH taken for the water')
  })

  test('is by a gauge’s warmth where the test left that out, and says so', () => {
    const read = why({ pH: 8.2 }, [{ gaugeKey: 't1', temperatureC: 26 }])
    expect(read[2]).toBe('and 26 degC read by gauge t1')
    expect(why({ pH: 8.2, temperatureC: 26 })).toHaveLength(3)
    // 26 C, pH 8.2 and salinity 35: some 7 % (Bower & Bidwell 1978, table at 26 C and 34).
    expect(read[3]).toBe(why({ pH: 8.2, temperatureC: 26 })[2])
    expect(read[3]).toMatch(/^equals 0\.0[67]\d? mg_per_L un-ionised, NH3-N$/)
  })
})

describe('food for fish whose water is harmful', () => {
  test('is held back on the day of the test and the day after, and what was read is said to two figures', () => {
    const { room, tank, day } = pairRoom()
    room.fact('water_test', tank.id, `${date}T07:00:00.000Z`, { nitriteNMgPerL: 12.34, temperatureC: 26 })
    const said = (on: string) => saidSteps({ content: { steps: noFoodSteps(room.build(), tank, day(on)) } })
    const words = ['The last test of T read 12 mg_per_L of nitrite, as N: no food before a new one reads less.']
    expect([said(date), said('2026-03-11'), said('2026-03-12')]).toEqual([words, words, []])
    expect(noFoodSteps(room.build(), undefined, day())).toEqual([])
    room.fact('water_test', tank.id, `${date}T12:00:00.000Z`, { nitriteNMgPerL: 3, temperatureC: 26 })
    expect(said(date)).toEqual([])
  })
})

describe('live food that goes into other water', () => {
  const said = (volumeL: number, to: number) =>
    saidSteps({
      content: {
        steps: bringOverSteps({ from: { name: 'R1', salinity: 20 }, to: { name: 'N', salinity: to }, volumeL }),
      },
    })

  test('waits in a quarter of what was taken, a tenth of a litre at the least, ten minutes to each part', () => {
    expect(said(8, 30)).toEqual([
      'R1 is at 20 psu, N at 30 psu: rinse them into 2 L of water at 20 psu, with air.',
      'Add 2 L of water from N three times, 10 minutes apart; then they may go in.',
    ])
    expect(said(0.2, 30)[0]).toContain('rinse them into 0.1 L')
    // 26 apart: three parts of 1.4 times as much leave 26 / 5.2, which is 5.
    expect(said(4, 46)[1]).toContain('Add 1.4 L of water from N three times')
  })

  test('fish bear four at a time: more is brought nearer first, over days', () => {
    // common practice
    expect(mostForFish).toBe(4)
  })
})

describe('a meal', () => {
  test('of frozen food is thawed and rinsed, and lies half an hour at the most; dry food is gone in two minutes', () => {
    const said = (food: 'frozen' | 'dry') => saidSteps({ content: { steps: mealSteps(food) } })
    expect(said('frozen')).toEqual([
      expect.stringMatching(/^Thaw it in tank water, pour the juice away/),
      expect.stringMatching(/^A little at a time, let drift/),
      expect.stringMatching(/half an hour was too much/),
    ])
    expect(said('dry')).toEqual([
      expect.stringMatching(/over the whole surface/),
      expect.stringMatching(/gone in two minutes/),
    ])
  })
})

describe('a count of rotifers', () => {
  test('looks at fifty grown females for eggs', () => {
    // Ten show none one time in four at 0.13 eggs a female; fifty one in 600 (Poisson: exp(-0.13 x 50)).
    expect(Math.exp(-0.13 * 50)).toBeLessThan(1 / 600)
    expect(saidSteps({ content: { steps: eggSteps() } })[0]).toMatch(/^Look at 50 animals, all of them adult females/)
  })

  test('is the count, then the signs that were seen; neither where neither was given', () => {
    expect(sampleFacts('R1', {})).toEqual([])
    expect(sampleFacts('R1', { signs: ['foam'] })).toMatchObject([{ kind: 'observation' }])
    const count = { animals: [80], volumeMl: 1 }
    expect(sampleFacts('R1', { count, signs: ['foam'] })).toMatchObject([
      { kind: 'count', subjectId: 'R1', data: { of: 'culture', animals: [80], volumeMl: 1 } },
      { kind: 'observation' },
    ])
  })
})

describe('a change and a test of water', () => {
  test('as much goes in as came out: what was planned, or what was typed, with what the new water measured', () => {
    const about = { plannedL: 8, values: {} }
    expect(waterChangeFact('T', about).data).toEqual({ removedL: 8, addedL: 8 })
    expect(waterChangeFact('T', { ...about, values: { amountL: 0.5, salinity: 34 } }).data).toEqual({
      ...{ removedL: 0.5, addedL: 0.5, salinity: 34 },
    })
    expect(waterChangeFields({ volumeL: 20, salinity: 30, temperatureC: 27 }, 8)).toMatchObject([
      { name: 'amountL', usual: 8, maximum: 20 },
      { name: 'salinity', likelyMinimum: 27, likelyMaximum: 33 },
      { name: 'temperatureC', likelyMinimum: 24, likelyMaximum: 30 },
    ])
  })

  test('a test keeps each of the seven that was measured, and no fact at all where none was', () => {
    const all = {
      ...{ temperatureC: 26, salinity: 35, pH: 8.1, totalAmmoniaNMgPerL: 0.1, nitriteNMgPerL: 0.2 },
      ...{ nitrateNMgPerL: 10, oxygenMgPerL: 6.5 },
    }
    expect(waterTestFacts('T', { ...all, note: 'clear' })).toEqual([{ kind: 'water_test', subjectId: 'T', data: all }])
    for (const [name, value] of Object.entries(all))
      expect(waterTestFacts('T', { [name]: value })).toEqual([
        { kind: 'water_test', subjectId: 'T', data: { [name]: value } },
      ])
    expect(waterTestFacts('T', { note: 'clear' })).toEqual([])
  })
})
