import { ArgumentError } from './argument-error.ts'
import { imperialGallonL, inchCm, poundG, toCelsius, toFahrenheit, usGallonL } from './exact-units.ts'

// CIAAW abridged standard atomic weights (2021), g/mol.
const H = 1.008
const C = 12.011
const N = 14.007
const O = 15.999
const CA = 40.078

/** One German degree is 10 mg of CaO per litre, two equivalents to the mole (DIN 32625). */
const DKH_MEQ_PER_L = 10 / ((CA + O) / 2)
const CACO3_MG_PER_MEQ = (CA + C + 3 * O) / 2

/** Within a group, the size of each unit in the group's first one. */
const LINEAR_GROUPS = {
  volume: {
    L: 1,
    mL: 1e-3,
    uL: 1e-6,
    m3: 1000,
    in3: inchCm ** 3 / 1000,
    'US gal': usGallonL,
    'US qt': usGallonL / 4,
    'US pt': usGallonL / 8,
    'US fl oz': usGallonL / 128,
    'imp gal': imperialGallonL,
    'imp pt': imperialGallonL / 8,
    'imp fl oz': imperialGallonL / 160,
  },
  mass: { g: 1, ug: 1e-6, mg: 1e-3, kg: 1000, oz: poundG / 16, lb: poundG },
  length: { cm: 1, um: 1e-4, mm: 0.1, m: 100, in: inchCm, ft: 12 * inchCm },
  // Test kits write ppm for mg/L (common practice); by weight, sea water would differ by its density, about 2.5 %.
  concentration: { 'mg/L': 1, 'ug/L': 1e-3, 'g/L': 1000, ppm: 1, ppb: 1e-3 },
  ammonia: { 'mg/L NH3-N': 1, 'mg/L NH3': N / (N + 3 * H), 'mg/L NH4-N': 1, 'mg/L NH4': N / (N + 4 * H) },
  nitrite: { 'mg/L NO2-N': 1, 'mg/L NO2': N / (N + 2 * O) },
  nitrate: { 'mg/L NO3-N': 1, 'mg/L NO3': N / (N + 3 * O) },
  alkalinity: { 'meq/L': 1, dKH: DKH_MEQ_PER_L, 'mg/L CaCO3': 1 / CACO3_MG_PER_MEQ },
  conductivity: { 'mS/cm': 1, 'uS/cm': 1e-3, 'S/m': 10 },
  'number per volume': { 'per L': 1, 'per mL': 1000, 'per US gal': 1 / usGallonL },
  flow: { 'L/h': 1, 'L/min': 60, 'mL/min': 0.06, 'US gal/h': usGallonL },
  time: { h: 1, s: 1 / 3600, min: 1 / 60, d: 24 },
} satisfies Record<string, Record<string, number>>

const TO_CELSIUS: Record<string, (value: number) => number> = {
  C: (value) => value,
  F: toCelsius,
  K: (value) => value - 273.15,
}
const FROM_CELSIUS: Record<string, (value: number) => number> = {
  C: (value) => value,
  F: toFahrenheit,
  K: (value) => value + 273.15,
}
const ABSOLUTE_ZERO_C = -273.15

/** Other spellings that people write for the same unit, compared without case, spaces, dots, dashes or underscores. */
const SPELLINGS: Record<string, readonly string[]> = {
  L: ['litre', 'litres', 'liter', 'liters', 'ltr'],
  mL: ['millilitre', 'millilitres', 'milliliter', 'milliliters', 'cc', 'cm3'],
  uL: ['µL', 'μL', 'microlitre', 'microliter'],
  m3: ['m³', 'cubic metre', 'cubic meter'],
  in3: ['cubic inch', 'cubic inches', 'cu in', 'in³'],
  'US gal': ['gal', 'gallon', 'gallons', 'US gallon', 'US gallons', 'gallon US', 'gal US', 'US liquid gallon'],
  'US qt': ['qt', 'quart', 'US quart', 'quarts'],
  'US pt': ['pt', 'pint', 'US pint', 'pints'],
  'US fl oz': ['fl oz', 'floz', 'fluid ounce', 'fluid ounces', 'US fluid ounce', 'US fluid ounces', 'fl oz US'],
  'imp gal': ['imperial gallon', 'imperial gallons', 'UK gallon', 'UK gal', 'gal imp', 'gallon imperial'],
  'imp pt': ['imperial pint', 'UK pint'],
  'imp fl oz': ['imperial fl oz', 'imperial fluid ounce', 'UK fl oz', 'UK fluid ounce', 'fl oz imp'],
  g: ['gram', 'grams', 'gramme'],
  ug: ['µg', 'μg', 'mcg', 'microgram'],
  mg: ['milligram', 'milligrams'],
  kg: ['kilogram', 'kilograms'],
  oz: ['ounce', 'ounces'],
  lb: ['lbs', 'pound', 'pounds'],
  um: ['µm', 'μm', 'micron', 'microns'],
  mm: ['millimetre', 'millimeter'],
  cm: ['centimetre', 'centimeter'],
  m: ['metre', 'meter'],
  in: ['inch', 'inches', '"'],
  ft: ['foot', 'feet'],
  C: ['°C', 'deg C', 'celsius', 'degrees celsius'],
  F: ['°F', 'deg F', 'fahrenheit', 'degrees fahrenheit'],
  K: ['kelvin'],
  'mg/L NH3-N': ['NH3-N'],
  'mg/L NH3': ['NH3'],
  'mg/L NH4-N': ['NH4-N', 'TAN', 'mg/L TAN'],
  'mg/L NH4': ['NH4'],
  'mg/L NO2-N': ['NO2-N'],
  'mg/L NO2': ['NO2'],
  'mg/L NO3-N': ['NO3-N'],
  'mg/L NO3': ['NO3'],
  'ug/L': ['µg/L', 'μg/L'],
  'uS/cm': ['µS/cm', 'μS/cm'],
  dKH: ['dH', '°dH', '°dKH', 'KH'],
  'meq/L': ['mval/L'],
  'mg/L CaCO3': ['ppm CaCO3'],
  h: ['hour', 'hours'],
  s: ['second', 'seconds'],
  min: ['minute', 'minutes'],
  d: ['day', 'days'],
}

type Unit = { symbol: string; group: string; toBase: (value: number) => number; fromBase: (base: number) => number }

const fold = (text: string) => text.toLowerCase().replaceAll(/[\s._-]/g, '')

function allUnits(): Unit[] {
  const linear = Object.entries(LINEAR_GROUPS).flatMap(([group, sizes]) =>
    Object.entries(sizes).map(([symbol, size]: [string, number]) => ({
      symbol,
      group,
      toBase: (value: number) => value * size,
      fromBase: (base: number) => base / size,
    })),
  )
  const temperature = Object.entries(TO_CELSIUS).map(([symbol, toBase]) => ({
    symbol,
    group: 'temperature',
    toBase,
    fromBase: FROM_CELSIUS[symbol] ?? toBase,
  }))
  return [...linear, ...temperature]
}

const UNITS = allUnits()

const BY_SPELLING = new Map(
  UNITS.flatMap((unit) =>
    [unit.symbol, ...(SPELLINGS[unit.symbol] ?? [])].map((text): [string, Unit] => [fold(text), unit]),
  ),
)

/** Every unit that convert knows, by what it measures; the first of each group but temperature is its base. */
export const unitsByGroup: Readonly<Record<string, readonly string[]>> = Object.fromEntries(
  [...new Set(UNITS.map((unit) => unit.group))].map((group) => [
    group,
    UNITS.filter((unit) => unit.group === group).map((unit) => unit.symbol),
  ]),
)

function findUnit(argument: string, text: string): Unit {
  const unit = BY_SPELLING.get(fold(String(text)))
  if (unit !== undefined) return unit
  throw new ArgumentError({ argument, value: text, allowed: UNITS.map((known) => known.symbol).join(', ') })
}

/**
 * The same quantity in another unit of the same kind: volume, mass, length, temperature, concentration, ammonia, nitrite
 * and nitrate as ion or as nitrogen, alkalinity, conductivity, animals per volume, flow, time (see `unitsByGroup`).
 * A gallon, pint, quart or fluid ounce without a country is the US one. Definitions are exact; masses of ions rest on
 * the standard atomic weights.
 * @throws ArgumentError for an unknown unit, units of different kinds, a negative amount, or under absolute zero.
 */
export function convert(value: number, from: string, to: string): number {
  const source = findUnit('from', from)
  const target = findUnit('to', to)
  if (source.group !== target.group) {
    const allowed = `a unit of ${source.group}, as ${source.symbol} is: ${unitsByGroup[source.group]?.join(', ')}`
    throw new ArgumentError({ argument: 'to', value: to, allowed })
  }
  const base = source.toBase(value)
  const lowest = source.group === 'temperature' ? ABSOLUTE_ZERO_C : 0
  if (!Number.isFinite(value) || base < lowest) {
    const allowed = source.group === 'temperature' ? 'a temperature from absolute zero' : 'a finite number from 0'
    throw new ArgumentError({ argument: 'value', value, allowed })
  }
  return source === target ? value : target.fromBase(base)
}
