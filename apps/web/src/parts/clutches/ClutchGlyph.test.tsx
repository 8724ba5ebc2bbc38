import { type Clutch, careKinds } from '@fryward/shared'
import { render } from '@testing-library/react'
import { expect, test } from 'vitest'
import { ClutchGlyph } from './ClutchGlyph.tsx'

const drawn = (given: Pick<Clutch, 'care' | 'state'>) => {
  const clutch = { ...given, nights: [], spawnedAt: '2026-03-01T12:00:00.000Z', ageDays: 3 } as unknown as Clutch
  return render(<ClutchGlyph size={40} clutch={clutch} />).container
}
const stagesIn = (drawing: Element) => [...drawing.querySelectorAll('g')].map((egg) => egg.getAttribute('data-stage'))

test('eggs on a nest, in a mouth, in a pouch and afloat are four drawings', () => {
  const drawings = careKinds.map((care) => drawn({ care, state: 'incubating' }).innerHTML)
  expect(new Set(drawings).size).toBe(careKinds.length)
})

test('what has hatched is drawn without an egg in it, wherever it was', () => {
  for (const care of careKinds) {
    expect(stagesIn(drawn({ care, state: 'incubating' }))).not.toContain(null)
    expect(new Set(stagesIn(drawn({ care, state: 'hatched' })))).toEqual(new Set([null]))
  }
})
