import type { BodyOf } from '@fryward/shared'
import { screen, waitFor } from '@testing-library/react'
import type { UserEvent } from '@testing-library/user-event'
import { describe, expect, it } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { makeCulture, makeRoom } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { CultureForm } from './CultureForm.tsx'

const parent = makeCulture({ name: 'R1' })

function open({ culture = undefined as ReturnType<typeof makeCulture> | undefined, room = makeRoom() } = {}) {
  const { writes } = answerApi({
    listConcentrates: () => [],
    listCultures: () => [parent],
    createCulture: () => parent,
    changeCulture: () => parent,
  })
  let done = 0
  const { user } = renderInRoom(<CultureForm {...(culture ? { culture } : {})} onDone={() => done++} />, { room })
  return { user, writes, done: () => done }
}

const box = (name: string | RegExp) => screen.getByRole('textbox', { name })
const press = (user: UserEvent, name: string) => user.click(screen.getByRole('button', { name }))

describe('a new culture', () => {
  it('starts with the water that the room mixes', () => {
    open({ room: makeRoom({ salinity: 30, temperatureC: 24 }) })
    expect(box(/Salinity/)).toHaveProperty('value', '30')
    expect(box(/Temperature/)).toHaveProperty('value', '24')
  })

  it('is sent with its parent, and without a density that nobody counted', async () => {
    const { user, writes, done } = open()
    await user.type(box(/Name/), 'R2')
    await user.type(box(/Volume/), '20')
    await user.click(screen.getByRole('checkbox', { name: /It is a backup/ }))
    await user.selectOptions(
      await screen.findByRole('combobox', { name: 'Started from' }),
      await screen.findByText('R1'),
    )
    await press(user, 'Start the culture')
    await waitFor(() => expect(done()).toBe(1))
    const body = writes[0]?.body as BodyOf<'createCulture'>
    expect(body).toMatchObject({ name: 'R2', kind: 'rotifer', strain: 'L', volumeL: 20, isBackup: true })
    expect(body.parentCultureId).toBe(parent.id)
    expect(body).not.toHaveProperty('startDensityPerMl')
  })

  it('has a strain only where it is of rotifers', async () => {
    const { user, writes } = open()
    await user.click(screen.getByRole('radio', { name: /Microalgae/ }))
    expect(screen.queryByRole('group', { name: 'Strain' })).toBeNull()
    await user.type(box(/Name/), 'G1')
    await user.type(box(/Volume/), '10')
    await press(user, 'Start the culture')
    await waitFor(() => expect(writes).toHaveLength(1))
    expect(writes[0]?.body).toMatchObject({ kind: 'microalgae', strain: null })
  })

  it('of cysts is neither fed nor drawn from another, whatever was chosen before', async () => {
    const { user, writes } = open()
    await user.selectOptions(
      await screen.findByRole('combobox', { name: 'Started from' }),
      await screen.findByText('R1'),
    )
    await user.click(screen.getByRole('radio', { name: /Artemia/ }))
    expect(screen.queryByRole('combobox', { name: 'Started from' })).toBeNull()
    expect(screen.queryByRole('combobox', { name: 'Fed from bottle' })).toBeNull()
    await user.type(box(/Name/), 'H1')
    await user.type(box(/Volume/), '2')
    await press(user, 'Start the culture')
    await waitFor(() => expect(writes).toHaveLength(1))
    expect(writes[0]?.body).toMatchObject({ kind: 'artemia_hatch', concentrateId: null, parentCultureId: null })
  })

  it('is not sent without its volume, and what was typed stays', async () => {
    const { user, writes } = open()
    await user.type(box(/Name/), 'R2')
    await press(user, 'Start the culture')
    expect(screen.getByText('Volume, temperature and salinity, as numbers.')).toBeDefined()
    expect(box(/Name/)).toHaveProperty('value', 'R2')
    expect(writes).toEqual([])
  })
})

describe('a change to a culture', () => {
  it('keeps its kind and origin out of reach, and says which version it was made on', async () => {
    const { user, writes, done } = open({ culture: makeCulture({ name: 'R9', volumeL: 40, version: 7 }) })
    expect(screen.queryByRole('group', { name: 'Of what' })).toBeNull()
    expect(screen.queryByRole('combobox', { name: 'Started from' })).toBeNull()
    await user.clear(box(/Volume/))
    await user.type(box(/Volume/), '35')
    await press(user, 'Save')
    await waitFor(() => expect(done()).toBe(1))
    expect(writes[0]?.body).toMatchObject({ name: 'R9', volumeL: 35, version: 7 })
  })
})
