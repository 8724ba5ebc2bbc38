'use client'

import type { Room } from '@fryward/shared'
import { useQuery } from '@tanstack/react-query'
import { useRouter } from 'next/navigation'
import { useEffect, useState } from 'react'
import { Form } from '@/base/forms/Form.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { PersonProvider } from '@/base/room/person-context.tsx'
import { VoiceProvider } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { useIsHydrated } from '@/base/ui/use-is-hydrated.ts'
import { Doorway } from '@/parts/doorway/Doorway.tsx'
import { RoomFields } from '@/parts/rooms/RoomFields.tsx'
import { RoundFields } from '@/parts/rooms/RoundFields.tsx'
import { readRoom } from '@/parts/rooms/room-draft.ts'
import styles from '@/parts/rooms/rooms.module.css'
import { meOptions } from '@/parts/session/me.ts'
import { BottleFields } from './BottleFields.tsx'
import { CultureDrafts } from './CultureDrafts.tsx'
import { PairDrafts } from './PairDrafts.tsx'
import { readWizard } from './read-wizard.ts'
import { SwimmerDrafts } from './SwimmerDrafts.tsx'
import { TankDrafts } from './TankDrafts.tsx'
import { useCreateRoom } from './use-create-room.ts'
import { startWizard } from './wizard-draft.ts'

const steps = ['The room', 'Its rounds', 'What lives in it'] as const

/** The wizard of whoever is signed in: what they typed into it is theirs. */
export function NewRoomPage() {
  const me = useQuery(meOptions())
  const isHydrated = useIsHydrated()
  // It starts from the device's own zone and locale, which the server cannot know.
  if (!isHydrated)
    return (
      <Doorway title={steps[0]} lead="Setting up a room">
        <Bones heights={[4, 4, 4]} />
      </Doorway>
    )
  return (
    <PersonProvider value={me.data?.user ?? null}>
      <RoomWizard />
    </PersonProvider>
  )
}

/** Three short steps, one request at the end; the vessels may be left for later. */
export function RoomWizard() {
  const router = useRouter()
  const create = useCreateRoom()
  const [missing, setMissing] = useState<string>()
  const typed = useDraft({ ...startWizard(), step: 0 }, 'new-room')
  const { draft, change } = typed
  const { step } = draft
  useEffect(() => window.scrollTo(0, 0), [])
  const go = (to: number) => {
    setMissing(undefined)
    change({ step: to })
    window.scrollTo(0, 0)
  }
  const send = (withVessels: boolean) => {
    const body = readWizard(draft, withVessels)
    if (typeof body === 'string') return setMissing(body)
    setMissing(undefined)
    const open = (room: Room) => {
      typed.drop()
      router.replace(`/rooms/${room.id}/today`)
    }
    create.mutate(body, { onSuccess: open })
  }
  const next = () => {
    if (step === 0 && draft.name.trim() === '') return setMissing('A name for the room, so that it can be told apart.')
    // Said on the step that has the field, not at the end of the last one.
    const read = readRoom(step === 0 ? { ...draft, rounds: [] } : draft)
    if (typeof read === 'string') return setMissing(read)
    if (step < steps.length - 1) go(step + 1)
    else send(true)
  }
  return (
    <Doorway title={steps[step] ?? ''} lead={`Setting up a room, step ${step + 1} of ${steps.length}`}>
      <VoiceProvider voice={draft}>
        <Form
          submitLabel={step < steps.length - 1 ? 'Next' : 'Set up the room'}
          isBusy={create.isPending}
          error={create.error}
          onSubmit={next}
          typed={typed}
        >
          {step === 0 && <RoomFields draft={draft} change={change} error={undefined} />}
          {step === 1 && <RoundFields rounds={draft.rounds} onRounds={(rounds) => change({ rounds })} />}
          {step === 2 && (
            <>
              <CultureDrafts
                cultures={draft.cultures}
                units={draft.units}
                onCultures={(cultures) => change({ cultures })}
              />
              <BottleFields draft={draft} change={change} />
              <TankDrafts tanks={draft.tanks} units={draft.units} onTanks={(tanks) => change({ tanks })} />
              <PairDrafts pairs={draft.pairs} tanks={draft.tanks} onPairs={(pairs) => change({ pairs })} />
              <SwimmerDrafts
                swimmers={draft.swimmers}
                tanks={draft.tanks}
                cultures={draft.cultures}
                onSwimmers={(swimmers) => change({ swimmers })}
              />
            </>
          )}
          {missing && <Notice tone="worry" title={missing} />}
        </Form>
      </VoiceProvider>
      <div className={styles.buttons}>
        {step > 0 && (
          <Button variant="default" onClick={() => go(step - 1)}>
            Back
          </Button>
        )}
        {step === steps.length - 1 && (
          <Button variant="subtle" isBusy={create.isPending} onClick={() => send(false)}>
            Leave the vessels for later
          </Button>
        )}
      </div>
    </Doorway>
  )
}
