'use client'

import { TextInput } from '@mantine/core'
import { isApiProblem } from '@/base/api/problem.ts'

/** The API asks back when more leave than the book knew of; a reason answers it and corrects the book. */
export const isAskedAboutBook = (error: unknown): boolean => isApiProblem(error) && error.code === 'needs_confirmation'

/** Why more left than the book said were there. */
export function BeyondBookBox({ text, onText }: { text: string; onText: (text: string) => void }) {
  return (
    <TextInput
      label="Why were there more?"
      description="It is kept with the record, and the book is corrected by it"
      required
      value={text}
      onChange={(event) => onText(event.currentTarget.value)}
    />
  )
}
