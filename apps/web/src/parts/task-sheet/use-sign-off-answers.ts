'use client'

import type { Task } from '@fryward/shared'
import { useRef, useState } from 'react'
import { isApiProblem } from '@/base/api/problem.ts'
import type { TaskReading } from './read-task.ts'

/** What another person already did, as far as the API's answer says it. */
export type DoneByOther = { sentence: string; task: Task }

/** What the page and the API say to a sign-off: what is wrong, what is asked back, who was first. */
export function useSignOffAnswers() {
  const [errors, setErrors] = useState<Record<string, string>>({})
  const [questions, setQuestions] = useState<Record<string, string>>({})
  const [doneByOther, setDoneByOther] = useState<DoneByOther>()
  const confirmed = useRef<string[]>([])
  /** Told that somebody was first, and said "I did it too": a question after that must not forget it. */
  const wasFirst = useRef(false)
  return {
    errors,
    questions,
    doneByOther,
    confirmed,
    wasFirst,
    /** @returns whether it may be sent as it is. */
    takeReading: ({ errors: wrong, improbable }: TaskReading): boolean => {
      const isWrong = Object.keys(wrong).length > 0
      setErrors(wrong)
      if (!isWrong) setQuestions(improbable)
      return !isWrong && Object.keys(improbable).length === 0
    },
    takeProblem: (error: unknown) => {
      if (!isApiProblem(error)) return
      const byField = Object.fromEntries(error.fields.map((field) => [toFieldName(field.path), field.message]))
      if (error.code === 'already_done') setDoneByOther({ sentence: error.detail, task: error.current as Task })
      if (error.code === 'needs_confirmation') setQuestions(byField)
      if (error.code === 'invalid_input') setErrors(byField)
    },
    /** What is typed anew is asked about anew, and what was wrong with it was so before. */
    forget: (name: string) => {
      confirmed.current = []
      setQuestions({})
      setErrors((all) => {
        const { [name]: said, ...others } = all
        return said === undefined ? all : others
      })
    },
    goBack: () => setQuestions({}),
    confirmAll: () => {
      confirmed.current = [...new Set([...confirmed.current, ...Object.keys(questions)])]
      setQuestions({})
    },
    sayItWasTwice: () => {
      wasFirst.current = true
      setDoneByOther(undefined)
    },
  }
}

/** The API names a field by its path in the body (values.density); the form knows it by its own name. */
export const toFieldName = (path: string) => path.replace(/^(body\.)?(values\.)?/, '').split('.')[0] ?? path
