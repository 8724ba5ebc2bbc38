import { describe, expect, test } from 'vitest'
import { effectiveSize, inbreedingPerGeneration } from './effective-size.ts'
import { ArgumentError, PedigreeError, type PedigreeProblem } from './errors.ts'
import type { PedigreeEntry } from './pedigree.ts'
import { offspringInbreeding, relationships } from './relationships.ts'

const family: PedigreeEntry[] = [
  { id: 'wild male' },
  { id: 'wild female' },
  { id: 'son', sireId: 'wild male', damId: 'wild female' },
  { id: 'daughter', sireId: 'wild male', damId: 'wild female' },
  { id: 'grandchild', sireId: 'son', damId: null },
]

describe('relationships', () => {
  test('takes wild-caught and unknown parents as unrelated founders, and names them', () => {
    const kin = relationships(family)
    expect(kin.between('wild male', 'wild female')).toBe(0)
    expect([...kin.founders].sort()).toEqual(['wild female', 'wild male'])
    expect(kin.halfKnown).toEqual(['grandchild'])
  })

  test('knows parents, sibs, nephews and oneself', () => {
    const kin = relationships(family)
    expect(kin.between('wild male', 'son')).toBe(0.5)
    expect(kin.between('son', 'daughter')).toBe(0.5)
    expect(kin.between('daughter', 'grandchild')).toBe(0.25)
    expect(kin.between('son', 'son')).toBe(1)
    expect(kin.inbreeding('son')).toBe(0)
  })

  test('says how much of each founder an animal carries, and how much is unknown', () => {
    const shares = relationships(family).founderShares('grandchild')
    expect(shares).toHaveLength(3)
    expect(shares).toContainEqual({ animalId: 'grandchild', role: 'unknown dam', share: 0.5 })
    expect(shares).toContainEqual({ animalId: 'wild male', role: 'founder', share: 0.25 })
    expect(shares).toContainEqual({ animalId: 'wild female', role: 'founder', share: 0.25 })
  })

  test('lets one fish be sire first and dam later', () => {
    const kin = relationships([
      { id: 'changes sex' },
      { id: 'x' },
      { id: 'y' },
      { id: 'first', sireId: 'changes sex', damId: 'x' },
      { id: 'second', sireId: 'y', damId: 'changes sex' },
    ])
    expect(kin.between('first', 'second')).toBe(0.25)
  })

  test('holds 10,000 animals of 20 generations', () => {
    const perGeneration = 500
    const pedigree = Array.from({ length: 10_000 }, (_, index): PedigreeEntry => {
      const before = Math.floor(index / perGeneration) - 1
      if (before < 0) return { id: `fish ${index}` }
      const sire = before * perGeneration + ((index * 7919) % 250)
      const dam = before * perGeneration + 250 + ((index * 104_729) % 250)
      return { id: `fish ${index}`, sireId: `fish ${sire}`, damId: `fish ${dam}` }
    })
    const kin = relationships(pedigree)
    const inbred = pedigree.filter(({ id }) => kin.inbreeding(id) > 0)
    // Strangers breed only strangers' young for one generation; 250 pairs cannot stay unrelated for 20.
    expect(inbred.length).toBeGreaterThan(7000)
    const { id, sireId, damId } = pedigree.at(-1) ?? { id: '' }
    expect(kin.inbreeding(id)).toBeCloseTo(kin.between(sireId ?? '', damId ?? '') / 2, 12)
  })
})

describe('offspringInbreeding', () => {
  test('of full sibs is a quarter, whichever of them is the sire', () => {
    expect(offspringInbreeding(family, { sireId: 'son', damId: 'daughter' })).toBe(0.25)
    expect(offspringInbreeding(family, { sireId: 'daughter', damId: 'son' })).toBe(0.25)
    expect(offspringInbreeding(family, { sireId: 'wild male', damId: 'wild female' })).toBe(0)
  })

  test.each<[string, string, PedigreeProblem, string]>([
    ['nobody', 'son', 'unknown-id', 'animal "nobody" is not in the pedigree'],
    ['son', 'nobody', 'unknown-id', 'animal "nobody" is not in the pedigree'],
    ['son', 'son', 'same-parent-twice', 'animal "son" is named as sire and dam'],
  ])('refuses %s and %s', (sireId, damId, problem, message) => {
    const ask = () => offspringInbreeding(family, { sireId, damId })
    expect(ask).toThrow(PedigreeError)
    expect(ask).toThrow(expect.objectContaining({ problem, animalId: sireId === 'nobody' ? sireId : damId }))
    expect(ask).toThrow(message)
  })
})

describe('a pedigree that cannot be true is refused by the name of an animal', () => {
  test.each<[PedigreeProblem, string, PedigreeEntry[], RegExp]>([
    ['missing-id', '', [{ id: '' }], /entry 0 of the pedigree has no id/],
    ['duplicate-id', 'a', [{ id: 'a' }, { id: 'a' }], /animal "a" is in the pedigree twice/],
    ['unknown-id', 'z', [{ id: 'a', damId: 'z' }], /animal "a" has dam "z", which is not in the pedigree/],
    ['same-parent-twice', 'b', [{ id: 'a' }, { id: 'b', sireId: 'a', damId: 'a' }], /"b" has "a" as sire and dam/],
    ['loop', 'a', [{ id: 'a', sireId: 'a' }], /animal "a" is its own ancestor: "a" out of "a"/],
    [
      'loop',
      'b',
      [{ id: 'child', sireId: 'b' }, { id: 'b', sireId: 'c' }, { id: 'c', damId: 'b' }, { id: 'free' }],
      /animal "b" is its own ancestor: "b" out of "c" out of "b"/,
    ],
    ['bad-date', 'a', [{ id: 'a', bornOn: '01/02/2024' }], /animal "a" has bornOn "01\/02\/2024"; allowed: a date/],
    ['bad-date', 'a', [{ id: 'a', bornOn: '2024-13-01' }], /animal "a" has bornOn "2024-13-01"/],
    [
      'parent-younger-than-child',
      'b',
      [
        { id: 'a', bornOn: '2024-02-01' },
        { id: 'b', damId: 'a', bornOn: '2024-01-31' },
      ],
      /animal "b" \(born 2024-01-31\) has dam "a" born 2024-02-01; allowed: a parent born before its child/,
    ],
    [
      'parent-younger-than-child',
      'b',
      [
        { id: 'a', bornOn: '2024-02-01' },
        { id: 'b', sireId: 'a', bornOn: '2024-02-01' },
      ],
      /has sire "a" born 2024-02-01/,
    ],
  ])('%s, "%s"', (problem, animalId, pedigree, message) => {
    expect(() => relationships(pedigree)).toThrow(message)
    expect(() => relationships(pedigree)).toThrow(expect.objectContaining({ problem, animalId }))
  })

  test('but a pedigree with some dates is taken', () => {
    const kin = relationships([
      { id: 'b', sireId: 'a', bornOn: '2024-02-01' },
      { id: 'a', bornOn: '2023-02-01' },
      { id: 'c', sireId: 'b' },
    ])
    expect(kin.between('a', 'c')).toBe(0.25)
  })
})

describe('effectiveSize', () => {
  test('is the number of breeders when the sexes are even', () => {
    expect(effectiveSize({ males: 25, females: 25 })).toBe(50)
    expect(inbreedingPerGeneration({ effectiveSize: 50 })).toBe(0.01)
  })

  test.each([0, -1, 2.5, Number.NaN, Number.POSITIVE_INFINITY])('refuses %d males or females', (bad) => {
    expect(() => effectiveSize({ males: bad, females: 3 })).toThrow(ArgumentError)
    expect(() => effectiveSize({ males: bad, females: 3 })).toThrow(`males is ${bad}; allowed: a whole number from 1`)
    expect(() => effectiveSize({ males: 3, females: bad })).toThrow(`females is ${bad}`)
  })

  test.each([0, 0.4, Number.NaN])('refuses an effective size of %d', (bad) => {
    expect(() => inbreedingPerGeneration({ effectiveSize: bad })).toThrow(`effectiveSize is ${bad}`)
  })
})
