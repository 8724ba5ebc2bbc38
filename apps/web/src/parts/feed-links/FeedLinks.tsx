'use client'

import type { FeedLink, Food, Id } from '@fryward/shared'
import { sayDate } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { type ReactNode, useState } from 'react'
import { sentenceOf } from '@/base/api/problem.ts'
import { todayIn } from '@/base/dates/local-time.ts'
import { useMay, useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Card, Section } from '@/base/ui/Page.tsx'
import { useToast } from '@/base/ui/toast.tsx'
import { hrefOf } from '@/parts/things/href.ts'
import styles from '@/parts/things/things.module.css'
import { useFindThing, useThings } from '@/parts/things/use-things.ts'
import { FeedLinkForm } from './FeedLinkForm.tsx'
import { feedLinksOptions, useEndFeedLink } from './queries.ts'
import { type Of, sayToday, useFeedsToday } from './use-feeds-today.ts'

/** Who eats from what: the cultures of a batch, or the batches of a culture. */
export function FeedLinks({ of, isEnded }: { of: Of; isEnded: boolean }) {
  const room = useRoom()
  const may = useMay('manage') && !isEnded
  const links = useQuery(feedLinksOptions(room.id))
  // A name that has not come yet is no reason to call its bearer ended.
  const { isComplete } = useThings()
  const today = useFeedsToday(of)
  const [isAdding, setAdding] = useState(false)
  const isBatch = 'batchId' in of
  const isOwn = (link: FeedLink) => (isBatch ? link.batchId === of.batchId : link.cultureId === of.cultureId)
  return (
    <Section
      title={isBatch ? 'Fed from' : 'Feeds'}
      action={
        may && (
          <Button variant="subtle" aria-expanded={isAdding} onClick={() => setAdding(!isAdding)}>
            {isBatch ? 'Feed it from a culture' : 'Feed a batch from it'}
          </Button>
        )
      }
    >
      <Loaded query={links} skeleton={<LinkBones />} what="The feed links">
        {(data) => {
          if (!isComplete || today.isPending) return <LinkBones />
          const own = data.filter(isOwn).map((link) => ({ link, otherId: isBatch ? link.cultureId : link.batchId }))
          const unlinked = [...today.own].filter(([id]) => !own.some(({ otherId }) => otherId === id))
          return own.length + unlinked.length === 0 ? (
            <Notice>{sayNone(isBatch, isEnded)}</Notice>
          ) : (
            <ul className={styles.links}>
              {unlinked.map(([id, foods]) => (
                <OtherLine key={id} otherId={id}>
                  {sayToday(foods)}
                </OtherLine>
              ))}
              {own.map(({ link, otherId }) => (
                <LinkLine key={link.id} link={link} otherId={otherId} foods={today.own.get(otherId) ?? []} />
              ))}
            </ul>
          )
        }}
      </Loaded>
      {isAdding && (
        <Card>
          <FeedLinkForm start={of} onDone={() => setAdding(false)} />
        </Card>
      )}
    </Section>
  )
}

function sayNone(isBatch: boolean, isEnded: boolean): string {
  if (isEnded) return isBatch ? 'It was fed from no culture.' : 'It fed no batch.'
  return isBatch
    ? 'From no culture yet. Say which one, and its feeds can be worked out.'
    : 'No batch eats from this culture.'
}

const LinkBones = () => <Bones heights={[3]} />

type OtherProps = { otherId: Id; action?: ReactNode; children: ReactNode }

/** The batch or the culture on the other side, and what is to be said of it. */
function OtherLine({ otherId, action, children }: OtherProps) {
  const room = useRoom()
  const other = useFindThing()(otherId)
  return (
    <li>
      <span>
        {other ? <Link href={hrefOf(room.id, other) ?? '#'}>{other.name}</Link> : 'something ended'}{' '}
        <span className={styles.soft}>{children}</span>
      </span>
      {action}
    </li>
  )
}

function LinkLine({ link, otherId, foods }: { link: FeedLink; otherId: Id; foods: Food[] }) {
  const voice = useVoice()
  const room = useRoom()
  const may = useMay('manage')
  const other = useFindThing()(otherId)
  const end = useEndFeedLink(room.id)
  const toast = useToast()
  const stop = () =>
    end.mutate(
      { id: link.id, body: { untilOn: todayIn(room.timeZone), version: link.version } },
      { onError: (error) => toast({ text: sentenceOf(error) }) },
    )
  return (
    <OtherLine
      otherId={otherId}
      action={
        may &&
        link.untilOn === null && (
          <Button
            variant="subtle"
            isBusy={end.isPending}
            onClick={stop}
            aria-label={`Stop: ${other?.name ?? 'feed link'}`}
          >
            Stop
          </Button>
        )
      }
    >
      {foods.length > 0 && `${sayToday(foods)}; `}
      linked from {sayDate(link.fromOn, voice)}
      {link.untilOn && ` until ${sayDate(link.untilOn, voice)}`}
      {foods.length === 0 && link.untilOn === null && ', nothing of it today'}
    </OtherLine>
  )
}
