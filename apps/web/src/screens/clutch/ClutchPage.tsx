'use client'

import { type Clutch, clutchIntents, eggStages } from '@fryward/shared'
import {
  broodWords,
  careLabels,
  daysSince,
  eggStageLabels,
  intentLabels,
  sayClutchState,
  sayMoment,
  sayNight,
  sayNumber,
  sayPercent,
} from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useParams } from 'next/navigation'
import { todayIn } from '@/base/dates/local-time.ts'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { FormProblem } from '@/base/forms/Form.tsx'
import { useMay, useRoom, useVoice } from '@/base/room/room-context.tsx'
import { LinkButton } from '@/base/ui/Button.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { Moon } from '@/base/ui/Moon.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Card, Section, Traits } from '@/base/ui/Page.tsx'
import { ClutchGlyph } from '@/parts/clutches/ClutchGlyph.tsx'
import { EggSample } from '@/parts/clutches/Egg.tsx'
import { expectedEggStage, expectedHatchDays } from '@/parts/clutches/egg-colour.ts'
import { clutchesOptions, useChangeClutch } from '@/parts/clutches/queries.ts'
import { Life } from '@/parts/life/Life.tsx'
import { pairsOptions } from '@/parts/pairs/queries.ts'
import { VesselPage } from '@/parts/thing-page/VesselPage.tsx'
import styles from '@/parts/things/things.module.css'
import own from './clutches.module.css'

export function ClutchPage() {
  const room = useRoom()
  const { id } = useParams<{ id: string }>()
  const clutches = useQuery(clutchesOptions(room.id))
  return (
    <VesselPage kind="clutch" id={id} query={clutches} lead={sayClutchState}>
      {(clutch) => (
        <>
          {clutch.state === 'incubating' && <Nest clutch={clutch} />}
          <ClutchTraits clutch={clutch} />
          {clutch.state === 'incubating' && <Nights clutch={clutch} />}
          {clutch.state === 'incubating' && <Intent clutch={clutch} />}
          {clutch.state === 'incubating' && <RecordYoung clutch={clutch} />}
          {clutch.state !== 'void' && <Life clutchId={clutch.id} since="laid" />}
        </>
      )}
    </VesselPage>
  )
}

const isInNest = ({ care }: Clutch): boolean => care === 'nest'

/** The nest as it should look today, and how far on the way it is; nobody sees eggs in a mouth or a pouch, and those that float have no nest. */
function Nest({ clutch }: { clutch: Clutch }) {
  const { timeZone } = useRoom()
  const hatchDays = expectedHatchDays(clutch)
  return (
    <Card>
      <div className={own.nest}>
        {isInNest(clutch) && <ClutchGlyph size={168} clutch={clutch} isNear />}
        <div>
          <p className={own.day}>
            Day {daysSince(clutch.spawnedAt, todayIn(timeZone), timeZone)}
            {hatchDays !== undefined && <span> of about {Math.floor(hatchDays)}</span>}
          </p>
          {isInNest(clutch) && <EggColours clutch={clutch} />}
        </div>
      </div>
    </Card>
  )
}

function EggColours({ clutch }: { clutch: Clutch }) {
  const stage = expectedEggStage(clutch)
  return (
    <>
      {stage === undefined ? (
        <p>No colour can be expected: the profile of this species says too little.</p>
      ) : (
        <p>
          The eggs should look <strong>{eggStageLabels[stage].toLowerCase()}</strong> today.
        </p>
      )}
      <ol className={own.stages} aria-label="Colours on the way">
        {eggStages.map((one) => (
          <li key={one} aria-current={one === stage ? 'step' : undefined}>
            <EggSample stage={one} size={22} />
            {eggStageLabels[one]}
          </li>
        ))}
      </ol>
    </>
  )
}

function ClutchTraits({ clutch }: { clutch: Clutch }) {
  const voice = useVoice()
  const room = useRoom()
  const pairs = useQuery(pairsOptions(room.id)).data ?? []
  const words = broodWords(clutch.care)
  return (
    <Card>
      <Traits
        traits={[
          { label: words.since, value: sayMoment(clutch.spawnedAt, new Date(), voice) },
          { label: words.eggs, value: clutch.eggs === null ? 'not counted' : `about ${sayNumber(clutch.eggs, voice)}` },
          {
            label: 'Of',
            value: (
              <Link href={`/rooms/${room.id}/pairs/${clutch.pairId}`}>
                {pairs.find((pair) => pair.id === clutch.pairId)?.name ?? 'a pair'}
              </Link>
            ),
          },
          { label: 'Cared for', value: careLabels[clutch.care] },
        ]}
      />
    </Card>
  )
}

/** Nights less likely than this round to nothing. */
const leastShown = 0.005
/** Of a brood that may come on any of many nights the likeliest are drawn. */
const mostShown = 7

function Nights({ clutch }: { clutch: Clutch }) {
  const voice = useVoice()
  const room = useRoom()
  const today = todayIn(room.timeZone)
  const all = clutch.nights.filter((night) => night.probability >= leastShown)
  const likeliest = new Set(all.toSorted((a, b) => b.probability - a.probability).slice(0, mostShown))
  const [first, last] = [all[0], all.at(-1)]
  return (
    <Section title="Nights ahead">
      {clutch.nights.length === 0 ? (
        <Notice>No night can be said yet: the profile of this species says too little.</Notice>
      ) : (
        <ul className={styles.nights}>
          {all
            .filter((night) => likeliest.has(night))
            .map((night) => (
              <li key={night.date}>
                <Moon probability={night.probability} />
                <strong>{sayPercent(night.probability, voice)}</strong>
                <span>{sayNight(night.date, today, voice)}</span>
              </li>
            ))}
        </ul>
      )}
      {first && last && all.length > mostShown && (
        <p>
          Less likely on others, from {sayNight(first.date, today, voice)} to {sayNight(last.date, today, voice)}.
        </p>
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

function RecordYoung({ clutch }: { clutch: Clutch }) {
  const room = useRoom()
  const may = useMay('record')
  if (!may) return null
  return (
    <div>
      <LinkButton href={`/rooms/${room.id}/add?what=batch&clutch=${clutch.id}`} variant="filled">
        {broodWords(clutch.care).record}
      </LinkButton>
    </div>
  )
}
