'use client'

import { useQuery } from '@tanstack/react-query'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Page, Section } from '@/base/ui/Page.tsx'
import { Alarms } from '@/parts/gauges/Alarms.tsx'
import { useStandingAlarms } from '@/parts/gauges/standing-alarms.ts'
import { messagesOptions, reachOptions } from '@/parts/reach/queries.ts'
import { Absences } from './Absences.tsx'
import { HandOver } from './HandOver.tsx'
import { HowTold } from './HowTold.tsx'
import { SentList } from './SentList.tsx'
import { WebhookForm } from './WebhookForm.tsx'

/** What stands, who is told of it and how, and what was sent to whom. */
export function AlarmsPage() {
  const room = useRoom()
  const reach = useQuery(reachOptions(room.id))
  const messages = useQuery(messagesOptions(room.id))
  const standing = useStandingAlarms()
  const mayOwn = useMay('own')
  const maySignOff = useMay('sign_off')
  return (
    <Page title="Alarms" lead="Who is told when the water leaves its limits, and whether it arrived">
      <Alarms />
      {maySignOff && standing.map((alarm) => <HandOver key={alarm.id} alarm={alarm} />)}
      {standing.length === 0 && <p>No alarm stands.</p>}
      <Section title="How you are told">
        <p>
          An alarm goes to whoever has the room, by every way below, and again until somebody has it: every ten minutes
          in its first hour, then every hour. After twenty minutes the owners hear of it too; at once where nobody has
          the room.
        </p>
        <Loaded query={reach} skeleton={<Bones heights={[6, 6]} />} what="How you are told">
          {(data) => <HowTold reach={data} />}
        </Loaded>
      </Section>
      {mayOwn && (
        <Section title="Anything else: a webhook">
          <WebhookForm />
        </Section>
      )}
      <Absences />
      <Section title="What was sent">
        <Loaded query={messages} skeleton={<Bones heights={[4, 4]} />} what="The list of messages">
          {(data) => <SentList messages={data} />}
        </Loaded>
      </Section>
    </Page>
  )
}
