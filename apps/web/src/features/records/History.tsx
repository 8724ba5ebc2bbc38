'use client'

import type { Fact, Id, Photo } from '@fryward/shared'
import { useInfiniteQuery, useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { sayMoment } from '@/dates/say.ts'
import { AddPhoto } from '@/features/photos/AddPhoto.tsx'
import { Thumbnails } from '@/features/photos/PhotoStrip.tsx'
import { photosOptions } from '@/features/photos/queries.ts'
import { useMay, useRoom } from '@/features/rooms/room-context.tsx'
import { factsOptions } from '@/features/vessels/queries.ts'
import { useFindThing } from '@/features/vessels/use-things.ts'
import { Bones } from '@/ui/Bones.tsx'
import { Button } from '@/ui/Button.tsx'
import { Loaded } from '@/ui/Loaded.tsx'
import { Notice } from '@/ui/Notice.tsx'
import { Section } from '@/ui/Page.tsx'
import { factKindLabels } from '@/words/labels.ts'
import styles from './records.module.css'
import { StrikeForm } from './StrikeForm.tsx'
import { sayFact } from './say-fact.ts'
import { useFactTarget } from './use-fact-target.ts'

/** Everything recorded about one thing, newest first. A mistake is struck out with its reason and stays readable. */
export function History({ subjectId }: { subjectId: Id }) {
  const room = useRoom()
  const pages = useInfiniteQuery(factsOptions(room.id, subjectId))
  const targetId = useFactTarget(pages)
  const photos = useQuery(photosOptions(room.id, subjectId)).data ?? []
  return (
    <Section title="What was recorded">
      <Loaded query={pages} skeleton={<Bones heights={[3.5, 3.5, 3.5, 3.5]} />} what="The history">
        {(data) => {
          const facts = data.pages.flatMap((page) => page.facts)
          return facts.length === 0 ? (
            <Notice>Nothing yet. What is signed off or recorded here shows up in this list.</Notice>
          ) : (
            <ol className={styles.facts}>
              {facts.map((fact) => (
                <FactLine
                  key={fact.id}
                  fact={fact}
                  photos={photos.filter((photo) => photo.factId === fact.id)}
                  isTarget={targetId === `fact-${fact.id}`}
                />
              ))}
            </ol>
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

function FactLine({ fact, photos, isTarget }: { fact: Fact; photos: Photo[]; isTarget: boolean }) {
  const room = useRoom()
  const may = useMay('record')
  const find = useFindThing()
  const [open, setOpen] = useState<'strike' | 'photo' | null>(null)
  const sentence = sayFact(fact, { system: room.units, nameOf: (id) => find(id)?.name })
  const isStruck = fact.struckAt !== null
  return (
    <li
      id={`fact-${fact.id}`}
      className={styles.fact}
      data-struck={isStruck || undefined}
      data-target={isTarget || undefined}
    >
      <div className={styles.factHead}>
        <div>
          <p className={styles.factWhat}>
            <strong>{factKindLabels[fact.kind]}</strong> {isStruck ? <s>{sentence}</s> : sentence}
          </p>
          <p className={styles.factWho}>
            {sayMoment(fact.at, new Date(), room.timeZone)}, {fact.recordedByName}
            {isStruck && ` · struck out by ${fact.struckByName}: ${fact.struckReason}`}
          </p>
        </div>
        {may && !isStruck && (
          <div className={styles.factDo}>
            <Button
              variant="subtle"
              aria-expanded={open === 'photo'}
              onClick={() => setOpen(open === 'photo' ? null : 'photo')}
              aria-label={`Photo of: ${factKindLabels[fact.kind]} ${sentence}`}
            >
              Photo
            </Button>
            <Button
              variant="subtle"
              aria-expanded={open === 'strike'}
              onClick={() => setOpen(open === 'strike' ? null : 'strike')}
              aria-label={`Strike out: ${factKindLabels[fact.kind]} ${sentence}`}
            >
              Strike out
            </Button>
          </div>
        )}
      </div>
      {photos.length > 0 && <Thumbnails photos={photos} isSmall />}
      {open === 'photo' && <AddPhoto subjectId={fact.subjectId} factId={fact.id} about={sentence} />}
      {open === 'strike' && <StrikeForm factId={fact.id} onClose={() => setOpen(null)} />}
    </li>
  )
}
