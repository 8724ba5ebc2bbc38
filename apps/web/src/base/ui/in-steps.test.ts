import { expect, it } from 'vitest'
import { inSteps } from './in-steps.ts'

it('loads piece after piece, hears what waits between them, and then loads what is made of them', async () => {
  const seen: string[] = []
  const piece = (name: string) => async () => {
    seen.push(name)
    setTimeout(() => seen.push(`a tap after ${name}`))
  }
  const load = inSteps([piece('dates'), piece('fields')], async () => 'the sheet')
  expect(await load()).toBe('the sheet')
  expect(seen).toEqual(['dates', 'a tap after dates', 'fields', 'a tap after fields'])
})
