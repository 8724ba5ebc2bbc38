'use client'

import type { Task } from '@fryward/shared'
import { sayDatesIn } from '@fryward/words'
import { useState } from 'react'
import { useMay, useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Controls } from '@/base/ui/Controls.tsx'
import { Notice, WorrySign } from '@/base/ui/Notice.tsx'
import { LooksHere } from '@/parts/photos/LooksHere.tsx'
import { TaskOutcome } from '@/parts/tasks/TaskOutcome.tsx'
import { isAhead } from '@/parts/tasks/task-state.ts'
import { SheetFrame } from './SheetFrame.tsx'
import { SheetTitle } from './SheetTitle.tsx'
import { SignOffForm } from './SignOffForm.tsx'
import { Steps } from './Steps.tsx'
import styles from './sheet.module.css'
import { WhyChain } from './WhyChain.tsx'

/** One task in full: what, how much, steps, cautions, what to record, and why. */
export function TaskSheet({ task, now }: { task: Task; now: Date }) {
  // Somebody else's sign-off must not sweep away what is being typed: the answer to ours tells, and keeps the values.
  const [wasOpen] = useState(task.state === 'open')
  const { timeZone } = useRoom()
  return (
    <Controls>
      <SheetFrame title={<SheetTitle task={task} />}>
        <Steps steps={task.steps} />
        {task.looks && task.looks.length > 0 && <LooksHere looks={task.looks} />}
        <Cautions task={task} />
        {isAhead(task, { now, timeZone }) ? (
          <Notice>This is for reading: it is signed off on its day, and its amounts may change until then.</Notice>
        ) : wasOpen || task.state === 'open' ? (
          <SignOffForm task={task} />
        ) : (
          <Outcome task={task} now={now} />
        )}
        <WhyChain task={task} now={now} />
      </SheetFrame>
    </Controls>
  )
}

const didItLabels = {
  done: 'I did it too',
  skipped: 'I did it all the same',
  missed: 'I did it after all',
  withdrawn: 'I did it anyway',
} as const satisfies Record<Exclude<Task['state'], 'open'>, string>

/** What became of it; and the way in for somebody who really did it, too or all the same. */
function Outcome({ task, now }: { task: Task; now: Date }) {
  const may = useMay('sign_off')
  const [isToo, setToo] = useState(false)
  if (isToo) return <SignOffForm task={task} isAgain={task.state === 'done'} />
  return (
    <>
      <TaskOutcome task={task} now={now} />
      {may && task.state !== 'open' && (
        <Button variant="default" onClick={() => setToo(true)}>
          {didItLabels[task.state]}
        </Button>
      )}
    </>
  )
}

function Cautions({ task }: { task: Task }) {
  const voice = useVoice()
  if (task.cautions.length === 0) return null
  return (
    <ul className={styles.cautions} aria-label="Take care">
      {task.cautions.map((caution) => (
        <li key={caution}>
          <WorrySign />
          {sayDatesIn(caution, voice)}
        </li>
      ))}
    </ul>
  )
}
