import type { SurvivalComparison } from '@fryward/shared'
import { compareGroups } from '@fryward/survival'
import { sayComparison } from '@fryward/words'
import { describe, expect, it } from 'vitest'

const voice = { locale: 'en-GB' } as const

/** "6 6+ 7" is two deaths, at 6 and 7, and one last seen alive at 6; each stands for a clutch of its own. */
const each = (text: string) =>
  text.split(' ').map((word) => [{ time: Number.parseFloat(word), event: !word.endsWith('+') }])

function compared(groups: ReturnType<typeof each>[], names: string[]): SurvivalComparison {
  const { conclusion, best, worst, byAnimal, byCluster, hasFewDeaths } = compareGroups({ groups })
  const key = (index: number | null) => (index === null ? null : names[index]!)
  return {
    ...{ by: 'pair', cares: ['nest'], days: [], leftOut: [], best: key(best), worst: key(worst), hasFewDeaths },
    conclusion: conclusion === 'too_few_clusters' ? 'too_few_clutches' : conclusion,
    groups: groups.map((group, index) => ({
      ...{ key: names[index]!, name: names[index]!, clutches: group.length, animals: group.length, deaths: 0 },
      ...{ curve: [], followedToDay: 0, atRisk: [], medianDays: null, deathsAgainstExpected: null },
    })),
    byAnimal,
    byClutch: byCluster,
  }
}

describe('what groups show', () => {
  // Freireich et al. 1963, Blood 21:699-716: weeks in remission.
  const sixMp = each('6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+')
  const placebo = each('1 1 2 2 3 4 4 5 5 8 8 8 8 11 11 12 12 15 17 22 23')

  it('is told of a published trial as its authors concluded, without the cause that only the lot could give', () => {
    expect(sayComparison(compared([sixMp, placebo], ['6-MP', 'placebo']), voice)).toEqual({
      may: 'The young of 6-MP lived longer than those of placebo: more than clutches differ by chance (p < 0.001, by whole clutches).',
      mayNot:
        'It does not say why: the clutches were not put into these groups by lot, and whatever else differed between them may be the cause.',
    })
  })

  it('is nothing where three stand against three, however they differ', () => {
    const said = sayComparison(compared([each('1 2 2'), each('9 9 9+')], ['A', 'B']), voice)
    expect(said.may).toMatch(/^So few clutches can show no difference, however large; animal by animal, p = 0\.0\d+\.$/)
    expect(said.mayNot).toMatch(
      /^Nothing may be concluded from 3 and 3 clutches, .+ p = 0\.1: .+ The numbers are small/,
    )
  })

  it('is no proof of sameness where no difference is shown', () => {
    const said = sayComparison(compared([each('1 3 5 7 9 9+'), each('2 4 6 8 9 9+')], ['A', 'B']), voice)
    expect(said.may).toMatch(/^No difference is shown \(p = /)
    expect(said.mayNot).toMatch(/^It does not say that there is none/)
  })

  it('names the season that it is told as months', () => {
    const two = compared([each('1 1 1 1'), each('8 9 9+ 9+')], ['dec_feb', 'jun_aug'])
    expect(sayComparison({ ...two, by: 'season' }, voice).may).toContain('June to August lived longer')
  })

  it('names foods that young were first fed', () => {
    const two = compared([each('1 1 1 1'), each('8 9 9+ 9+')], ['rotifers', 'rotifers artemia green_water'])
    expect(sayComparison({ ...two, by: 'protocol' }, voice).may).toContain(
      'The young first fed rotifers, Artemia and green water lived longer than those first fed rotifers:',
    )
  })

  it('is nothing in a room with one group, or none', () => {
    const none = { ...compared([each('1'), each('2')], ['A', 'B']), conclusion: 'one_group' as const }
    expect(sayComparison({ ...none, groups: [] }, voice).may).toBe('No clutch can be compared yet.')
    const one = { ...none, groups: none.groups.slice(0, 1) }
    expect(sayComparison(one, voice).may).toBe('There is one group only.')
    expect(sayComparison(one, voice).mayNot).toMatch(/counted again after the hatch\.$/)
    expect(sayComparison({ ...one, cares: ['pouch'] }, voice).mayNot).toMatch(/counted again after the release\.$/)
  })
})
