import type { FoodOutlook } from '@fryward/shared'
import { type NumberVoice, sayEater, sayPercent } from '@fryward/words'
import { hatchedBy } from '@/parts/food/hatched-by.ts'
import type { Ends } from './FlowChart.tsx'

type Day = FoodOutlook['days'][number]
type Culture = FoodOutlook['cultures'][number]

const whyNot: Record<Culture['standing'], string> = {
  gives: 'feeds nobody today',
  too_young: 'too young to give',
  backup: 'backup, left alone',
  in_doubt: 'in doubt, feeds nobody',
  falling: 'falling, feeds nobody',
  not_counted: 'not counted',
  chilled: 'kept until the plan asks for it',
}

// Less likely than that, nobody sets a plate for it yet.
const leastHatched = 0.05

/** Who stands on each side on a day: every culture, and all that eat or may have hatched by then. */
export function endsOf({ cultures, eaters }: FoodOutlook, day: Day, voice: NumberVoice): Ends {
  return {
    cultures: cultures.map(({ id, name, standing }) => ({ id, name, note: whyNot[standing] })),
    eaters: eaters
      .filter((eater) => hatchedBy(eater, day.date) >= leastHatched)
      .filter(({ id }) => (day.eaters.find((each) => each.id === id)?.wanted ?? 0) > 0)
      .map((eater) => {
        const hatched = hatchedBy(eater, day.date)
        const note = hatched < 0.995 ? `${sayPercent(hatched, voice)} hatched` : ''
        return { id: eater.id, name: sayEater(eater), note }
      }),
  }
}
