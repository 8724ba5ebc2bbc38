import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cultureFall } from './culture-fall.ts'

/** Evenly drawn: fc.double draws bit patterns, nearly all of them next to 0 where that is allowed. */
const between = (min: number, max: number) => fc.nat(1e6).map((n) => min + ((max - min) * n) / 1e6)

const counted = (...densities: number[]) => ({
  observations: densities.map((densityPerMl, day) => ({ day, densityPerMl, animalsCounted: 150 })),
})

describe('cultureFall', () => {
  it('is seen the first time: 400 to 220 with nothing taken', () => {
    const fall = cultureFall(counted(350, 400, 220))
    expect(fall).toMatchObject({ expectedPerMl: 400, countedPerMl: 220, day: 2, isAgreed: false })
    expect(fall?.lostShare).toBeCloseTo(0.45, 12)
  })

  it('leaves out what was taken', () => {
    const history = { ...counted(350, 400, 220), removals: [{ day: 1, fraction: 0.4 }] }
    expect(cultureFall(history)).toBeNull()
    const fall = cultureFall({ ...counted(350, 400, 130), removals: [{ day: 1, fraction: 0.4 }] })
    expect(fall?.expectedPerMl).toBeCloseTo(240, 9)
    expect(fall?.lostShare).toBeCloseTo(1 - 130 / 240, 9)
  })

  it('counts in what was put in', () => {
    const additions = [{ day: 1, addedPerMl: 200 }]
    expect(cultureFall({ ...counted(100, 100, 150), additions })).toMatchObject({ expectedPerMl: 300, lostShare: 0.5 })
  })

  it('is no fall while the loss is within what two counts may differ by', () => {
    expect(cultureFall(counted(400, 245))).toBeNull()
    expect(cultureFall(counted(400))).toBeNull()
    expect(cultureFall(counted(60, 90, 150, 250))).toBeNull()
  })

  it('is agreed when the next count says the same, at any density', () => {
    expect(cultureFall(counted(400, 220, 210))).toMatchObject({ day: 1, isAgreed: true })
    expect(cultureFall(counted(1200, 600, 640))).toMatchObject({ day: 1, isAgreed: true })
    expect(cultureFall(counted(20, 8, 9))).toMatchObject({ day: 1, isAgreed: true })
  })

  it('is taken back by a count that finds them again', () => {
    expect(cultureFall(counted(400, 220, 390))).toBeNull()
  })

  it('stands until the culture has turned', () => {
    expect(cultureFall(counted(400, 220, 200, 190))).toMatchObject({ isAgreed: true })
    expect(cultureFall(counted(400, 150, 140, 190))).toBeNull()
    // Turned is a quarter more than the lowest count since, not the error of a count.
    expect(cultureFall(counted(400, 150, 140, 174))).toMatchObject({ isAgreed: true })
    expect(cultureFall(counted(400, 150, 140, 176))).toBeNull()
    // Four counts that grow no more say that it holds at what was left.
    expect(cultureFall(counted(400, 150, 140, 150, 145))).toMatchObject({ day: 1 })
    expect(cultureFall(counted(400, 150, 140, 150, 145, 150))).toBeNull()
  })

  it('a fall to nothing is a fall', () => {
    expect(cultureFall(counted(400, 0))).toMatchObject({ lostShare: 1, isAgreed: false })
  })

  it('is never seen in a culture that rises or holds, whatever is taken', () => {
    const densities = fc.array(fc.tuple(between(1, 1.8), between(0, 0.5)), { maxLength: 12 })
    fc.assert(
      fc.property(densities, (steps) => {
        let density = 100
        const observations = [{ day: 0, densityPerMl: density }]
        const removals = steps.map(([, fraction], day) => ({ day, fraction }))
        for (const [day, [growth, fraction]] of steps.entries()) {
          density *= (1 - fraction) * growth
          observations.push({ day: day + 1, densityPerMl: density })
        }
        expect(cultureFall({ observations, removals })).toBeNull()
      }),
    )
  })

  it('is more than two in five, to the animal', () => {
    expect(cultureFall(counted(400, 240))).toBeNull()
    expect(cultureFall(counted(400, 239))).toMatchObject({ day: 1, expectedPerMl: 400, countedPerMl: 239 })
    expect(cultureFall(counted(10, 20))).toBeNull()
  })

  it('is measured from the count before it to the count, what was done on a count’s own day coming after it', () => {
    const after = { ...counted(400, 200), removals: [{ day: 1, fraction: 0.5 }] }
    expect(cultureFall(after)).toMatchObject({ expectedPerMl: 400, lostShare: 0.5 })
    expect(cultureFall({ ...counted(400, 200), removals: [{ day: 0, fraction: 0.5 }] })).toBeNull()
    // 100 put in and then half taken leave 200 of 300.
    const both = { additions: [{ day: 0, addedPerMl: 100 }], removals: [{ day: 0, fraction: 0.5 }] }
    expect(cultureFall({ ...counted(300, 100), ...both })).toMatchObject({ expectedPerMl: 200, lostShare: 0.5 })
  })

  it('is turned only by a third count, and by growth over what was taken meanwhile', () => {
    expect(cultureFall(counted(400, 150, 200))).toMatchObject({ isAgreed: true, countedPerMl: 200, lostShare: 0.5 })
    const thinned = { ...counted(400, 150, 140, 100), removals: [{ day: 2, fraction: 0.5 }] }
    expect(cultureFall(thinned)).toBeNull()
    expect(cultureFall({ ...thinned, removals: [] })).toMatchObject({ day: 1, expectedPerMl: 400, lostShare: 0.75 })
  })

  it('is looked for in the last four counts, the oldest of them included', () => {
    expect(cultureFall(counted(400, 150, 150, 150, 150))).toMatchObject({ day: 1 })
    expect(cultureFall(counted(400, 150, 150, 150, 150, 150))).toBeNull()
    // Of two falls the later counts.
    expect(cultureFall(counted(1000, 400, 150))).toMatchObject({ day: 2, expectedPerMl: 400, isAgreed: false })
  })
})
