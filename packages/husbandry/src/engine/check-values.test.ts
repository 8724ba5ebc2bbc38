import type { TaskField } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import {
  choiceField,
  choicesField,
  countField,
  deformedField,
  givenAmountField,
  lengthField,
  noteField,
  numberField,
  salinityField,
  seenOfYoung,
  temperatureField,
  yesNoField,
} from '../task/fields.ts'
import { checkValues } from './check-values.ts'

const number = numberField({
  name: 'amountMl',
  label: 'Given',
  isRequired: true,
  unit: 'mL',
  minimum: 0.1,
  maximum: 30,
  likely: [1, 9],
})
const count = countField({ name: 'count', label: 'Rotifers', unit: 'per_mL', maximum: 5000, likely: [100, 900] })
const parts: TaskField = {
  type: 'parts',
  name: 'parts',
  label: 'Where it went',
  isRequired: false,
  help: null,
  maximumL: 10,
  likelyMaximumL: 4,
  suggested: [],
}
const check = (field: TaskField, value: unknown, confirmed: string[] = []) =>
  checkValues({ fields: [field], values: value === undefined ? {} : { [field.name]: value }, confirmed })

describe('what was typed', () => {
  test('passes when it is allowed and likely', () => {
    expect(check(number, 3)).toEqual({ values: { amountMl: 3 }, problems: [], improbable: [] })
  })

  test('is refused outside the hard limits, with what is allowed', () => {
    expect(check(number, 40).problems[0]?.message).toBe('Given: at most 30')
    expect(check(number, 0).problems[0]?.message).toBe('Given: at least 0.1')
    expect(check(number, 'three').problems).toHaveLength(1)
    expect(check(number, Number.NaN).problems).toHaveLength(1)
  })

  test('asks for a confirmation when it is improbable, and passes once it has one', () => {
    expect(check(number, 20).improbable[0]?.message).toBe('Given: 20 is outside the usual 1 to 9. Is it right?')
    expect(check(number, 20, ['amountMl'])).toEqual({ values: { amountMl: 20 }, problems: [], improbable: [] })
  })

  test('a required field may not stay empty; another may; an unknown name is refused', () => {
    for (const empty of [undefined, null, ''])
      expect(check(number, empty).problems[0]?.message).toBe('Given is needed.')
    expect(check(noteField(), '')).toEqual({ values: {}, problems: [], improbable: [] })
    const unknown = checkValues({ fields: [number], values: { amountMl: 3, other: 1 }, confirmed: [] })
    expect(unknown.problems[0]?.message).toContain('"other" is not one of them')
  })

  test('a count is judged by its density, dilution included, and needs its volume', () => {
    expect(check(count, { animals: [20, 22], volumeMl: 1, dilution: 10 })).toMatchObject({
      problems: [],
      improbable: [],
    })
    expect(check(count, { animals: [20, 22], volumeMl: 1 }).improbable[0]?.message).toContain('21 is outside the usual')
    expect(check(count, { animals: [6000], volumeMl: 1 }).problems).toHaveLength(1)
    expect(check(count, { animals: [20] }).problems[0]?.message).toContain('the volume counted in mL is needed')
    expect(check(count, { animals: [], volumeMl: 1 }).problems).toHaveLength(1)
  })

  test('parts are judged by their sum', () => {
    const drain = (volumeL: number) => ({ to: 'drain', volumeL })
    expect(check(parts, [drain(2), drain(1.5)])).toMatchObject({ problems: [], improbable: [] })
    expect(check(parts, [drain(3), drain(3)]).improbable).toHaveLength(1)
    expect(check(parts, [drain(8), drain(3)]).problems).toHaveLength(1)
  })

  test('choices and yes or no are held to their words', () => {
    const choices = [{ value: 'a', label: 'A' }]
    expect(check(choiceField({ name: 'one', label: 'One', choices }), 'b').problems).toHaveLength(1)
    expect(check(choicesField({ name: 'many', label: 'Many', choices }), ['a']).values).toEqual({ many: ['a'] })
    expect(check(yesNoField({ name: 'eggs', label: 'Eggs?' }), 'yes').problems).toHaveLength(1)
  })
})

describe('what is read and typed is doubted', () => {
  /** What becomes of a number: kept, asked about, or refused. */
  const becomes = (field: TaskField, typed: number) => {
    const { problems, improbable } = check(field, typed)
    return problems.length > 0 ? 'refused' : improbable.length > 0 ? 'asked' : 'kept'
  }
  const all = (field: TaskField, ...typed: number[]) => typed.map((each) => becomes(field, each))

  test('three degrees or three of salinity from what the water is set to', () => {
    expect(all(temperatureField(26), 23, 29, 22.9, 29.1)).toEqual(['kept', 'kept', 'asked', 'asked'])
    expect(all(temperatureField(26), 0, 40, -0.1, 40.1)).toEqual(['asked', 'asked', 'refused', 'refused'])
    expect(all(salinityField(33), 30, 36, 29.5, 36.5)).toEqual(['kept', 'kept', 'asked', 'asked'])
    expect(all(salinityField(33), 0, 45, -0.5, 45.5)).toEqual(['asked', 'asked', 'refused', 'refused'])
    // Nothing is less than fresh water.
    expect(all(salinityField(2), 0, 5, 5.5)).toEqual(['kept', 'kept', 'asked'])
    expect(salinityField(2)).toMatchObject({ likelyMinimum: 0 })
    // A refractometer's mark is half of one in the thousand; a thermometer's a tenth of a degree.
    expect([salinityField(33), temperatureField(26)]).toMatchObject([{ step: 0.5 }, { step: 0.1 }])
  })

  test('a third or three times of what was to be given, and what was planned never', () => {
    const field = givenAmountField({ name: 'ml', label: 'Given', unit: 'mL', planned: 6, maximum: 30, step: 0.5 })
    expect(all(field, 2, 6, 18, 1.9, 18.1)).toEqual(['kept', 'kept', 'kept', 'asked', 'asked'])
    expect(all(field, 0.5, 30, 0.4, 30.1)).toEqual(['asked', 'asked', 'refused', 'refused'])
    const [little, much] = [0.2, 40].map((planned) =>
      givenAmountField({ name: 'ml', label: 'Given', unit: 'mL', planned, maximum: 30, step: 0.5 }),
    )
    expect([becomes(little!, 0.2), becomes(little!, 0.1), becomes(much!, 40), becomes(much!, 40.1)]).toEqual([
      ...['kept', 'refused', 'kept', 'refused'],
    ])
  })

  test('a fifth beyond the usual lengths of their age, and more deformed than a batch has', () => {
    const length = lengthField({ from: 10, to: 20 })
    expect(all(length, 8, 24, 7.9, 24.1, 0.9, 300.1)).toEqual(['kept', 'kept', 'asked', 'asked', 'refused', 'refused'])
    expect(all(deformedField(), 0, 30, 31, -1)).toEqual(['kept', 'kept', 'asked', 'refused'])
    expect(seenOfYoung({ lengthMm: 12.5, deformed: 2.4 })).toEqual({ lengthMm: 12.5, deformed: 2 })
    expect(seenOfYoung({})).toEqual({})
  })

  test('is asked for only where the task says so', () => {
    expect([temperatureField(26), salinityField(33), lengthField({ from: 1, to: 2 })].map((f) => f.isRequired)).toEqual(
      [...[false, false, false]],
    )
    expect([temperatureField(26, true).isRequired, salinityField(33, true).isRequired]).toEqual([true, true])
  })
})
