import { describe, expect, test } from 'vitest'
import { saidSteps } from '../../testing/said-steps.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { rotiferFeed } from './rotifer-feed.ts'

const date = '2026-03-10'
type Sign = 'water_green' | 'water_tinted' | 'water_clear' | 'foam' | 'bad_smell' | 'swimming_slow'

/** R1, 18 L counted at 260 a mL this morning, of a bottle of 65e9: 2.7 mL in each of two feeds. */
function fed({ perMl = 260, volumeL = 18 } = {}) {
  const room = new SnapshotBuilder()
  const bottle = room.concentrate({ name: 'the green bottle' })
  const culture = room.culture({ name: 'R1', startedAt: '2026-03-01T10:00:00.000Z', volumeL })
  room.count(culture, `${date}T06:30:00.000Z`, [perMl, perMl, perMl])
  const feeds = () => room.drafts(date, [rotiferFeed]).drafts
  const last = () => feeds().at(-1)
  const looked = (at: string, ...signs: Sign[]) => room.fact('observation', culture.id, at, { signs })
  return { room, culture, bottle, feeds, last, looked }
}
const byWater = (line: string) => line.includes('water') || line.includes('doubt')

describe('a feed of concentrate', () => {
  test('is stirred in as it is, and the walls are no business of a later one', () => {
    const { feeds } = fed()
    const [first, second] = feeds()
    expect(saidSteps(second)).toEqual([
      'Look at the water first: green, tinted or clear; smell it; see how they swim.',
      'Shake the green bottle gently and put it back in the cold at once.',
      'Stir 2.7 mL into a cup of culture water and pour it in near the air.',
      'A feed that was missed stays missed: never give two at once.',
    ])
    expect(second?.content.amountOf).toBe('the green bottle')
    expect(second?.content.fields.map(({ name, label }) => [name, label])).toEqual([
      ['water', 'Water before feeding'],
      ['signs', 'Anything off?'],
      ['amountMl', 'Given, concentrate'],
    ])
    expect(whyLines(second).at(-1)).toBe('equals 2.7 mL a feed, to what a syringe shows')
    expect(signOff(rotiferFeed, second!).facts.map(({ kind }) => kind)).toEqual(['feeding'])
    expect(saidSteps(first).slice(1, 3)).toEqual([
      'Use the brush that belongs to R1; after the count, before the feed.',
      expect.stringMatching(/^Brush walls and bottom down/),
    ])
    expect(whyLines(first).at(-1)).toBe('and not brushed since its start 2026-03-01')
    const before = { ...first!, context: { ...(first!.context as object), brushes: undefined } }
    expect(signOff(rotiferFeed, before).facts.map(({ kind }) => kind)).toEqual(['feeding'])
  })

  test('too small for a syringe is thinned with nine parts, or ninety-nine, and what was given is written down as concentrate', () => {
    const said = (perMl: number) => {
      const { last } = fed({ perMl, volumeL: 1 })
      const draft = last()
      return { draft, steps: saidSteps(draft), title: saidTitle(draft) }
    }
    // 80 x 1,000 x 75,000 / 65e9 / 2 is 0.046 mL.
    const tenth = said(80)
    expect(tenth.steps.slice(2, 4)).toEqual([
      'Stir 1 mL of it into 9 mL of culture water: that is 1 in 10.',
      'Stir 0.5 mL into a cup of culture water and pour it in near the air.',
    ])
    expect(tenth.title).toBe('0.5 mL the green bottle diluted 1 in 10, second feed')
    expect(tenth.draft?.content).toMatchObject({
      amountOf: 'the green bottle diluted 1 in 10',
      fields: [{}, {}, { label: 'Given, diluted' }],
    })
    expect(whyLines(tenth.draft).at(-1)).toBe('equals 0.5 mL a feed, to what a syringe shows, diluted 1 in 10')
    expect(signOff(rotiferFeed, tenth.draft!, { amountMl: 0.8 }).facts[0]).toMatchObject({ data: { amountMl: 0.08 } })
    // 8 a mL: 0.0046 mL.
    expect(said(8).steps[2]).toBe('Stir 1 mL of it into 99 mL of culture water: that is 1 in 100.')
    // One a mL still eats; none does not.
    expect(said(1).title).toContain('1 in 100')
    expect(fed({ perMl: 0 }).feeds()).toEqual([])
    // What is counted of algae is no hungry animal.
    const { room, culture } = fed()
    culture.kind = 'microalgae'
    expect(room.drafts(date, [rotiferFeed])).toEqual({ drafts: [], gaps: [] })
  })

  test('of a culture that was begun between two feeds is its first, and is given now', () => {
    const room = new SnapshotBuilder()
    const bottle = room.concentrate()
    const culture = room.culture({ startedAt: `${date}T13:00:00.000Z`, concentrateId: bottle.id })
    room.fact('inoculation', culture.id, `${date}T13:00:00.000Z`, { densityPerMl: 100 })
    const said = room.drafts(date, [rotiferFeed]).drafts.map((draft) => [draft.roundId, saidTitle(draft)])
    // 100 x 18,000 x 75,000 / 65e9 / 2.
    expect(said).toEqual([
      ['midday', '1 mL concentrate, first feed now'],
      ['evening', '1 mL concentrate, second feed'],
    ])
  })
})

describe('the look of the water', () => {
  test('counts for three days to the hour, each look a fifth less or more than the one before', () => {
    const given = (...looks: [string, Sign][]) => {
      const { looked, last } = fed()
      for (const [at, sign] of looks) looked(at, sign)
      return [last()?.content.amount?.value, whyLines(last()).filter(byWater)]
    }
    const why = (share: number, last: string) => [`times ${share} share how the water has looked, last ${last}`]
    // 2.7 x 0.8 = 2.16, x 1.2 = 3.24.
    expect(given(['2026-03-07T00:00:00.000Z', 'water_green'])).toEqual([2.2, why(0.8, 'green')])
    expect(given(['2026-03-06T23:59:00.000Z', 'water_green'])).toEqual([2.7, []])
    expect(given([`${date}T06:40:00.000Z`, 'water_clear'])).toEqual([3.2, why(1.2, 'clear')])
    expect(given([`${date}T06:40:00.000Z`, 'water_tinted'])).toEqual([2.7, []])
    // 0.8 x 0.8 of 2.7; tinted leaves it there.
    const twice: [string, Sign][] = [
      ['2026-03-09T07:00:00.000Z', 'water_green'],
      ['2026-03-09T18:30:00.000Z', 'water_green'],
    ]
    const [amount, lines] = given(...twice, [`${date}T06:40:00.000Z`, 'water_tinted'])
    expect(amount).toBe(1.7)
    expect((lines as string[])[0]).toMatch(/^times 0\.64\d* share how the water has looked, last tinted$/)
  })

  test('clear is more only where they were sound by then: foam before it speaks against it, foam after it does not', () => {
    const given = (foamAt: string) => {
      const { looked, last } = fed()
      looked(foamAt, 'foam')
      looked('2026-03-09T18:30:00.000Z', 'water_clear')
      return last()?.content.amount?.value
    }
    expect(given('2026-03-09T07:00:00.000Z')).toBe(2.7)
    expect(given('2026-03-09T18:30:00.000Z')).toBe(2.7)
    expect(given('2026-03-10T06:40:00.000Z')).toBe(3.2)
  })

  test('clear of a culture that is not sound is said to be that, where green ones before it have made it less', () => {
    const { looked, last } = fed()
    looked('2026-03-09T07:00:00.000Z', 'water_green')
    looked('2026-03-09T18:30:00.000Z', 'water_clear', 'foam')
    expect(last()?.content.amount?.value).toBe(2.2)
    expect(whyLines(last()).filter(byWater)).toEqual([
      'times 0.8 share how the water has looked, last clear, but the culture is not sound',
    ])
  })

  test('is not followed in a room that does not want it', () => {
    const { room, looked, last } = fed()
    looked(`${date}T06:40:00.000Z`, 'water_green')
    room.setting('rotifer-feed', { parameters: { followsWater: false } })
    expect(last()?.content.amount?.value).toBe(2.7)
  })
})

describe('half a ration', () => {
  test('is said to be for the signs that were seen, or for the water that was found wrong', () => {
    const { looked, last } = fed()
    looked(`${date}T06:40:00.000Z`, 'bad_smell', 'swimming_slow')
    // 1.35, to what a syringe shows.
    expect(last()?.content.amount?.value).toBe(1.4)
    expect(whyLines(last()).filter(byWater)).toEqual(['times 0.5 share it was in doubt: bad smell, swimming slow'])
    const { room, culture, last: other } = fed()
    room.fact('water_test', culture.id, `${date}T06:40:00.000Z`, { totalAmmoniaNMgPerL: 18, pH: 8.3 })
    expect(whyLines(other()).filter(byWater)).toEqual(['times 0.5 share its water was found wrong'])
  })

  test('is half, whatever the water looked like before; no less where that alone says half', () => {
    const { looked, last } = fed()
    looked('2026-03-09T07:00:00.000Z', 'water_clear')
    looked('2026-03-09T18:30:00.000Z', 'bad_smell')
    expect(last()?.content.amount?.value).toBe(1.4)
    const { looked: seen, last: green } = fed()
    for (const at of ['07T18:30', '08T07:00', '08T18:30', '09T07:00']) seen(`2026-03-${at}:00.000Z`, 'water_green')
    seen('2026-03-09T18:30:00.000Z', 'bad_smell')
    // 0.8 four times is 0.41; half is the least.
    expect(green()?.content.amount?.value).toBe(1.4)
    expect(whyLines(green()).filter(byWater)).toEqual(['times 0.5 share how the water has looked, last green'])
  })
})
