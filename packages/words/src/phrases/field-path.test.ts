import { expect, test } from 'vitest'
import { sayFieldPath } from './field-path.ts'

test('a field is called what a person would call it', () => {
  const said = ['volumeL', 'data.startDensityPerMl', 'temperatureC', 'name', 'rounds.1.at', 'data.animals.0'].map(
    sayFieldPath,
  )
  expect(said).toEqual(['volume', 'start density', 'temperature', 'name', 'at of number 2', 'animals 1'])
})
