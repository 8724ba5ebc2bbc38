import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { effectiveSize } from './effective-size.ts'
import { PedigreeError } from './errors.ts'
import type { PedigreeEntry } from './pedigree.ts'
import { relationships } from './relationships.ts'

/** Any pedigree: each animal draws its parents from those before it, or has none. */
const pedigrees = fc.array(fc.tuple(fc.nat(), fc.nat(), fc.nat(9)), { minLength: 1, maxLength: 40 }).map((draws) =>
  draws.map(([first, second, unknown], index): PedigreeEntry => {
    const sire = index > 0 && unknown !== 0 ? first % index : null
    const dam = index > 0 && unknown !== 1 ? second % index : null
    const sireId = sire === null ? null : `f${sire}`
    return { id: `f${index}`, sireId, damId: dam === null || dam === sire ? null : `f${dam}` }
  }),
)

/** The tabular method as the textbooks write it, whole table and all (Emik & Terrill 1949, J. Hered. 40:51-55). */
function table(pedigree: readonly PedigreeEntry[]): number[][] {
  const numberOf = new Map(pedigree.map(({ id }, index) => [id, index]))
  const parentOf = (id: string | null | undefined) => (id == null ? undefined : numberOf.get(id))
  const a = pedigree.map(() => pedigree.map(() => 0))
  const at = (i: number | undefined, j: number | undefined) =>
    i === undefined || j === undefined ? 0 : (a[i]?.[j] ?? 0)
  pedigree.forEach(({ sireId, damId }, i) => {
    const [sire, dam] = [parentOf(sireId), parentOf(damId)]
    for (let j = 0; j < i; j += 1) {
      const value = (at(j, sire) + at(j, dam)) / 2
      a[i]![j] = value
      a[j]![i] = value
    }
    a[i]![i] = 1 + at(sire, dam) / 2
  })
  return a
}

describe('relationships', () => {
  test('are those of the tabular method, animal by animal', () => {
    fc.assert(
      fc.property(pedigrees, (pedigree) => {
        const kin = relationships(pedigree)
        const expected = table(pedigree)
        pedigree.forEach(({ id }, i) => {
          expect(kin.inbreeding(id)).toBeCloseTo((expected[i]?.[i] ?? 0) - 1, 12)
          pedigree.forEach((other, j) => {
            expect(kin.between(id, other.id)).toBeCloseTo(expected[i]?.[j] ?? 0, 12)
          })
        })
      }),
    )
  })

  test('do not depend on the order of entries or the side one asks from', () => {
    const shuffled = pedigrees.chain((pedigree) =>
      fc.tuple(fc.constant(pedigree), fc.shuffledSubarray(pedigree, { minLength: pedigree.length })),
    )
    fc.assert(
      fc.property(shuffled, fc.nat(), fc.nat(), ([pedigree, turned], first, second) => {
        const a = pedigree[first % pedigree.length]?.id ?? ''
        const b = pedigree[second % pedigree.length]?.id ?? ''
        const [kin, kinTurned] = [relationships(pedigree), relationships(turned)]
        expect(kinTurned.between(b, a)).toBeCloseTo(kin.between(a, b), 12)
        expect(kinTurned.inbreeding(a)).toBeCloseTo(kin.inbreeding(a), 12)
      }),
    )
  })

  test('with oneself are 1 + inbreeding, and founder shares add up to 1', () => {
    fc.assert(
      fc.property(pedigrees, (pedigree) => {
        const kin = relationships(pedigree)
        for (const { id } of pedigree) {
          expect(kin.between(id, id)).toBeCloseTo(1 + kin.inbreeding(id), 12)
          expect(kin.inbreeding(id)).toBeGreaterThanOrEqual(0)
          expect(kin.inbreeding(id)).toBeLessThan(1)
          const shares = kin.founderShares(id).reduce((sum, { share }) => sum + share, 0)
          expect(shares).toBeCloseTo(1, 12)
        }
      }),
    )
  })

  test('of offspring to be come true once they are born', () => {
    fc.assert(
      fc.property(pedigrees, fc.nat(), fc.nat(), (pedigree, first, second) => {
        const sireId = pedigree[first % pedigree.length]?.id ?? ''
        const damId = pedigree[second % pedigree.length]?.id ?? ''
        if (sireId === damId) return
        const foretold = relationships(pedigree).offspringInbreeding({ sireId, damId })
        const born = relationships([{ id: 'young', sireId, damId }, ...pedigree]).inbreeding('young')
        expect(born).toBeCloseTo(foretold, 12)
      }),
    )
  })

  test('are refused for any pedigree with a loop', () => {
    fc.assert(
      fc.property(pedigrees, fc.integer({ min: 1, max: 12 }), (pedigree, length) => {
        const loop = Array.from({ length }, (_, i): PedigreeEntry => ({ id: `l${i}`, sireId: `l${(i + 1) % length}` }))
        expect(() => relationships([...pedigree, ...loop])).toThrow(PedigreeError)
        expect(() => relationships([...pedigree, ...loop])).toThrow(/animal "l\d+" is its own ancestor/)
      }),
    )
  })
})

test('effective size is symmetric, at most the number of breeders and under four times the rarer sex', () => {
  const breeders = fc.integer({ min: 1, max: 100_000 })
  fc.assert(
    fc.property(breeders, breeders, (males, females) => {
      const size = effectiveSize({ males, females })
      expect(effectiveSize({ males: females, females: males })).toBe(size)
      expect(size).toBeLessThanOrEqual(males + females + 1e-9)
      expect(size).toBeLessThan(4 * Math.min(males, females))
    }),
  )
})
