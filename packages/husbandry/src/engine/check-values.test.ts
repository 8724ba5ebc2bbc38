import type { TaskField } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import { choiceField, choicesField, countField, noteField, numberField, yesNoField } from '../task/fields.ts'
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
