import { expect, test } from 'vitest'
import { broodWords, sayClutchState, sayComing, sayOut } from './brood.ts'
import { sayLeftOut, sayStage } from './survival.ts'

test('eggs of a nest or afloat hatch, and a brood in a mouth or a pouch is released', () => {
  const said = (['nest', 'pelagic', 'mouth', 'pouch'] as const).map((care) => broodWords(care).out)
  expect(said).toEqual(['Hatched', 'Hatched', 'Released', 'Released'])
  expect(broodWords(undefined).many).toBe('larvae')
})

test('several clutches are said by all that they are', () => {
  expect([sayComing(['nest', 'pelagic']), sayComing(['mouth', 'pouch'])]).toEqual(['hatch', 'release'])
  expect([sayComing(['mouth', 'nest']), sayOut(['mouth', 'nest'])]).toEqual(['hatch or release', 'hatched or released'])
  expect(sayComing([])).toBe('hatch')
  expect(sayLeftOut('not_hatched', ['pouch'])).toBe('not released, or not raised')
  expect(sayLeftOut('several', ['pouch'])).toBe('in more than one group at once')
})

test('a clutch says where it is until it is out', () => {
  const stateOf = (care: Parameters<typeof broodWords>[0] & string, state: 'incubating' | 'hatched' | 'lost') =>
    sayClutchState({ care, state })
  expect((['nest', 'mouth', 'pouch', 'pelagic'] as const).map((care) => stateOf(care, 'incubating'))).toEqual([
    'Eggs in the nest',
    'Carried in a mouth',
    'Carried in a pouch',
    'Eggs floating in open water',
  ])
  expect([stateOf('nest', 'hatched'), stateOf('pouch', 'hatched'), stateOf('pouch', 'lost')]).toEqual([
    'Hatched',
    'Released',
    'Lost',
  ])
})

test('young that are released never settle: the stage is where they are moved to', () => {
  expect([sayStage('settled', 'nest'), sayStage('settled', 'mouth')]).toEqual(['Settled', 'In grow-out'])
  expect([sayStage('laid', 'nest'), sayStage('laid', 'mouth'), sayStage('day_5', 'mouth')]).toEqual([
    'Eggs laid',
    'Brood',
    'Day 5',
  ])
})
