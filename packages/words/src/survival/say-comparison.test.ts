import { describe, expect, it } from 'vitest'
import { sayComparison, sayGroup } from './say-comparison.ts'

const voice = { locale: 'en-GB' } as const
const group = (key: string) => ({
  ...{ key, name: key, clutches: 4, animals: 200, deaths: 60, curve: [], followedToDay: 30, atRisk: [] },
  ...{ medianDays: null, deathsAgainstExpected: 1 },
})
const differ = (by: 'green_water' | 'artemia_day', best: string, worst: string) =>
  sayComparison(
    {
      ...{
        by,
        cares: ['nest'],
        groups: [group(best), group(worst)],
        conclusion: 'differ',
        best,
        worst,
        hasFewDeaths: true,
      },
      ...{ byAnimal: null, byClutch: null },
    },
    voice,
  )

describe('groups by what the first feeds were', () => {
  it('are called by what was given', () => {
    const named = (by: 'green_water' | 'artemia_day', key: string) => sayGroup({ key, name: key }, by)
    expect([named('green_water', 'with'), named('green_water', 'without')]).toEqual([
      'with green water',
      'without green water',
    ])
    expect([named('artemia_day', '4'), named('artemia_day', 'later')]).toEqual(['day 4', 'after day 5, or never'])
  })

  it('say what may be concluded, that numbers are small, and who stands among those that began late', () => {
    const { may, mayNot } = differ('artemia_day', '4', 'later')
    expect(may).toContain(
      'The young given Artemia from day 4 on lived longer than those given Artemia after day 5 or never',
    )
    expect(mayNot).toContain(
      'A clutch that died before its first Artemia counts among those that began after day 5 or never.',
    )
    expect(mayNot).toContain('The numbers are small')
    const green = differ('green_water', 'with', 'without')
    expect(green.may).toContain('The young with green water lived longer than those without green water')
    expect(green.mayNot).not.toContain('died before')
  })
})
