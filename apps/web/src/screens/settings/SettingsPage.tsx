'use client'

import { localeLabel, sayNumber, sayPlainTime, unitSystemLabels } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { Amount } from '@/base/quantities/Amount.tsx'
import { useMay, useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { LinkButton } from '@/base/ui/Button.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Card, Page, Section, Traits } from '@/base/ui/Page.tsx'
import { Bottle } from '@/parts/concentrates/Bottle.tsx'
import { concentratesOptions } from '@/parts/concentrates/queries.ts'
import things from '@/parts/things/things.module.css'
import { OwnersFactor } from './OwnersFactor.tsx'
import { SettingsForm } from './SettingsForm.tsx'

export function SettingsPage() {
  const room = useRoom()
  const mayOwn = useMay('own')
  return (
    <div className={things.wide}>
      <Page title="Room settings">
        <div className={things.columns}>
          <div className={things.column}>
            {mayOwn ? (
              <Card>
                <SettingsForm key={room.version} room={room} />
              </Card>
            ) : (
              <ReadSettings />
            )}
          </div>
          <div className={things.column}>
            {mayOwn && <OwnersFactor />}
            <Bottles />
          </div>
        </div>
      </Page>
    </div>
  )
}

/** The settings for whoever does not change them. */
function ReadSettings() {
  const voice = useVoice()
  const room = useRoom()
  return (
    <>
      <Notice>Only an owner changes these.</Notice>
      <Card>
        <Traits
          traits={[
            { label: 'Name', value: room.name },
            { label: 'Time zone', value: room.timeZone },
            { label: 'Units', value: unitSystemLabels[room.units] },
            {
              label: 'Light',
              value: `${sayPlainTime(room.lightsOnAt, voice)} to ${sayPlainTime(room.lightsOffAt, voice)}`,
            },
            {
              label: 'Rounds',
              value: room.rounds.map((round) => `${round.name} ${sayPlainTime(round.at, voice)}`).join(', '),
            },
            { label: 'Numbers, dates and times', value: localeLabel(room.locale) },
            { label: 'New water, salinity', value: sayNumber(room.salinity, voice) },
            {
              label: 'New water, temperature',
              value: <Amount quantity={{ value: room.temperatureC, unit: 'degC' }} />,
            },
          ]}
        />
      </Card>
    </>
  )
}

function Bottles() {
  const room = useRoom()
  const may = useMay('manage')
  const bottles = useQuery(concentratesOptions(room.id))
  return (
    <Section
      title="Bottles of concentrate"
      action={
        may && (
          <LinkButton href={`/rooms/${room.id}/add?what=bottle`} variant="subtle">
            Add a bottle
          </LinkButton>
        )
      }
    >
      <Loaded query={bottles} skeleton={<Bones heights={[4]} />} what="The list of bottles">
        {(data) =>
          data.length === 0 ? (
            <Notice>No bottle yet. Rations for rotifers need the strength from a label.</Notice>
          ) : (
            data.map((bottle) => <Bottle key={bottle.id} bottle={bottle} />)
          )
        }
      </Loaded>
    </Section>
  )
}
