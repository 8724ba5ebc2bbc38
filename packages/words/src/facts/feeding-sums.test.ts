import { sumFeedings } from '@fryward/words'
import { describe, expect, it } from 'vitest'

describe('feedings added up', () => {
  it('come food by food, in every measure they were all given by', () => {
    expect(
      sumFeedings([
        { food: 'rotifers', amountMl: 320, animals: 70_000 },
        { food: 'concentrate', amountMl: 0.06 },
        { food: 'rotifers', amountMl: 1400, animals: 330_000 },
      ]),
    ).toEqual([
      { food: 'rotifers', animals: 400_000, volumeMl: 1720 },
      { food: 'concentrate', volumeMl: 0.06 },
    ])
  })

  it('say no sum where one of them did not say how much', () => {
    expect(sumFeedings([{ food: 'frozen', amountG: 2 }, { food: 'frozen' }])).toEqual([{ food: 'frozen' }])
  })
})
