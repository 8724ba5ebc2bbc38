import { type BodyOf, RoomSchema } from '@fryward/shared'
import { addDays, toPlainDate } from '@fryward/words'
import { screen, waitFor, within } from '@testing-library/react'
import type { UserEvent } from '@testing-library/user-event'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { serverNow } from '@/base/api/server-clock.ts'
import { answerApi } from '@/testing/answer-api.ts'
import { makeRoom } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { RoomWizard } from './RoomWizard.tsx'

// The page is scrolled to its top at each step, which a DOM without a screen cannot do.
beforeEach(() => void vi.stubGlobal('scrollTo', () => {}))

const created = makeRoom()
const ocellaris = {
  ...{ id: 'amphiprion-ocellaris', scientificName: 'Amphiprion ocellaris', commonName: 'Clown anemonefish' },
  ...{ care: 'nest' as const, permitNote: null },
}
const openWizard = () => {
  const { writes } = answerApi({ createRoom: () => created, listSpecies: () => [ocellaris] })
  const { user, went, show } = renderInRoom(<RoomWizard />)
  return { user, went, show, sent: () => writes.map(({ body }) => body as BodyOf<'createRoom'>) }
}

const box = (name: string | RegExp) => screen.getByRole('textbox', { name })
const press = (user: UserEvent, name: string) => user.click(screen.getByRole('button', { name }))
const retype = async (user: UserEvent, name: string | RegExp, text: string) => {
  await user.clear(box(name))
  await user.type(box(name), text)
}
const toVessels = async (user: UserEvent) => {
  await user.type(box('Name of the room'), 'Back room')
  await press(user, 'Next')
  await press(user, 'Next')
}

describe('the wizard', () => {
  it('asks for the room’s name before it goes on, and says so in a sentence', async () => {
    const { user } = openWizard()
    await press(user, 'Next')
    expect(screen.getByText('A name for the room, so that it can be told apart.')).toBeDefined()
    expect(screen.getByRole('heading', { name: 'The room' })).toBeDefined()
  })

  it.each([
    ['Lights off', '27:00', 'Lights on and lights off, as times of day such as 7:30.'],
    ['New water: salinity', 'brackish', 'A number, such as 12.5.'],
    ['New water: salinity', '350', 'The salinity of new water, from 0 to 45 as a meter shows it.'],
  ])('says on the first step what is wrong with %s', async (name, typed, sentence) => {
    const { user } = openWizard()
    await user.type(box('Name of the room'), 'Back room')
    await retype(user, new RegExp(name), typed)
    await press(user, 'Next')
    expect(screen.getByText(sentence)).toBeDefined()
    expect(box(new RegExp(name))).toHaveProperty('value', typed)
  })

  it('goes on by Enter, and keeps what was typed when one goes back', async () => {
    const { user } = openWizard()
    await user.type(box('Name of the room'), 'Back room{Enter}')
    expect(screen.getByRole('heading', { name: 'Its rounds' })).toBeDefined()
    await retype(user, 'Round 1: name', 'Dawn')
    await press(user, 'Back')
    expect(box('Name of the room')).toHaveProperty('value', 'Back room')
    await press(user, 'Next')
    expect(box('Round 1: name')).toHaveProperty('value', 'Dawn')
  })

  it('refuses a round without a time of day on the step that has the round', async () => {
    const { user } = openWizard()
    await user.type(box('Name of the room'), 'Back room{Enter}')
    await retype(user, 'Round 2: starts', 'noon')
    await press(user, 'Next')
    expect(screen.getByText('When the round Midday starts, as a time of day such as 7:30.')).toBeDefined()
  })

  it('keeps the water as warm as it was when the units change', async () => {
    const { user } = openWizard()
    await user.click(screen.getByRole('radio', { name: /US/ }))
    // 26 °C = 26 × 9/5 + 32 °F
    expect(box(/temperature/)).toHaveProperty('value', '78.8')
    await user.click(screen.getByRole('radio', { name: /[Mm]etric/ }))
    expect(box(/temperature/)).toHaveProperty('value', '26')
  })

  it('sends all of it once, at the end, in the wire’s units', async () => {
    const { user, sent, went } = openWizard()
    await user.click(screen.getByRole('radio', { name: /US/ }))
    await toVessels(user)
    await press(user, 'Add a rotifer culture')
    const culture = screen.getByRole('group', { name: 'Rotifer cultures' })
    await user.type(within(culture).getByRole('textbox', { name: 'Volume' }), '10')
    await user.type(box('Name on the bottle'), 'Green paste')
    await user.type(box(/Strength/), '68')
    await press(user, 'Add a tank')
    await user.type(within(screen.getByRole('group', { name: 'Tanks' })).getByRole('textbox', { name: 'Volume' }), '20')
    expect(sent()).toEqual([])
    await press(user, 'Set up the room')
    const [body] = sent()
    // a US gallon is 3.785411784 L (NIST Handbook 44, 2024, Appendix C)
    expect(body?.cultures).toMatchObject([{ name: 'R1', kind: 'rotifer', strain: 'L' }])
    expect(body?.cultures[0]?.volumeL).toBeCloseTo(37.854, 2)
    expect(body?.tanks[0]?.volumeL).toBeCloseTo(75.708, 2)
    expect(body?.concentrate).toMatchObject({ name: 'Green paste', cellsPerMl: 68e9 })
    expect(body?.temperatureC).toBeCloseTo(26, 5)
    expect(sent()).toHaveLength(1)
    expect(went).toEqual([`/rooms/${created.id}/today`])
  })

  it.each([
    ['a vessel without a volume', 'Add a tank', 'The volume of T1, a number above 0.'],
    ['a bottle without its strength', undefined, 'The strength of the bottle from its label, or no bottle at all.'],
  ])('does not send %s, and says what to do', async (_what, button, sentence) => {
    const { user, sent } = openWizard()
    await toVessels(user)
    if (button) await press(user, button)
    else await user.type(box('Name on the bottle'), 'Green paste')
    await press(user, 'Set up the room')
    expect(screen.getByText(sentence)).toBeDefined()
    expect(sent()).toEqual([])
  })

  it('takes in the pairs that spawn already, each in one of its tanks and together since a day that was', async () => {
    const { user, sent } = openWizard()
    await toVessels(user)
    expect(screen.queryByRole('button', { name: 'Add a pair' })).toBeNull()
    await press(user, 'Add a tank')
    await user.type(within(screen.getByRole('group', { name: 'Tanks' })).getByRole('textbox', { name: 'Volume' }), '20')
    await press(user, 'Add a pair')
    await press(user, 'Set up the room')
    expect(screen.getByText('Pair 1: the species.')).toBeDefined()
    await screen.findByRole('option', { name: /ocellaris/ })
    await user.selectOptions(screen.getByLabelText(/^Species/), 'amphiprion-ocellaris')
    await user.type(screen.getByLabelText('Together since, if known'), '2130-01-01')
    await press(user, 'Set up the room')
    expect(screen.getByText('Pair 1: together since a day that is not still to come.')).toBeDefined()
    await user.clear(screen.getByLabelText('Together since, if known'))
    await press(user, 'Set up the room')
    expect(sent()[0]?.pairs).toEqual([{ name: 'Pair 1', species: 'amphiprion-ocellaris', tank: 'T1', formedOn: null }])
  })

  it('asks for the tank of a pair where that was taken out again', async () => {
    const { user, sent } = openWizard()
    await toVessels(user)
    await press(user, 'Add a tank')
    await press(user, 'One more tank')
    for (const volume of screen.getAllByRole('textbox', { name: 'Volume' })) await user.type(volume, '20')
    await press(user, 'Add a pair')
    await screen.findByRole('option', { name: /ocellaris/ })
    await user.selectOptions(screen.getByLabelText(/^Species/), 'amphiprion-ocellaris')
    await press(user, 'Take out the tank T1')
    await press(user, 'Set up the room')
    expect(screen.getByText('The tank that Pair 1 lives in.')).toBeDefined()
    expect(screen.getByDisplayValue('Choose a tank')).toBeDefined()
    await user.selectOptions(screen.getByLabelText('In the tank'), 'T2')
    await press(user, 'Set up the room')
    expect(sent()[0]?.pairs).toMatchObject([{ name: 'Pair 1', tank: 'T2' }])
  })

  it.each([
    ['a tank of 0 L', 'Volume', '0', 'The volume of T1, a number above 0.'],
    ['a tank without a name', 'Name', ' ', 'A name for each tank, so that it can be told apart.'],
  ])('does not send %s', async (_what, name, typed, sentence) => {
    const { user, sent } = openWizard()
    await toVessels(user)
    await press(user, 'Add a tank')
    const tank = within(screen.getByRole('group', { name: 'Tanks' }))
    await user.type(tank.getByRole('textbox', { name: 'Volume' }), '20')
    await user.clear(tank.getByRole('textbox', { name }))
    await user.type(tank.getByRole('textbox', { name }), typed)
    await press(user, 'Set up the room')
    expect(screen.getByText(sentence)).toBeDefined()
    expect(sent()).toEqual([])
  })

  it.each([
    ['Round 2: name', ' ', 'A name for the round that starts at 12:30.'],
    ['Round 2: starts', '7:00', 'Two rounds start at 07:00: give one of them another time.'],
  ])('says on the step of the rounds what is wrong with %s', async (name, typed, sentence) => {
    const { user } = openWizard()
    await user.type(box('Name of the room'), 'Back room{Enter}')
    await retype(user, name, typed)
    await press(user, 'Next')
    expect(screen.getByText(sentence)).toBeDefined()
  })

  const toSwimmers = async (user: UserEvent) => {
    await toVessels(user)
    await press(user, 'Add a rotifer culture')
    await press(user, 'Add a tank')
    for (const volume of screen.getAllByRole('textbox', { name: 'Volume' })) await user.type(volume, '20')
    await press(user, 'Add larvae or juveniles')
    await screen.findByRole('option', { name: /ocellaris/ })
  }

  it('takes in the larvae that swim already, by their age, fed from a culture of the same form', async () => {
    const { user, sent } = openWizard()
    await toSwimmers(user)
    await user.selectOptions(screen.getByLabelText(/^Species/), 'amphiprion-ocellaris')
    await press(user, 'Set up the room')
    expect(screen.getByText('Larvae 1: their age in days, a whole number, or the day itself.')).toBeDefined()
    await user.type(box(/How old/), '3')
    await user.type(box(/About how many/), '3.5')
    await press(user, 'Set up the room')
    expect(screen.getByText(/^Larvae 1: how many there are, a whole number above 0/)).toBeDefined()
    await user.clear(box(/About how many/))
    await press(user, 'Set up the room')
    // Day 3, where day 0 is the morning after the hatch night.
    const hatchedOn = addDays(toPlainDate(serverNow(), sent()[0]?.timeZone ?? ''), -4)
    expect(sent()[0]?.batches).toEqual([
      { name: 'Larvae 1', species: 'amphiprion-ocellaris', tank: 'T1', hatchedOn, fedFrom: 'R1' },
    ])
  })

  it('takes in juveniles of a species that it does not know, with the days of their eggs or without', async () => {
    const { user, sent } = openWizard()
    await toSwimmers(user)
    await user.click(screen.getByRole('radio', { name: 'Juveniles' }))
    await user.selectOptions(screen.getByLabelText(/^Species/), 'other')
    expect(screen.getByText('No profile of this species yet')).toBeDefined()
    await user.type(box(/How old/), '20')
    await press(user, 'Set up the room')
    expect(screen.getByText(/^Juveniles 1: the scientific name of the species/)).toBeDefined()
    await user.type(box(/Scientific name/), 'Synchiropus splendidus')
    await user.type(box(/From eggs to hatch/), '0')
    await press(user, 'Set up the room')
    expect(screen.getByText(/^Juveniles 1: the days from eggs to hatch, a whole number from 1 to 60/)).toBeDefined()
    await user.clear(box(/From eggs to hatch/))
    await user.type(box(/About how many/), '12')
    await press(user, 'Set up the room')
    const settledOn = addDays(toPlainDate(serverNow(), sent()[0]?.timeZone ?? ''), -20)
    expect(sent()[0]?.groups).toEqual([
      { name: 'Juveniles 1', species: 'other-x-synchiropus-splendidus', tank: 'T1', settledOn, number: 12 },
    ])
  })

  it('comes back as it was typed, on the step where it was left', async () => {
    const { user, show } = openWizard()
    await toSwimmers(user)
    await user.type(box(/How old/), '3')
    show(null)
    show(<RoomWizard />)
    await waitFor(() => expect(box(/How old/)).toHaveProperty('value', '3'))
    expect(screen.getByDisplayValue('Larvae 1')).toBeDefined()
  })

  it('leaves the vessels for later, whatever was typed of them', async () => {
    const { user, sent } = openWizard()
    await toVessels(user)
    await press(user, 'Add a tank')
    await press(user, 'Leave the vessels for later')
    expect(sent()).toHaveLength(1)
    expect(sent()[0]).toMatchObject({ tanks: [], cultures: [], rounds: expect.arrayContaining([]) })
    expect(RoomSchema.shape.rounds.safeParse(sent()[0]?.rounds).success).toBe(true)
  })

  it('takes out the vessel it is told to, and gives the next a name that is free', async () => {
    const { user } = openWizard()
    await toVessels(user)
    await press(user, 'Add a tank')
    await press(user, 'One more tank')
    await press(user, 'Take out the tank T1')
    await press(user, 'One more tank')
    const names = within(screen.getByRole('group', { name: 'Tanks' })).getAllByRole('textbox', { name: 'Name' })
    expect(names.map((one) => (one as HTMLInputElement).value)).toEqual(['T2', 'T3'])
  })
})
