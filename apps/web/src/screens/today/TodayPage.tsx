'use client'

import type { Day } from '@fryward/shared'
import { sayDayTitle } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useRouter, useSearchParams } from 'next/navigation'
import { Suspense } from 'react'
import { useServerNow } from '@/base/dates/use-now.ts'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { late } from '@/base/ui/late.ts'
import { Page } from '@/base/ui/Page.tsx'
import { Alarms } from '@/parts/gauges/Alarms.tsx'
import { OpenWorries } from '@/parts/hand-over/OpenWorries.tsx'
import { meOptions } from '@/parts/session/me.ts'
import { TaskSheetPlace } from '@/parts/task-sheet/TaskSheetPlace.tsx'
import { type DayName, dayOptions } from '@/parts/tasks/queries.ts'
import { DayLinks, useOtherDay } from './DayLinks.tsx'
import { DayList } from './DayList.tsx'
import { Duty } from './Duty.tsx'
import { useSwipe } from './use-swipe.ts'

const ServerTroubles = late(() => import('./ServerTroubles.tsx'), 'ServerTroubles')

const toDayName = (text: string | null): DayName => {
  if (text === 'tomorrow') return 'tomorrow'
  return text !== null && /^\d{4}-\d{2}-\d{2}$/.test(text) ? text : 'today'
}

/** The day's list: what is late, then the round as a walk from the cleanest water on. */
export function TodayPage() {
  const room = useRoom()
  const name = toDayName(useSearchParams().get('date'))
  const query = useQuery(dayOptions(room.id, name))
  const ownsServer = useQuery(meOptions()).data?.ownsServer
  const now = useServerNow(query.dataUpdatedAt)
  const router = useRouter()
  const { isToday, href } = useOtherDay(query.data, name)
  const swipe = useSwipe((to) => isToday === (to === 'left') && router.push(href))
  return (
    <Page
      title={<DayTitle day={query.data} name={name} />}
      lead={query.data && query.data.tasks.length > 0 && <Duty day={query.data} />}
      aside={<DayLinks day={query.data} name={name} />}
      isFullWidth
    >
      <Suspense>{ownsServer && <ServerTroubles />}</Suspense>
      <Alarms />
      <OpenWorries />
      <Loaded query={query} skeleton={<Bones heights={[2.3, 18, 3.4, 14, 14]} />} what="The list">
        {(day) => (
          <>
            <div {...swipe}>
              <DayList key={day.date} day={day} now={now} />
            </div>
            <TaskSheetPlace tasks={day.tasks} now={now} />
          </>
        )}
      </Loaded>
    </Page>
  )
}

function DayTitle({ day, name }: { day: Day | undefined; name: DayName }) {
  const voice = useVoice()
  if (!day) return name === 'tomorrow' ? 'Tomorrow' : 'Today'
  return sayDayTitle(day.date, day.today, voice)
}
