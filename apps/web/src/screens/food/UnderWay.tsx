'use client'

import type { FoodView, PlainDate } from '@fryward/shared'
import { sayFoodChange } from '@fryward/words'
import { FormProblem } from '@/base/forms/Form.tsx'
import { useMay, useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Section } from '@/base/ui/Page.tsx'
import { useStrikeFact } from '@/parts/facts/queries.ts'
import styles from './food.module.css'

type Cure = FoodView['underWay'][number]
type Props = { underWay: readonly Cure[]; today: PlainDate; nameOf: (id: string) => string }

/** What was chosen so that food lasts: the list has its tasks, the plan counts on it, and it can be taken back. */
export function UnderWay({ underWay, today, nameOf }: Props) {
  if (underWay.length === 0) return null
  return (
    <Section title="Under way">
      <p className={styles.soft}>The plan counts on these, and the list asks for what there is to do.</p>
      <ul className={styles.cures}>
        {underWay.map((cure) => (
          <ChosenCure key={cure.factId} {...{ cure, today, nameOf }} />
        ))}
      </ul>
    </Section>
  )
}

function ChosenCure({ cure, today, nameOf }: { cure: Cure; today: PlainDate; nameOf: Props['nameOf'] }) {
  const voice = useVoice()
  const room = useRoom()
  const mayRecord = useMay('record')
  const said = sayFoodChange(cure.change, { nameOf, today, voice })
  const strike = useStrikeFact(room.id, cure.factId, { about: said })
  return (
    <li className={styles.cure}>
      <span>{said}</span>
      {mayRecord && (
        <Button
          isBusy={strike.isPending}
          aria-label={`Undo: ${said}`}
          onClick={() => strike.mutate({ reason: 'Taken back on the plan of the food' })}
        >
          Undo
        </Button>
      )}
      <FormProblem error={strike.error} />
    </li>
  )
}
