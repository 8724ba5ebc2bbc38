import type { TaskField } from '@fryward/shared'
import { expect, test } from 'vitest'
import { readField } from './field-draft.ts'

const rotifers: TaskField = {
  type: 'count',
  name: 'count',
  label: 'Rotifers',
  isRequired: true,
  help: null,
  unit: 'per_mL',
  minimum: 0,
  maximum: 5000,
  likelyMinimum: 80.7,
  likelyMaximum: 726,
  volumeMl: 1,
  usual: null,
  replicates: 3,
  withEggs: false,
}

const typed = (animals: string[], dilution: string) =>
  readField(
    rotifers,
    { kind: 'count', animals, volumeMl: '1', dilution, eggs: '', females: '' },
    { units: 'metric', locale: 'en-GB' },
  )

test('a count whose dilution was left out is asked about, with bounds of two digits', () => {
  expect(typed(['34', '36', '32'], '1')).toMatchObject({
    is: 'value',
    improbable: 'Rotifers: 34 per mL. Likely here: 81 to 730.',
  })
})

test('the same count with its dilution is asked about no more', () => {
  expect(typed(['34', '36', '32'], '10')).not.toHaveProperty('improbable')
})
