import { describe, expect, test } from 'vitest'
import { unionisedAmmonia, unionisedAmmoniaNitrogen } from './ammonia.ts'
import { ArgumentError } from './argument-error.ts'
import { convert, unitsByGroup } from './convert.ts'
import { density, salinityFromHydrometer, salinityFromSpecificGravity, specificGravity } from './density.ts'
import {
  accumulatedDose,
  afterContinuousChange,
  afterWaterChanges,
  changeFraction,
  freshWaterToAddL,
  mixedSalinity,
  salinityAfterEvaporation,
  saltToMixG,
  saltToRaiseG,
  waterToMatchL,
} from './mixing.ts'
import { oxygenSaturation, oxygenShareOfSaturation } from './oxygen.ts'

describe('specific gravity', () => {
  test('differs by its reference temperature, so a bare reading is ambiguous', () => {
    const at25 = specificGravity({ salinity: 35, temperatureC: 25, referenceTemperatureC: 25 })
    const at4 = specificGravity({ salinity: 35, temperatureC: 25, referenceTemperatureC: 4 })
    expect(at25 - at4).toBeGreaterThan(0.002)
  })

  test('of fresh water at its own temperature is exactly 1 and means salinity 0', () => {
    expect(specificGravity({ salinity: 0, temperatureC: 25, referenceTemperatureC: 25 })).toBe(1)
    expect(salinityFromSpecificGravity({ specificGravity: 1, temperatureC: 25, referenceTemperatureC: 25 })).toBe(0)
  })

  test('outside salt water is refused with the range at that temperature', () => {
    const read = (value: number) =>
      salinityFromSpecificGravity({ specificGravity: value, temperatureC: 25, referenceTemperatureC: 25 })
    expect(() => read(1.2)).toThrow(/specificGravity is 1.2; allowed: 1.00000 to 1.03169/)
    expect(() => read(0.9)).toThrow(ArgumentError)
    expect(() => read(Number.NaN)).toThrow(/specificGravity is NaN/)
  })

  // EOS-80 reaches from -2 to 40 C; one in a thousand for each degree is forty times what glass grows.
  test.each([
    ['reading is 0; allowed: a finite number above 0', { reading: 0 }],
    ['reading is 1.2; allowed: 1.00000 to 1.03169', { reading: 1.2 }],
    ['temperatureC is 41; allowed: -2 to 40 C', { temperatureC: 41 }],
    ['calibrationTemperatureC is 41', { calibrationTemperatureC: 41 }],
    ['referenceTemperatureC is -1; allowed: 0 to 40 C', { referenceTemperatureC: -1 }],
    ['glassExpansionPerC is -0.001; allowed: 0 to 0.001 per C', { glassExpansionPerC: -0.001 }],
    ['glassExpansionPerC is 0.0011', { glassExpansionPerC: 0.0011 }],
  ])('of a hydrometer is refused where %s', (sentence, change) => {
    const input = { reading: 1.02, temperatureC: 25, calibrationTemperatureC: 25, referenceTemperatureC: 25 }
    expect(() => salinityFromHydrometer(input)).not.toThrow()
    expect(() => salinityFromHydrometer({ ...input, ...change })).toThrow(sentence)
  })

  test('a hydrometer read at its own temperature needs no correction', () => {
    const reading = specificGravity({ salinity: 33, temperatureC: 25, referenceTemperatureC: 25 })
    const input = { reading, temperatureC: 25, calibrationTemperatureC: 25, referenceTemperatureC: 25 }
    expect(salinityFromHydrometer(input)).toBeCloseTo(33, 8)
  })
})

describe('un-ionised ammonia', () => {
  test('says which scale and source it assumes', () => {
    const fresh = unionisedAmmonia({ pH: 8, temperatureC: 25, salinity: 0 })
    expect(fresh).toMatchObject({ pHScale: 'NBS', basis: 'Emerson et al. 1975', isExtrapolated: false })
    expect(unionisedAmmonia({ pH: 8, temperatureC: 25, salinity: 34 }).basis).toMatch(/Bower & Bidwell 1978/)
  })

  test('is flagged as extrapolated beyond the published tables', () => {
    expect(unionisedAmmonia({ pH: 8, temperatureC: 27, salinity: 34 }).isExtrapolated).toBe(true)
    expect(unionisedAmmonia({ pH: 8, temperatureC: 31, salinity: 0 }).isExtrapolated).toBe(true)
    // Emerson et al. 1975 tabulate to 30 C, Bower & Bidwell 1978 to 25 C and salinity 40, each with its last row.
    expect(unionisedAmmonia({ pH: 8, temperatureC: 30, salinity: 0 }).isExtrapolated).toBe(false)
    expect(unionisedAmmonia({ pH: 8, temperatureC: 25, salinity: 40 }).isExtrapolated).toBe(false)
    expect(unionisedAmmonia({ pH: 8, temperatureC: 24, salinity: 41 }).isExtrapolated).toBe(true)
  })

  // Kits and electrodes read from pH 4 to 11; the constant rests on 0 to 40 C (Emerson et al. 1975).
  test.each([
    ['pH is 3.9; allowed: 4 to 11 ', { pH: 3.9 }],
    ['pH is 11.1', { pH: 11.1 }],
    ['temperatureC is 40.1; allowed: 0 to 40 C ', { temperatureC: 40.1 }],
    ['temperatureC is -0.1', { temperatureC: -0.1 }],
    ['salinity is 45.1; allowed: 0 to 45 ', { salinity: 45.1 }],
  ])('is not said where %s', (sentence, change) => {
    expect(() => unionisedAmmonia({ pH: 11, temperatureC: 40, salinity: 45 })).not.toThrow()
    expect(() => unionisedAmmonia({ pH: 8, temperatureC: 25, salinity: 34, ...change })).toThrow(sentence)
  })

  test('is half of the total where pH equals the constant', () => {
    const { pKa } = unionisedAmmonia({ pH: 8, temperatureC: 25, salinity: 34 })
    expect(pKa).toBeCloseTo(9.35, 12)
    const total = { totalAmmoniaNitrogenMgPerL: 2, pH: pKa, temperatureC: 25, salinity: 34 }
    expect(unionisedAmmoniaNitrogen(total)).toBeCloseTo(1, 12)
  })
})

test('oxygen at saturation is a share of 1', () => {
  const water = { salinity: 35, temperatureC: 26 }
  expect(oxygenShareOfSaturation({ ...water, oxygenMgPerL: oxygenSaturation(water) })).toBe(1)
})

describe('mixing', () => {
  test('two changes of half leave a quarter', () => {
    expect(afterWaterChanges({ fraction: 0.5, times: 2 })).toBe(0.25)
    expect(afterWaterChanges({ fraction: 0.5, times: 0 })).toBe(1)
    expect(afterContinuousChange({ volumeRatio: 0 })).toBe(1)
  })

  test('doses without water changes add up', () => {
    expect(accumulatedDose({ dose: 2, fraction: 0, doses: 3 })).toBe(6)
    expect(accumulatedDose({ dose: 2, fraction: 1, doses: 3 })).toBe(2)
  })

  test('nothing evaporated asks for nothing', () => {
    expect(salinityAfterEvaporation({ salinity: 35, volumeL: 100, evaporatedL: 0 })).toBe(35)
    expect(freshWaterToAddL({ volumeL: 100, salinity: 35, targetSalinity: 35 })).toBe(0)
  })

  test('a change of a third with water of another level brings it a third of the way', () => {
    // 30 litres at 32 and 60 at 35 are 90 at 34, by hand.
    expect(changeFraction({ current: 35, incoming: 32, target: 34 })).toBeCloseTo(1 / 3, 12)
  })

  test('top-up undoes evaporation', () => {
    const salinity = salinityAfterEvaporation({ salinity: 35, volumeL: 100, evaporatedL: 2 })
    expect(freshWaterToAddL({ volumeL: 98, salinity, targetSalinity: 35 })).toBeCloseTo(2, 12)
  })

  test('100 L at 35 and 25 C hold about 3.6 kg of dry salt, more of a moist mix', () => {
    const water = { volumeL: 100, salinity: 35, temperatureC: 25 }
    expect(saltToMixG(water)).toBeCloseTo(3598.6, 1)
    expect(saltToMixG({ ...water, dryShare: 0.9 })).toBeCloseTo(3998.4, 1)
  })

  test('a bag 9 saltier comes within 3 when it holds three times its water', () => {
    expect(waterToMatchL({ volumeL: 2, current: 35, target: 26, tolerance: 3 })).toBe(4)
    expect(waterToMatchL({ volumeL: 2, current: 26.5, target: 26, tolerance: 3 })).toBe(0)
  })

  test('a target that the incoming water cannot reach is refused', () => {
    expect(() => changeFraction({ current: 1, incoming: 0.5, target: 0.1 })).toThrow(/target is 0.1; allowed: 0.5 to 1/)
    expect(changeFraction({ current: 1, incoming: 0, target: 0.25 })).toBe(0.75)
    expect(changeFraction({ current: 1, incoming: 1, target: 1 })).toBe(0)
  })
})

describe('convert', () => {
  test.each([
    [1, 'US gallon', 'L', 3.785411784],
    [1, 'gal', 'litres', 3.785411784],
    [1, 'lb', 'g', 453.59237],
    [10, 'inches', 'cm', 25.4],
    [77, '°F', 'C', 25],
    [-40, 'C', 'F', -40],
    [5, 'mL', 'ml', 5],
    [1, 'ppm', 'mg/L', 1],
    [53, 'mS/cm', 'S/m', 5.3],
    [10, 'per mL', 'per L', 10000],
    [8, 'dKH', 'mg/L CaCO3', 142.78],
  ])('%d %s in %s is %d', (value, from, to, expected) => {
    expect(convert(value, from, to)).toBeCloseTo(expected, 2)
  })

  // NIST Handbook 44 (2024), Appendix C; UK Weights and Measures Act 1985, Schedule 1; SI Brochure, 9th ed. 2019, Tables 7 and 8.
  test.each([
    ['US gal', 'US qt', 4],
    ['US gal', 'US pt', 8],
    ['US gal', 'US fl oz', 128],
    ['US gal', 'in3', 231],
    ['imp gal', 'imp pt', 8],
    ['imp gal', 'imp fl oz', 160],
    ['lb', 'oz', 16],
    ['ft', 'in', 12],
    ['in', 'mm', 25.4],
    ['m', 'cm', 100],
    ['mm', 'um', 1000],
    ['m3', 'L', 1000],
    ['mL', 'uL', 1000],
    ['kg', 'g', 1000],
    ['g', 'mg', 1000],
    ['mg', 'ug', 1000],
    ['g/L', 'mg/L', 1000],
    ['mg/L', 'ug/L', 1000],
    ['ppm', 'ppb', 1000],
    ['mS/cm', 'uS/cm', 1000],
    ['S/m', 'mS/cm', 10],
    ['d', 'h', 24],
    ['h', 'min', 60],
    ['min', 's', 60],
    ['L/min', 'L/h', 60],
    ['L/min', 'mL/min', 1000],
    ['US gal/h', 'L/h', 3.785411784],
    ['per US gal', 'per L', 1 / 3.785411784],
  ])('one %s is %s by definition', (from, to, expected) => {
    expect(convert(1, from, to) / expected).toBeCloseTo(1, 12)
  })

  test.each([
    // As water laboratories print them (from memory): 46.005 / 14.007, 18.04 / 14.007, and 50 mg of CaCO3 to the milliequivalent.
    [1, 'mg/L NO2-N', 'mg/L NO2', 3.28, 2],
    [1, 'mg/L NH4-N', 'mg/L NH4', 1.29, 2],
    [1, 'meq/L', 'mg/L CaCO3', 50, 1],
    // The triple point of water (SI Brochure 2019) and its boiling point.
    [273.16, 'K', 'C', 0.01, 12],
    [212, 'F', 'C', 100, 12],
  ])('%d %s in %s is %d', (value, from, to, expected, digits) => {
    expect(convert(value, from, to)).toBeCloseTo(expected, digits)
  })

  test('knows each unit by one meaning only', () => {
    const symbols = Object.values(unitsByGroup).flat()
    for (const symbol of symbols) expect(convert(273.15, symbol, symbol)).toBe(273.15)
    expect(new Set(symbols.map((symbol) => symbol.toLowerCase())).size).toBe(symbols.length)
  })

  test.each([
    [1, 'bushel', 'L', /from is bushel; allowed: L, mL/],
    [1, 'L', 'kg', /to is kg; allowed: a unit of volume/],
    [1, 'mg/L NO3', 'mg/L NO2', /to is mg\/L NO2; allowed: a unit of nitrate/],
    [-1, 'L', 'mL', /value is -1; allowed: a finite number from 0/],
    [Number.NaN, 'C', 'F', /value is NaN/],
    [-300, 'C', 'F', /value is -300; allowed: a temperature from absolute zero/],
  ])('%d %s in %s is refused', (value, from, to, message) => {
    expect(() => convert(value, from, to)).toThrow(message)
  })
})

const BAD = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, -5]

describe.each(BAD)('the value %d', (bad) => {
  const water = { salinity: 35, temperatureC: 25 }
  const calls: Record<string, () => number> = {
    salinity: () => density({ ...water, salinity: bad }),
    temperatureC: () => oxygenSaturation({ ...water, temperatureC: bad }),
    oxygenMgPerL: () => oxygenShareOfSaturation({ ...water, oxygenMgPerL: bad }),
    pH: () => unionisedAmmonia({ ...water, pH: bad }).fraction,
    totalAmmoniaNitrogenMgPerL: () => unionisedAmmoniaNitrogen({ ...water, pH: 8, totalAmmoniaNitrogenMgPerL: bad }),
    fraction: () => afterWaterChanges({ fraction: bad, times: 1 }),
    times: () => afterWaterChanges({ fraction: 0.1, times: bad }),
    volumeRatio: () => afterContinuousChange({ volumeRatio: bad }),
    dose: () => accumulatedDose({ dose: bad, fraction: 0.1, doses: 2 }),
    doses: () => accumulatedDose({ dose: 1, fraction: 0.1, doses: bad }),
    current: () => changeFraction({ current: bad, incoming: 0, target: 0 }),
    volumeL: () => saltToMixG({ ...water, volumeL: bad }),
    dryShare: () => saltToMixG({ ...water, volumeL: 1, dryShare: bad }),
    targetSalinity: () => saltToRaiseG({ ...water, volumeL: 1, targetSalinity: bad }),
    evaporatedL: () => salinityAfterEvaporation({ salinity: 35, volumeL: 10, evaporatedL: bad }),
    incoming: () => changeFraction({ current: 1, incoming: bad, target: 1 }),
    tolerance: () => waterToMatchL({ volumeL: 1, current: 35, target: 30, tolerance: bad }),
    'parts[0].volumeL': () => mixedSalinity({ parts: [{ volumeL: bad, salinity: 35 }] }),
    'parts[0].salinity': () => mixedSalinity({ parts: [{ volumeL: 1, salinity: bad }] }),
    referenceTemperatureC: () => specificGravity({ ...water, referenceTemperatureC: bad }),
  }
  test.each(Object.entries(calls))('is refused as %s', (argument, call) => {
    expect(call).toThrow(ArgumentError)
    expect(call).toThrow(`${argument} is ${bad}`)
  })
})

test.each([
  [
    () => freshWaterToAddL({ volumeL: 100, salinity: 34, targetSalinity: 35 }),
    /salinity is 34; allowed: at least .*35/,
  ],
  [() => freshWaterToAddL({ volumeL: 100, salinity: 35, targetSalinity: 0 }), /targetSalinity is 0/],
  [
    () => freshWaterToAddL({ volumeL: -1, salinity: 35, targetSalinity: 34 }),
    /volumeL is -1; allowed: a finite number from 0/,
  ],
  [() => salinityAfterEvaporation({ salinity: -1, volumeL: 10, evaporatedL: 1 }), /salinity is -1/],
  [
    () => salinityAfterEvaporation({ salinity: 35, volumeL: 0, evaporatedL: 0 }),
    /volumeL is 0; allowed: a finite number above 0/,
  ],
  [() => waterToMatchL({ volumeL: -1, current: 26, target: 26, tolerance: 1 }), /volumeL is -1/],
  [() => waterToMatchL({ volumeL: 2, current: Number.NaN, target: 26, tolerance: 1 }), /current is NaN/],
  [() => waterToMatchL({ volumeL: 2, current: 26, target: Number.NaN, tolerance: 1 }), /target is NaN/],
  [() => salinityAfterEvaporation({ salinity: 35, volumeL: 10, evaporatedL: 10 }), /evaporatedL is 10; .*under 10 L/],
  [
    () => saltToRaiseG({ volumeL: 9, salinity: 35, targetSalinity: 34, temperatureC: 25 }),
    /targetSalinity is 34; .*35 to 42/,
  ],
])('water that cannot be made is refused (%#)', (call, sentence) => {
  expect(call).toThrow(sentence)
})

// Standard Methods Table 4500-O:I goes to 50 C and a chlorinity of 25, which is a salinity of 45.2 (1.80655 times it: Wooster, Lee
// & Dietrich 1969, Limnol. Oceanogr. 14:437-438).
test('oxygen is answered to the last row of its table, and not beyond', () => {
  expect(oxygenSaturation({ salinity: 25 * 1.80655, temperatureC: 50 })).toBeGreaterThan(4)
  expect(() => oxygenSaturation({ salinity: 46, temperatureC: 25 })).toThrow(/salinity is 46/)
  expect(() => oxygenSaturation({ salinity: 0, temperatureC: 51 })).toThrow(/temperatureC is 51/)
})

// EOS-80 holds from -2 to 40 C and to a salinity of 42: Millero & Poisson 1981, Deep-Sea Res. 28A:625-629.
test.each([
  [{ salinity: 35, temperatureC: -2.1 }, 'temperatureC is -2.1'],
  [{ salinity: 35, temperatureC: 40.1 }, 'temperatureC is 40.1'],
  [{ salinity: 42.1, temperatureC: 25 }, 'salinity is 42.1'],
])('the density of %j is refused, and it says what is wrong with it', (water, sentence) => {
  expect(() => density(water)).toThrow(sentence)
})

test('no parts, or parts without water, do not mix', () => {
  expect(() => mixedSalinity({ parts: [] })).toThrow(/at least one part/)
  expect(() => mixedSalinity({ parts: [{ volumeL: 0, salinity: 35 }] })).toThrow(/some water/)
})
