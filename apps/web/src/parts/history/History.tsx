'use client'

import type { Id, Photo, SubjectKind } from '@fryward/shared'
import { sayDayHeading, toPlainDate } from '@fryward/words'
import { useInfiniteQuery, useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { serverNow } from '@/base/api/server-clock.ts'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Section } from '@/base/ui/Page.tsx'
import { factsOptions } from '@/parts/facts/queries.ts'
import { photosOptions } from '@/parts/photos/queries.ts'
import { FactLine } from './FactLine.tsx'
import { FeedingsLine } from './FeedingsLine.tsx'
import { type FactFilter, filterChoices, kindsOfFilter } from './filter-choices.ts'
import { isSaidAbove } from './said-above.ts'
import styles from './timeline.module.css'
import { type TimelineDay, toTimeline } from './timeline.ts'
import { useFactTarget } from './use-fact-target.ts'

type Props = { subject: { id: Id; kind: SubjectKind } }

/** Everything recorded about one thing, day by day, newest first. A mistake is struck out and stays readable. */
export function History({ subject }: Props) {
  const room = useRoom()
  const [filter, setFilter] = useState<FactFilter>('everything')
  const pages = useInfiniteQuery(factsOptions(room.id, subject.id, kindsOfFilter[filter]))
  const targetId = useFactTarget(pages)
  const photos = useQuery(photosOptions(room.id, subject.id)).data ?? []
  return (
    <Section title="What was recorded" action={<Filter kind={subject.kind} value={filter} onChoose={setFilter} />}>
      <Loaded query={pages} skeleton={<HistoryBones />} what="The history">
        {(data) => {
          const days = toTimeline(
            data.pages.flatMap((page) => page.facts),
            { timeZone: room.timeZone, hasOlder: pages.hasNextPage, isFolding: filter !== 'feedings' },
          )
          return days.length === 0 ? (
            <Notice>
              {filter === 'everything'
                ? 'Nothing yet. What is signed off or recorded here shows up in this list.'
                : 'Nothing of this kind yet.'}
            </Notice>
          ) : (
            days.map((day) => <Day key={day.date} day={day} photos={photos} targetId={targetId} />)
          )
        }}
      </Loaded>
      {pages.hasNextPage && (
        <Button variant="default" isBusy={pages.isFetchingNextPage} onClick={() => void pages.fetchNextPage()}>
          Show older
        </Button>
      )}
    </Section>
  )
}

/** A heading and its lines, twice: the shape of the last two days. */
const HistoryBones = () => <Bones heights={[1.4, 9.6, 1.4, 12]} />

function Day({ day, photos, targetId }: { day: TimelineDay; photos: Photo[]; targetId: string }) {
  const voice = useVoice()
  const { timeZone } = useRoom()
  const photosOf = (factId: Id) => photos.filter((photo) => photo.factId === factId)
  return (
    <section className={styles.day}>
      <h3 className={styles.date}>{sayDayHeading(day.date, toPlainDate(serverNow(), timeZone), voice)}</h3>
      <ol className={styles.lines}>
        {day.lines.map((line, i) => {
          if (line.kind === 'feedings')
            return <FeedingsLine key="feedings" facts={line.facts} photosOf={photosOf} targetId={targetId} />
          const above = day.lines[i - 1]
          return (
            <FactLine
              key={line.fact.id}
              fact={line.fact}
              photos={photosOf(line.fact.id)}
              isTarget={targetId === `fact-${line.fact.id}`}
              isSaidAbove={isSaidAbove(line.fact, above?.kind === 'fact' ? above.fact : undefined, voice)}
            />
          )
        })}
      </ol>
    </section>
  )
}

type FilterProps = { kind: SubjectKind; value: FactFilter; onChoose: (filter: FactFilter) => void }

function Filter({ kind, value, onChoose }: FilterProps) {
  const choices = filterChoices(kind)
  return (
    <select
      className={styles.filter}
      aria-label="Show of it"
      value={value}
      onChange={(event) => {
        const chosen = choices.find((choice) => choice.value === event.currentTarget.value)
        if (chosen) onChoose(chosen.value)
      }}
    >
      {choices.map((choice) => (
        <option key={choice.value} value={choice.value}>
          {choice.label}
        </option>
      ))}
    </select>
  )
}
