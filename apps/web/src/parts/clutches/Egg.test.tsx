import { eggStages } from '@fryward/shared'
import { render } from '@testing-library/react'
import { expect, test } from 'vitest'
import { EggSample } from './Egg.tsx'

/** What is left of a drawing for whoever tells no colours apart. */
const shapesOf = (markup: string) => markup.replaceAll(/data-stage="\w+"|var\(--[\w-]+\)/g, '')

test('the stages of an egg are told apart without colour', () => {
  const drawn = eggStages.map((stage) => shapesOf(render(<EggSample stage={stage} size={20} />).container.innerHTML))
  expect(new Set(drawn).size).toBe(eggStages.length)
})
