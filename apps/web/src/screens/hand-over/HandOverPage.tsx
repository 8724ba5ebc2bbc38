'use client'

import type { HandOver } from '@fryward/shared'
import { toPlainDate } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { sentenceOf } from '@/base/api/problem.ts'
import { useServerNow } from '@/base/dates/use-now.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Page } from '@/base/ui/Page.tsx'
import { useToast } from '@/base/ui/toast.tsx'
import { handOverOptions } from '@/parts/hand-over/hand-over-options.ts'
import { useMarkLooked } from '@/parts/hand-over/queries.ts'
import things from '@/parts/things/things.module.css'
import { Coming } from './Coming.tsx'
import { Losses } from './Losses.tsx'
import { NotDone } from './NotDone.tsx'
import { NoteForm } from './NoteForm.tsx'
import { Notes } from './Notes.tsx'
import { Signs } from './Signs.tsx'
import { Since } from './Since.tsx'
import { sayOnce } from './say-once.ts'
import { useReadMark } from './use-read-mark.ts'
import { WatchCard } from './WatchCard.tsx'
import { Worries } from './Worries.tsx'

/** What one caretaker needs to know from the others, in the time it takes to put on boots. */
export function HandOverPage() {
  const room = useRoom()
  const query = useQuery(handOverOptions(room.id))
  const now = useServerNow(query.dataUpdatedAt)
  const end = useReadMark(room.id, query.data)
  return (
    <div className={things.wide}>
      <Page title="Hand-over">
        <Loaded query={query} skeleton={<Bones heights={[7, 8, 12, 9, 12]} />} what="The hand-over">
          {(handOver) => <Told handOver={handOver} now={now} />}
        </Loaded>
        <div ref={end} />
      </Page>
    </div>
  )
}

function Told({ handOver, now }: { handOver: HandOver; now: Date }) {
  const today = toPlainDate(now, useRoom().timeZone)
  const { watch, worries, troubles, losses, notDone, coming, notes } = sayOnce(handOver, today)
  return (
    <div className={things.columns}>
      <div className={things.column}>
        <WatchCard watch={watch} now={now} today={today} />
        <Worries worries={worries} now={now} />
        <Notes notes={notes} now={now} />
        <Since handOver={handOver} now={now} />
        <Signs troubles={troubles} now={now} />
        <Losses losses={losses} now={now} />
      </div>
      <div className={things.column}>
        <NotDone all={handOver.notDone.length} notDone={notDone} now={now} />
        <Coming coming={coming} today={today} />
        <NoteForm />
        <ReadButton handOver={handOver} />
      </div>
    </div>
  )
}

function ReadButton({ handOver }: { handOver: HandOver }) {
  const room = useRoom()
  const mark = useMarkLooked(room.id)
  const toast = useToast()
  const hasNew = handOver.since.length > 0 || handOver.lastLookedAt === null
  if (!hasNew) return null
  return (
    <Button
      variant="filled"
      isWide
      isLarge
      isBusy={mark.isPending}
      onClick={() => mark.mutate(handOver.revision, { onError: (error) => toast({ text: sentenceOf(error) }) })}
    >
      I have read this
    </Button>
  )
}
