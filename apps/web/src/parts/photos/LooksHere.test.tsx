import { type Photo, PhotoSchema } from '@fryward/shared'
import { screen, waitFor } from '@testing-library/react'
import { expect, it } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { LooksHere } from './LooksHere.tsx'
import { PhotoDialog } from './PhotoDialog.tsx'

const id = (n: number) => `01900000-0000-7000-8000-${String(n).padStart(12, '0')}`
const photoOf = (n: number, shows: Photo['shows']): Photo =>
  PhotoSchema.parse({
    ...{ id: id(n), subjectId: id(1), factId: null, addedAt: '2026-11-25T06:00:00Z', addedByName: 'Ana' },
    ...{ width: 40, height: 30, bytes: 900, caption: '', shows },
  })

it('shows the newest picture of each thing that is asked for, and nothing where the owner gave none', async () => {
  answerApi({ listLooks: () => [photoOf(3, 'eggs_eyed'), photoOf(2, 'eggs_eyed'), photoOf(4, 'full_bellies')] })
  const { show } = renderInRoom(<LooksHere looks={['eggs_eyed', 'eggs_silver']} />)
  expect(await screen.findByText('Eyed eggs')).toBeTruthy()
  const [only, ...others] = screen.getAllByRole('listitem')
  expect(others).toEqual([])
  expect(only?.querySelector('img')?.getAttribute('src')).toContain(id(3))
  show(<LooksHere looks={['eggs_silver']} />)
  expect(screen.queryByRole('listitem')).toBeNull()
})

it('is chosen by the owner on the photo itself', async () => {
  HTMLDialogElement.prototype.showModal ??= () => {}
  const { writes } = answerApi({ markPhoto: () => photoOf(3, 'eggs_eyed') })
  const { user } = renderInRoom(<PhotoDialog photo={photoOf(3, null)} onClose={() => {}} />)
  const box = screen.getByLabelText('This is what it looks like here')
  await user.selectOptions(box, 'Eyed eggs')
  await waitFor(() => expect(writes).toEqual([{ route: 'markPhoto', body: { shows: 'eggs_eyed' } }]))
})
