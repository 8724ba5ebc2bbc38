import { screen } from '@testing-library/react'
import { expect, test } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { WatchCard } from './WatchCard.tsx'

const today = '2026-11-25'
const subject = { id: '01900000-0000-7000-8000-000000000001', kind: 'clutch' as const, name: 'Clutch 3' }

test.each([
  ['nest', 'may hatch'],
  ['pouch', 'may be released'],
  ['mouth', 'may be released'],
] as const)('of a clutch in a %s it says that it %s', (care, says) => {
  answerApi({})
  const night = (date: string, probability: number) => ({ subject, care, date, probability })
  const watch = { kind: 'hatch' as const, of: night(today, 0.62), others: [night('2026-11-26', 0.2)] }
  renderInRoom(<WatchCard watch={watch} now={new Date(`${today}T12:00:00.000Z`)} today={today} />)
  const said = screen.getByRole('region', { name: 'The one thing to watch' }).textContent
  expect(said).toContain(`62% Clutch 3 ${says} tonight`)
  expect(screen.getByRole('list', { name: `Nights it ${says}` })).toBeTruthy()
})
