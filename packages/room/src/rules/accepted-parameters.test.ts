import { rules } from '@fryward/husbandry'
import { expect, test } from 'vitest'
import { RoomError } from '../errors.ts'
import { acceptedParameters } from './accepted-parameters.ts'

const wrongValues = [-1e9, 1e9, 'a lot', '', true, null, [], {}]
// What zod's own sentences and ours would share only by mistake.
const validatorsWords = /\b(invalid|expected|received|unrecognized|too small|too big|nan|undefined|null)\b/i

test('what no rule can be set to is answered with what to give instead, never in a validator’s own words', () => {
  const said = rules.flatMap((rule) =>
    [...Object.keys(rule.parameters), 'unheardOf'].flatMap((name) =>
      wrongValues.flatMap((value) => {
        try {
          acceptedParameters(rule, { [name]: value } as never)
          return []
        } catch (error) {
          if (error instanceof RoomError) return (error.fields ?? []).map(({ message }) => message)
          throw error
        }
      }),
    ),
  )
  expect(said.length).toBeGreaterThan(500)
  expect([...new Set(said)].filter((message) => validatorsWords.test(message) || !/: give /.test(message))).toEqual([])
})
