'use client'

import { CureChangeSchema, type FoodCure, type Instant } from '@fryward/shared'
import { useQuery } from '@tanstack/react-query'
import { FormProblem } from '@/base/forms/Form.tsx'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { clutchesOptions, useChangeClutch } from '@/parts/clutches/queries.ts'
import { useRecordFact } from '@/parts/facts/queries.ts'

type Props = { cure: FoodCure; planMadeAt: Instant; said: string; onChosen: () => void }

/** Chooses the cure that is shown: the list then has its tasks. */
export function ChooseCure(props: Props) {
  if (!useMay('record')) return null
  return props.cure.change.kind === 'leave_clutch' ? (
    <LeaveClutch {...props} clutchId={props.cure.change.clutchId} />
  ) : (
    <MakeTasks {...props} />
  )
}

function MakeTasks({ cure, planMadeAt, said, onChosen }: Props) {
  const room = useRoom()
  const record = useRecordFact(room.id, { about: said })
  const choose = () => {
    const change = CureChangeSchema.parse(cure.change)
    record.mutate({ kind: 'cure', subjectId: room.id, data: { change, planMadeAt } }, { onSuccess: onChosen })
  }
  return (
    <>
      <Button variant="filled" isBusy={record.isPending} onClick={choose}>
        Do this
      </Button>
      <FormProblem error={record.error} />
    </>
  )
}

/** What is meant with a clutch is decided on like on its own page. */
function LeaveClutch({ clutchId, said, onChosen }: Props & { clutchId: string }) {
  const room = useRoom()
  const clutch = useQuery(clutchesOptions(room.id)).data?.find(({ id }) => id === clutchId)
  const change = useChangeClutch(room.id, clutchId, { about: said })
  if (!clutch) return null
  const choose = () => change.mutate({ intent: 'leave_with_parents', version: clutch.version }, { onSuccess: onChosen })
  return (
    <>
      <Button variant="filled" isBusy={change.isPending} onClick={choose}>
        Do this
      </Button>
      <FormProblem error={change.error} />
    </>
  )
}
