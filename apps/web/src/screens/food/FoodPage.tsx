'use client'

import type { FoodAnswer } from '@fryward/shared'
import { sayFoodAhead } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { LinkButton } from '@/base/ui/Button.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Page } from '@/base/ui/Page.tsx'
import { NoPlanYet } from '@/parts/food/NoPlanYet.tsx'
import { PlanAge } from '@/parts/food/PlanAge.tsx'
import { foodOptions } from '@/parts/food/queries.ts'
import { FoodAhead } from './FoodAhead.tsx'
import styles from './food.module.css'
import { chartHeight } from './food-lanes.ts'
import { NothingToPlan } from './NothingToPlan.tsx'

const isBare = ({ outlook: { cultures, eaters, gaps } }: FoodAnswer): boolean =>
  cultures.length + eaters.length + gaps.length === 0

/** Mouths and food over the next weeks, the first day of worry, and what would help. */
export function FoodPage() {
  const room = useRoom()
  const voice = useVoice()
  const query = useQuery(foodOptions(room.id))
  const plan = query.data?.plan
  const today = plan?.outlook.days[0]?.date
  return (
    <Page
      title="Food ahead"
      lead={plan && <PlanAge plan={plan} />}
      aside={<LinkButton href={`/rooms/${room.id}/who-eats`}>Who eats from what</LinkButton>}
    >
      <Loaded query={query} skeleton={<Bones heights={[3, chartHeight / 16, 10]} />} what="The plan">
        {(view) =>
          view.plan && isBare(view.plan) ? (
            <NothingToPlan />
          ) : view.plan && today ? (
            <>
              <p className={styles.sentence}>{sayFoodAhead(view.plan.outlook, { today, voice })}</p>
              <FoodAhead key={view.plan.madeAt} answer={view.plan} underWay={view.underWay} today={today} />
            </>
          ) : (
            <NoPlanYet />
          )
        }
      </Loaded>
    </Page>
  )
}
