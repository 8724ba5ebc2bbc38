'use client'

import { earlyFeedName, type Task } from '@fryward/shared'
import { verbDoneLabels } from '@fryward/words'
import { isApiProblem, sentenceOf } from '@/base/api/problem.ts'
import { serverNow } from '@/base/api/server-clock.ts'
import { useQueuedTask } from '@/base/outbox/queue-state.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { useToast } from '@/base/ui/toast.tsx'
import { closeTask } from '@/parts/tasks/open-task.ts'
import { useSignOff, useUndo } from '@/parts/tasks/queries.ts'
import { earlyQuestion, isUndoable } from '@/parts/tasks/task-state.ts'
import type { FieldDraft } from './field-draft.ts'
import { readTask } from './read-task.ts'
import { useSignOffAnswers } from './use-sign-off-answers.ts'
import { useTypedSignOff } from './use-typed-sign-off.ts'

/**
 * The life of one sign-off on the screen: typing, then perhaps a question about an improbable value, then sending;
 * after "somebody already has", perhaps once more with `again`.
 */
export function useSignOffForm({ task, isAgain }: { task: Task; isAgain: boolean }) {
  const room = useRoom()
  const signOff = useSignOff(room)
  const typed = useTypedSignOff(task)
  const answers = useSignOffAnswers()
  const tellDone = useTellDone(task)
  const { isQueued } = useQueuedTask(task.id)

  const post = (again: boolean) => {
    const { values } = readTask(task, typed.drafts, room)
    // An answer may come much later than the tap.
    const doneAt = typed.doneAt ?? serverNow().toISOString()
    const body = { values, shownAmount: task.amount, confirmed: answers.confirmed.current, again, doneAt }
    signOff.mutate({ task, body, draftKey: typed.draftKey }, { onSuccess: tellDone, onError: answers.takeProblem })
  }
  return {
    ...{ typed, answers, isBusy: signOff.isPending },
    /** Sent from a sheet that was left, or from another tab: there is nothing to type any more. */
    isSentElsewhere: isQueued && !signOff.isPending,
    problem: showsAsProblem(signOff.error) ? signOff.error : null,
    takeTyping: (name: string, draft: FieldDraft) => {
      answers.forget(name)
      if (signOff.isError) signOff.reset()
      typed.setField(name, draft)
    },
    send: () => {
      const reading = readTask(task, typed.drafts, room)
      const at = typed.doneAt === undefined ? serverNow() : new Date(typed.doneAt)
      const early = earlyQuestion(task, { at, rounds: room.rounds })
      if (early) reading.improbable[earlyFeedName] = early
      if (answers.takeReading(reading)) post(isAgain)
    },
    confirm: () => {
      answers.confirmAll()
      post(isAgain || answers.wasFirst.current)
    },
    sendAgain: () => {
      answers.sayItWasTwice()
      post(true)
    },
  }
}

/** Closes the sheet with the message that takes it back. */
function useTellDone(task: Task) {
  const undo = useUndo(useRoom())
  const toast = useToast()
  const takeBack = {
    label: 'Undo',
    run: () => undo.mutate(task, { onError: (error) => toast({ text: sentenceOf(error) }) }),
  }
  return (done: Task) => {
    toast({
      text: `${verbDoneLabels[task.verb]}: ${task.subject.name}`,
      ...(isUndoable(done) ? { action: takeBack } : {}),
    })
    closeTask()
  }
}

/** Answers with a place of their own on the sheet are not told twice. */
const showsAsProblem = (error: unknown) =>
  error !== null && !(isApiProblem(error) && ['already_done', 'needs_confirmation'].includes(error.code))
