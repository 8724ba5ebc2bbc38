import { TaskFieldSchema } from '@fryward/shared'
import { expect, test } from 'vitest'
import * as fields from './fields.ts'

const named = { name: 'looks', label: 'How it looks' }
const choices = [{ value: 'clear', label: 'Clear' }]
const all = [
  fields.choiceField({ ...named, choices }),
  fields.choicesField({ ...named, choices }),
  fields.yesNoField(named),
  fields.textField(named),
  fields.noteField(),
  fields.temperatureField(26),
  fields.salinityField(33),
  fields.deformedField(),
  fields.lengthField({ from: 10, to: 20 }),
  fields.countField({ ...named, unit: 'per_mL', maximum: 5000, likely: [100, 900] }),
  fields.givenAmountField({ ...named, unit: 'mL', planned: 6, maximum: 30, step: 0.5 }),
]

test('a field is what the contract says, asks for nothing by itself, and says a sentence or nothing', () => {
  for (const field of all) {
    expect(TaskFieldSchema.parse(field)).toEqual(field)
    expect(field).toMatchObject({ isRequired: false, label: expect.stringMatching(/^[A-Z]./) })
    if (field.help !== null) expect(field.help).toMatch(/^[A-Z].*\.$/)
  }
  expect(all.map(({ type }) => type)).toEqual([
    ...['choice', 'choices', 'yes_no', 'text', 'text', 'number', 'number', 'number', 'number', 'count', 'number'],
  ])
  expect(all.slice(0, 2)).toMatchObject([{ choices }, { choices }])
  const asked = { ...named, isRequired: true, help: 'Look twice.' }
  expect(fields.yesNoField(asked)).toEqual({ type: 'yes_no', ...asked })
})

test('what is read and typed goes by the name that its fact has, in its unit', () => {
  const [note, temperature, salinity, deformed, length] = all.slice(4)
  expect([note, temperature, salinity, deformed, length]).toMatchObject([
    { name: 'note' },
    { name: 'temperatureC', unit: 'degC', usual: null },
    { name: 'salinity', unit: 'psu', usual: null },
    { name: 'deformed', unit: 'animals', minimum: 0, step: 1 },
    { name: 'lengthMm', unit: 'mm', step: 1, usual: null },
  ])
  expect(fields.noteField('Why?').label).toBe('Why?')
  expect(fields.deformedField('A bent tail.', 'Bent ones')).toMatchObject({ label: 'Bent ones', help: 'A bent tail.' })
})

test('a count is of three samples of 1 mL and asks for no eggs, unless said otherwise (Pfeiffer & Ludwig 2002)', () => {
  const given = { ...named, unit: 'per_mL', maximum: 5000, likely: [100, 900] } as const
  expect(fields.countField(given)).toMatchObject({
    ...{ minimum: 0, maximum: 5000, likelyMinimum: 100, likelyMaximum: 900, usual: null },
    ...{ volumeMl: 1, replicates: 3, withEggs: false },
  })
  const other = { usual: 400, volumeMl: 5, replicates: 1, withEggs: true }
  expect(fields.countField({ ...given, ...other })).toMatchObject(other)
})

test('what was planned is ghosted, and a number steps by one where nobody says otherwise', () => {
  expect(all.at(-1)).toMatchObject({ usual: 6, step: 0.5, unit: 'mL' })
  const number = { ...named, unit: null, minimum: 0, maximum: 9, likely: [1, 2] } as const
  expect(fields.numberField(number)).toMatchObject({ usual: null, step: 1, likelyMinimum: 1, likelyMaximum: 2 })
  expect(fields.numberField({ ...number, usual: 1.5, step: 0.1 })).toMatchObject({ usual: 1.5, step: 0.1 })
})
