import { rules } from '@fryward/husbandry'
import { expect, test } from 'vitest'
import { RoomError } from '../errors.ts'
import { acceptedParameters } from './accepted-parameters.ts'
import { findRule } from './find-rule.ts'

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

test('a refused setting names its rule, and what equals the default is not kept as a change', () => {
  const rule = findRule('rotifer-harvest')
  const refused = (() => {
    try {
      return acceptedParameters(rule, { mostShare: 1e9, floorPerMl: 40 })
    } catch (error) {
      return error
    }
  })()
  expect(refused).toMatchObject({ code: 'invalid_input', message: expect.stringContaining(`"${rule.title}"`) })
  const { label, default: usual } = rule.parameters.mostShare!
  expect((refused as RoomError).fields).toEqual([
    expect.objectContaining({ path: 'parameters.mostShare', message: expect.stringMatching(`^${label}: give `) }),
  ])
  expect(acceptedParameters(rule, { mostShare: usual, floorPerMl: 40 })).toEqual({ floorPerMl: 40 })
  expect(acceptedParameters(rule, { mostShare: Number(usual) / 2 })).toEqual({ mostShare: Number(usual) / 2 })
  expect(() => findRule('rule of long ago')).toThrow('There is no rule "rule of long ago"')
})
