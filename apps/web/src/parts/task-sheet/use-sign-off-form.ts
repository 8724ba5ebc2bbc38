'use client'

import { type Task, TaskSchema } from '@fryward/shared'
import { verbDoneLabels } from '@fryward/words'
import { useRef, useState } from 'react'
import { isApiProblem, sentenceOf } from '@/base/api/problem.ts'
import { makeRequestKey } from '@/base/api/request-key.ts'
import { serverNow } from '@/base/api/server-clock.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { useToast } from '@/base/ui/toast.tsx'
import { useWaiting } from '@/parts/live/waiting.ts'
import { closeTask, useOpenTask } from '@/parts/tasks/open-task.ts'
import { useShowTask, useSignOff, useUndo } from '@/parts/tasks/queries.ts'
import { type FieldDraft, startDrafts } from './field-draft.ts'
import { keptDrafts, leftWaiting } from './kept-drafts.ts'
import { readTask } from './read-task.ts'

/** What another person already did, as far as the API's answer says it. */
export type DoneByOther = { sentence: string; task: Task | null }

/**
 * The life of one sign-off on the screen: typing, then perhaps a question about an improbable value, then sending;
 * after "somebody already has", perhaps once more with `again`. A key is kept until an answer came, so that sending
 * the same thing again after a lost answer books once.
 */
export function useSignOffForm({ task, isAgain }: { task: Task; isAgain: boolean }) {
  const room = useRoom()
  const openTask = useOpenTask()
  const showTask = useShowTask(room.id)
  const signOff = useSignOff(room.id, (taskId, error) => tellWhoLeft(taskId, error))
  const undo = useUndo(room.id)
  const toast = useToast()
  const [drafts, setDrafts] = useState(() => keptDrafts.get(task.id) ?? startDrafts(task, room))
  const [doneAt, setDoneAt] = useState<string>()
  const [errors, setErrors] = useState<Record<string, string>>({})
  const [questions, setQuestions] = useState<Record<string, string>>({})
  const [doneByOther, setDoneByOther] = useState<DoneByOther>()
  const requestKey = useRef(makeRequestKey())
  const confirmed = useRef<string[]>([])
  /** Told that somebody was first, and said "I did it too": a question after that must not forget it. */
  const wasFirst = useRef(false)

  const finish = () => {
    toast({
      text: `${verbDoneLabels[task.verb]}: ${task.subject.name}`,
      action: {
        label: 'Undo',
        run: () => undo.mutate(task.id, { onError: (error) => toast({ text: sentenceOf(error) }) }),
      },
    })
    closeTask()
  }

  const tellWhoLeft = (taskId: string, error: unknown) => {
    if (!leftWaiting.delete(taskId)) return
    if (error === null) {
      keptDrafts.delete(taskId)
      return
    }
    const current = TaskSchema.safeParse(isApiProblem(error) ? error.current : null)
    if (current.success) showTask(current.data)
    toast({
      text: `${task.subject.name}: ${sentenceOf(error)}`,
      action: { label: 'Open', run: () => openTask(taskId) },
    })
  }

  const takeProblem = (error: unknown) => {
    if (!isApiProblem(error)) return
    if (error.code !== 'offline') requestKey.current = makeRequestKey()
    if (error.code === 'already_done') {
      const current = TaskSchema.safeParse(error.current)
      setDoneByOther({ sentence: error.detail, task: current.success ? current.data : null })
    }
    if (error.code === 'needs_confirmation')
      setQuestions(Object.fromEntries(error.fields.map((field) => [toFieldName(field.path), field.message])))
    if (error.code === 'invalid_input')
      setErrors(Object.fromEntries(error.fields.map((field) => [toFieldName(field.path), field.message])))
  }

  const post = (again: boolean) => {
    const { values } = readTask(task, drafts, room)
    const body = {
      values,
      shownAmount: task.amount,
      confirmed: confirmed.current,
      again,
      // An answer may come much later than the tap.
      doneAt: doneAt ?? serverNow().toISOString(),
    }
    signOff.mutate(
      { taskId: task.id, body, requestKey: requestKey.current },
      { onSuccess: finish, onError: takeProblem },
    )
  }

  /** Closes the sheet while the sign-off waits; should it be refused later, what was typed is still here. */
  const leave = () => {
    keptDrafts.set(task.id, drafts)
    leftWaiting.add(task.id)
    closeTask()
  }

  const send = () => {
    const reading = readTask(task, drafts, room)
    setErrors(reading.errors)
    if (Object.keys(reading.errors).length > 0) return
    if (Object.keys(reading.improbable).length > 0) setQuestions(reading.improbable)
    else post(isAgain)
  }

  return {
    drafts,
    setDraft: (name: string, draft: FieldDraft) => {
      confirmed.current = []
      setQuestions({})
      const next = { ...drafts, [name]: draft }
      keptDrafts.set(task.id, next)
      setDrafts(next)
    },
    doneAt,
    setDoneAt,
    errors,
    questions,
    goBack: () => setQuestions({}),
    confirm: () => {
      confirmed.current = [...new Set([...confirmed.current, ...Object.keys(questions)])]
      setQuestions({})
      post(isAgain || wasFirst.current)
    },
    send,
    sendAgain: () => {
      wasFirst.current = true
      setDoneByOther(undefined)
      post(true)
    },
    doneByOther,
    problem: showsAsProblem(signOff.error) ? signOff.error : null,
    isBusy: signOff.isPending,
    isWaiting: useWaiting(room.id).includes(task.id),
    leave,
  }
}

/** The API names a field by its path in the body (values.density); the form knows it by its own name. */
const toFieldName = (path: string) => path.replace(/^(body\.)?(values\.)?/, '').split('.')[0] ?? path

/** Answers with a place of their own on the sheet are not told twice. */
const showsAsProblem = (error: unknown) =>
  error !== null && !(isApiProblem(error) && ['already_done', 'needs_confirmation'].includes(error.code))
