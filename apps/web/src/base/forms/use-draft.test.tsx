import { screen } from '@testing-library/react'
import { expect, test } from 'vitest'
import { PersonProvider, type SignedIn } from '@/base/room/person-context.tsx'
import { carla } from '@/testing/made-up-commands.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { useDraft } from './use-draft.ts'

function Typed() {
  const { draft, change } = useDraft({ name: '' }, 'new-room')
  return (
    <input aria-label="Name" value={draft.name} onChange={(event) => change({ name: event.currentTarget.value })} />
  )
}
const of = (person: SignedIn | null) => (
  <PersonProvider value={person}>
    <Typed />
  </PersonProvider>
)

test('what was begun comes back to a form that stood there before it was known who is in', async () => {
  const { user, show } = renderInRoom(of(carla))
  await user.type(screen.getByLabelText('Name'), 'Garage')
  show(null)
  show(of(null))
  expect(screen.getByLabelText<HTMLInputElement>('Name').value).toBe('')
  show(of(carla))
  expect(await screen.findByDisplayValue('Garage')).toBeDefined()
})
