'use client'

import type { Alarm } from '@fryward/shared'
import { sayAlarm } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { FormProblem } from '@/base/forms/Form.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { useHandAlarm } from '@/parts/gauges/queries.ts'
import { peopleOptions } from '@/parts/people/queries.ts'

/** Hands one alarm to somebody else, who is told at once. */
export function HandOver({ alarm }: { alarm: Alarm }) {
  const room = useRoom()
  const voice = useVoice()
  const hand = useHandAlarm(room.id)
  const people = useQuery(peopleOptions(room.id)).data?.filter(({ role }) => role !== 'viewer') ?? []
  return (
    <div>
      <SelectBox
        label={`Hand over: ${sayAlarm(alarm, voice)}`}
        help={alarm.handedToName === null ? 'They are told at once.' : `${alarm.handedToName} was given it.`}
        value=""
        choices={[
          { value: '', label: 'Choose somebody' },
          ...people.map(({ userId, name }) => ({ value: userId, label: name })),
        ]}
        onChoose={(userId) => {
          if (userId !== '') hand.mutate({ alarmId: alarm.id, userId })
        }}
      />
      <FormProblem error={hand.error} />
    </div>
  )
}
