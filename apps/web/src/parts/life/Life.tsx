'use client'

import type { ClutchLife, Id } from '@fryward/shared'
import { broodWords, sayDate, sayReached, sayStage, sayWhole } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { Suspense } from 'react'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { late } from '@/base/ui/late.ts'
import { Notice } from '@/base/ui/Notice.tsx'
import { Card, Section } from '@/base/ui/Page.tsx'
import { clutchLifeOptions } from '@/parts/survival/queries.ts'
import { StageBars } from '@/parts/survival/StageBars.tsx'
import { hrefOf } from '@/parts/things/href.ts'
import { LifeTable } from './LifeTable.tsx'
import styles from './life.module.css'
import { lifeTops } from './life-lanes.ts'

const LifeLine = late(() => import('./LifeLine.tsx'), 'LifeLine')

/** A line with the usual stages and two foods; the real one comes in its place. */
const usualHeight = lifeTops({ stages: 6, foods: 2 }).height / 16

/** One clutch (or one batch of it) from its eggs on: how many made it, and when. */
export function Life({ clutchId, since }: { clutchId: Id; since: 'laid' | 'hatch' }) {
  const life = useQuery(clutchLifeOptions(useRoom().id, clutchId))
  return (
    <Section title="Life line">
      <Loaded query={life} skeleton={<Bones heights={[usualHeight, 16]} />} what="The life line">
        {(data) => <LifeCard life={data} since={since} />}
      </Loaded>
    </Section>
  )
}

function LifeCard({ life, since }: { life: ClutchLife; since: 'laid' | 'hatch' }) {
  const from = since === 'hatch' && life.row.bornOn !== null ? life.row.bornOn : life.row.spawnedOn
  const sentence = useLifeSentence(life)
  return (
    <>
      <Card>
        <p>
          <strong>{sentence}</strong>
        </p>
        <Together life={life} />
        <Suspense fallback={<Bones heights={[usualHeight]} />}>
          <LifeLine life={life} from={from} sentence={sentence} />
        </Suspense>
        <p className={styles.key}>
          Outlines are where a stage is expected by the warmth of the tank, eight times in ten; dots where it was seen.
          The band of numbers lies between the least and the most that there can be; dots in it are counts. The dashed
          lines are the tanks’ set temperatures.
        </p>
        <LifeTable life={life} />
      </Card>
      <Card>
        <StageBars stages={life.row.stages} care={life.row.care} label="How many made it" />
        <Losses life={life} />
      </Card>
    </>
  )
}

/** "60 left of 80 hatched", or the furthest that is known. */
function useLifeSentence({ row }: ClutchLife): string {
  const voice = useVoice()
  const last = row.stages.findLast(({ status }) => status === 'reached' || status === 'so_far')
  const now =
    row.numberNow === null ? 'How many are left is not known' : `${sayWhole(row.numberNow, voice)} in the room now`
  if (!last) return `${now}.`
  return `${sayStage(last.stage, row.care)}: ${sayReached(last, voice)}. ${now}.`
}

/** Those that share a tank share a line; those that were mixed later end theirs. */
function Together({ life }: { life: ClutchLife }) {
  const room = useRoom()
  const { clutches, care, mixedOn } = life.row
  if (clutches.length === 1 && mixedOn === null) return null
  return (
    <Notice>
      {clutches.length > 1 && (
        <p>
          Together in one tank from the {broodWords(care).coming} on, so nobody can tell them apart:{' '}
          {clutches.map((clutch, index) => (
            <span key={clutch.id}>
              {index > 0 && ', '}
              <Link href={hrefOf(room.id, clutch) ?? ''}>{clutch.name}</Link>
            </span>
          ))}
          .
        </p>
      )}
      {mixedOn !== null && (
        <p>Put together with young of others on {sayDate(mixedOn, room)}: from then on they are not followed.</p>
      )}
    </Notice>
  )
}

function Losses({ life: { row } }: { life: ClutchLife }) {
  const voice = useVoice()
  if (row.losses.length === 0 && row.missing === 0) return <p>No loss is written down.</p>
  return (
    <p>
      Found dead:{' '}
      {row.losses.length === 0
        ? 'none'
        : row.losses
            .map(({ cause, number }) => `${sayWhole(number, voice)} (${cause ?? 'cause not known'})`)
            .join(', ')}
      .{row.missing > 0 && ` Missing at a count, and not seen dead: ${sayWhole(row.missing, voice)}.`}
    </p>
  )
}
