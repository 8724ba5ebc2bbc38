'use client'

import { useQuery } from '@tanstack/react-query'
import { useRoom } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { LinkButton } from '@/base/ui/Button.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Page } from '@/base/ui/Page.tsx'
import { NoPlanYet } from '@/parts/food/NoPlanYet.tsx'
import { PlanAge } from '@/parts/food/PlanAge.tsx'
import { foodOptions } from '@/parts/food/queries.ts'
import styles from '@/parts/things/things.module.css'
import { WhoEats } from './WhoEats.tsx'

/** Which batch eats from which culture, today and on any day of the plan. */
export function WhoEatsPage() {
  const room = useRoom()
  const query = useQuery(foodOptions(room.id))
  const plan = query.data?.plan
  return (
    <div className={styles.wide}>
      <Page
        title="Who eats from what"
        lead={plan && <PlanAge plan={plan} />}
        aside={<LinkButton href={`/rooms/${room.id}/food`}>Food ahead</LinkButton>}
      >
        <Loaded query={query} skeleton={<Bones heights={[4, 20]} />} what="The plan">
          {(view) => (view.plan ? <WhoEats outlook={view.plan.outlook} /> : <NoPlanYet />)}
        </Loaded>
      </Page>
    </div>
  )
}
