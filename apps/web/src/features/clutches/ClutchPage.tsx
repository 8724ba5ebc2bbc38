'use client'

import { type Clutch, clutchIntents } from '@fryward/shared'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useParams } from 'next/navigation'
import { todayIn } from '@/dates/local-time.ts'
import { sayMoment, sayNight } from '@/dates/say.ts'
import { useMay, useRoom } from '@/features/rooms/room-context.tsx'
import { clutchesOptions, pairsOptions, useChangeClutch } from '@/features/vessels/queries.ts'
import { VesselPage } from '@/features/vessels/VesselPage.tsx'
import styles from '@/features/vessels/vessels.module.css'
import { ChoiceChips } from '@/forms/Chips.tsx'
import { FormProblem } from '@/forms/Form.tsx'
import { expectedEggStage } from '@/glyphs/egg-colour.ts'
import { Moon } from '@/glyphs/Moon.tsx'
import { formatNumber } from '@/quantities/format-number.ts'
import { LinkButton } from '@/ui/Button.tsx'
import { Notice } from '@/ui/Notice.tsx'
import { Card, Section, Traits } from '@/ui/Page.tsx'
import { careLabels, clutchStateLabels, eggStageLabels, intentLabels } from '@/words/labels.ts'

export function ClutchPage() {
  const room = useRoom()
  const { id } = useParams<{ id: string }>()
  const clutches = useQuery(clutchesOptions(room.id))
  return (
    <VesselPage kind="clutch" id={id} query={clutches} lead={(clutch) => `Day ${Math.floor(clutch.ageDays)}`}>
      {(clutch) => (
        <>
          <ClutchTraits clutch={clutch} />
          {clutch.state === 'incubating' && <Nights clutch={clutch} />}
          {clutch.state === 'incubating' && <Intent clutch={clutch} />}
          {clutch.state === 'incubating' && <Hatched clutch={clutch} />}
        </>
      )}
    </VesselPage>
  )
}

function ClutchTraits({ clutch }: { clutch: Clutch }) {
  const room = useRoom()
  const pairs = useQuery(pairsOptions(room.id)).data ?? []
  const stage = expectedEggStage(clutch)
  return (
    <Card>
      <Traits
        traits={[
          { label: 'Now', value: clutchStateLabels[clutch.state] },
          { label: 'Laid', value: sayMoment(clutch.spawnedAt, new Date(), room.timeZone) },
          { label: 'Eggs', value: clutch.eggs === null ? 'not counted' : `about ${formatNumber(clutch.eggs)}` },
          {
            label: 'Of',
            value: (
              <Link href={`/rooms/${room.id}/pairs/${clutch.pairId}`} prefetch={false}>
                {pairs.find((pair) => pair.id === clutch.pairId)?.name ?? 'a pair'}
              </Link>
            ),
          },
          { label: 'Cared for', value: careLabels[clutch.care] },
          ...(clutch.state === 'incubating' && stage
            ? [{ label: 'Colour to expect', value: eggStageLabels[stage].toLowerCase() }]
            : []),
        ]}
      />
    </Card>
  )
}

/** Nights less likely than this round to nothing. */
const leastShown = 0.005

function Nights({ clutch }: { clutch: Clutch }) {
  const room = useRoom()
  const today = todayIn(room.timeZone)
  return (
    <Section title="Nights ahead">
      {clutch.nights.length === 0 ? (
        <Notice>No night can be said yet: the profile of this species says too little.</Notice>
      ) : (
        <ul className={styles.nights}>
          {clutch.nights
            .filter((night) => night.probability >= leastShown)
            .map((night) => (
              <li key={night.date}>
                <Moon probability={night.probability} />
                <strong>{Math.round(night.probability * 100)} %</strong>
                <span>{sayNight(night.date, today)}</span>
              </li>
            ))}
        </ul>
      )}
    </Section>
  )
}

function Intent({ clutch }: { clutch: Clutch }) {
  const may = useMay('manage')
  const change = useChangeClutch(useRoom().id, clutch.id)
  if (!may)
    return (
      <Notice>
        Meant: <strong>{intentLabels[clutch.intent].toLowerCase()}</strong>
      </Notice>
    )
  return (
    <>
      <ChoiceChips
        legend="What is meant with it"
        choices={clutchIntents.map((value) => ({ value, label: intentLabels[value] }))}
        value={change.isPending ? (change.variables.intent ?? clutch.intent) : clutch.intent}
        onChoose={(value) => {
          const intent = clutchIntents.find((one) => one === value)
          if (intent) change.mutate({ intent, version: clutch.version })
        }}
      />
      <FormProblem error={change.error} />
    </>
  )
}

function Hatched({ clutch }: { clutch: Clutch }) {
  const room = useRoom()
  const may = useMay('record')
  if (!may) return null
  return (
    <div>
      <LinkButton href={`/rooms/${room.id}/add?what=batch&clutch=${clutch.id}`} variant="filled">
        It hatched: record the larvae
      </LinkButton>
    </div>
  )
}
