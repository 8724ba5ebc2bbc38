'use client'

import { sayTime } from '@fryward/words'
import { useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { closeTask } from '@/parts/tasks/open-task.ts'
import { standingSignOff } from '@/parts/tasks/task-state.ts'
import type { DoneByOther } from './use-sign-off-answers.ts'

/** Two at once: who was first and when. Closing books nothing; saying "I did it too" books what really went in. */
export function AlreadyDone({
  current,
  onAgain,
  isBusy,
}: {
  current: DoneByOther
  onAgain: () => void
  isBusy: boolean
}) {
  const voice = useVoice()
  const signOff = standingSignOff(current.task)
  const title = signOff
    ? `${signOff.byName} did this at ${sayTime(signOff.doneAt, voice)}`
    : 'Somebody has already done this'
  return (
    <Notice tone="worry" title={title}>
      <p>
        {signOff ? 'Nothing was booked for you.' : current.sentence} If you have not done it yourself, close this. If
        you really did it too, say so: both are recorded, and the next amount follows from that.
      </p>
      <Button variant="filled" isWide onClick={closeTask}>
        Close, nothing more to do
      </Button>
      <Button variant="default" isWide onClick={onAgain} isBusy={isBusy}>
        I really did it too
      </Button>
    </Notice>
  )
}
