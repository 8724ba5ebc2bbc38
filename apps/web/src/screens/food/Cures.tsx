'use client'

import type { FoodAnswer, FoodCure, Instant, PlainDate } from '@fryward/shared'
import { sayAfter, sayFoodChange, sayNumber } from '@fryward/words'
import { useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Section } from '@/base/ui/Page.tsx'
import { ChooseCure } from './ChooseCure.tsx'
import styles from './food.module.css'

type Props = {
  answer: FoodAnswer & { madeAt: Instant }
  today: PlainDate
  nameOf: (id: string) => string
  shown: FoodCure | null
  onShow: (cure: FoodCure | null) => void
}

/** What would help, in the order in which a breeder thinks of it; each shows the picture after it. */
export function Cures({ answer, today, nameOf, shown, onShow }: Props) {
  const voice = useVoice()
  const { outlook, cures } = answer
  if (!outlook.worry) return null
  return (
    <Section title="What would help">
      {cures.length === 0 ? (
        <Notice tone="worry" title="Nothing that was tried helps enough">
          <p>
            About {sayNumber(outlook.shortTotal, voice)} rotifers will be missing in all. Leave clutches with their
            parents, and ask other breeders for rotifers.
          </p>
        </Notice>
      ) : (
        <ul className={styles.cures}>
          {cures.map((cure) => (
            <li key={JSON.stringify(cure.change)} className={styles.cure}>
              <Button
                className={styles.cureButton ?? ''}
                aria-pressed={shown === cure}
                onClick={() => onShow(shown === cure ? null : cure)}
              >
                {sayFoodChange(cure.change, { nameOf, today, voice })}
              </Button>
              <span className={styles.soft}>{sayAfter(cure, outlook, { today, voice })}</span>
              {shown === cure && (
                <ChooseCure
                  cure={cure}
                  planMadeAt={answer.madeAt}
                  said={sayFoodChange(cure.change, { nameOf, today, voice })}
                  onChosen={() => onShow(null)}
                />
              )}
            </li>
          ))}
        </ul>
      )}
    </Section>
  )
}
