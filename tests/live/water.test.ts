import { expect, test } from 'vitest'
import { poisonedPerDay, readOffCard, Water } from './water.ts'

const water = { volumeL: 40, temperatureC: 25, salinity: 34, pH: 8.2, by: 'none' as const }

test('the poisonous share in nature is what is published for sea water, within what two formulas differ', () => {
  // Bower & Bidwell 1978, salinity 34, percent un-ionised: reference checks 04b.
  for (const [pH, temperatureC, percent] of [
    [7.5, 25, 1.39],
    [7.7, 15, 1.05],
    [7.7, 20, 1.52],
  ] as const)
    expect(Math.abs((new Water({ ...water, pH, temperatureC }).poisonousShare * 100) / percent - 1)).toBeLessThan(0.1)
})

test('a day at the 24 h LC50 of bream larvae, 0.24 mg/L of NH3, leaves half; a tenth of it harms nobody', () => {
  // Parra & Yufera 1999, Aquac. Res. 30.
  const lc50 = (0.24 * 14.007) / 17.031
  expect(Math.exp(-poisonedPerDay(lc50, 'larvae'))).toBeCloseTo(0.5, 6)
  expect(poisonedPerDay(lc50 / 10, 'larvae')).toBe(0)
})

test('four weeks at the chronic value of larval silversides, 0.061 mg/L of NH3, take a fifth', () => {
  // Miller, Poucher, Cardin & Hansen 1990, Arch. Environ. Contam. Toxicol. 19 (abstract); a fifth is an assumption.
  const chronic = (0.061 * 14.007) / 17.031
  expect(Math.exp(-28 * poisonedPerDay(chronic, 'larvae'))).toBeCloseTo(0.8, 6)
})

test('what was eaten comes out within two days and no more of it, and half a change leaves half', () => {
  const tank = new Water(water)
  tank.eaten(40)
  for (let hour = 0; hour < 48; hour += 1) tank.anHour()
  expect(tank.ammoniaMgPerL).toBeCloseTo(1, 1)
  expect(tank.ammoniaMgPerL).toBeLessThanOrEqual(1)
  const before = tank.ammoniaMgPerL
  tank.change(20)
  expect(tank.ammoniaMgPerL).toBeCloseTo(before / 2, 9)
})

test('what lies dead turns to ammonia by half in two days, and no more of it once it is siphoned', () => {
  const tank = new Water(water)
  tank.rots(40)
  for (let hour = 0; hour < 48; hour += 1) tank.anHour()
  expect(tank.ammoniaMgPerL).toBeCloseTo(0.5, 9)
  tank.siphon()
  for (let hour = 0; hour < 480; hour += 1) tank.anHour()
  expect(tank.ammoniaMgPerL).toBeCloseTo(0.55, 2)
})

test('between ammonia and nitrate stands nitrite: under the first colour with a ripe filter, over ammonia with old walls', () => {
  const fed = (by: 'filter' | 'walls') => {
    const tank = new Water({ ...water, volumeL: 200, by })
    for (let hour = 0; hour < 24 * 30; hour += 1) {
      tank.eaten(240 / 24)
      tank.anHour()
    }
    return tank
  }
  expect(readOffCard(fed('filter').nitriteMgPerL)).toBeLessThanOrEqual(0.25)
  expect(fed('walls').nitriteMgPerL).toBeGreaterThan(fed('walls').ammoniaMgPerL)
  // Nothing of it is lost on the way without what turns it.
  const dead = new Water(water)
  dead.eaten(40)
  for (let hour = 0; hour < 240; hour += 1) dead.anHour()
  expect(dead.nitriteMgPerL).toBe(0)
})

test('a ripe filter keeps a fed tank under the first colour of the card', () => {
  const tank = new Water({ ...water, volumeL: 200, by: 'filter' })
  for (let hour = 0; hour < 24 * 14; hour += 1) {
    tank.eaten(240 / 24)
    tank.anHour()
  }
  expect(readOffCard(tank.ammoniaMgPerL)).toBeLessThanOrEqual(0.25)
  expect([0.02, 0.3, 0.7, 1.3].map(readOffCard)).toEqual([0, 0.25, 0.5, 1])
})
