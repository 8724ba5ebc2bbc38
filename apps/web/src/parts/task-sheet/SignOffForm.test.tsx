import type { TaskField } from '@fryward/shared'
import { screen, waitFor } from '@testing-library/react'
import type { UserEvent } from '@testing-library/user-event'
import { describe, expect, it } from 'vitest'
import { answerApi, type Refusal } from '@/testing/answer-api.ts'
import { makeRoom, makeTask, newId } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { SignOffForm } from './SignOffForm.tsx'

const limits = { minimum: 0, maximum: 5000, likelyMinimum: 50, likelyMaximum: 800 }
const density: TaskField = {
  ...{ type: 'count', name: 'density', label: 'Rotifers', isRequired: true, help: null, unit: 'per_mL', ...limits },
  ...{ usual: null, volumeMl: 1, replicates: 3, withEggs: true },
}
const temperature: TaskField = {
  ...{ type: 'number', name: 'temperature', label: 'Temperature', isRequired: true, help: null, unit: 'degC' },
  ...{ minimum: 5, maximum: 40, likelyMinimum: 24, likelyMaximum: 29, usual: 26, step: 0.1 },
}
const smell: TaskField = {
  ...{ type: 'choice', name: 'smell', label: 'Smell', isRequired: false, help: null },
  choices: [
    { value: 'fresh', label: 'Fresh' },
    { value: 'foul', label: 'Foul' },
  ],
}
const batchId = newId()
const parts: TaskField = {
  ...{ type: 'parts', name: 'parts', label: 'Where it went', isRequired: true, help: null, maximumL: 10 },
  likelyMaximumL: 5,
  suggested: [{ to: 'larval_batch', subjectId: batchId, volumeL: 2, name: 'L1' }],
}

/** @param refusals what the API says to the first tries, before it takes one. */
function open(fields: TaskField[], { room = makeRoom(), refusals = [] as Refusal[] } = {}) {
  const task = makeTask(fields)
  const done = { ...task, state: 'done' as const }
  const left = [...refusals]
  const answer = () => {
    const refused = left.shift()
    return refused ? { refused } : done
  }
  const none = () => []
  const { writes } = answerApi({
    signOffTask: answer,
    ...{ listTanks: none, listCultures: none, listPairs: none, listClutches: none },
    ...{ listLarvalBatches: none, listJuvenileGroups: none },
  })
  const page = renderInRoom(<SignOffForm task={task} />, { room })
  return { ...page, task, sent: () => writes.map(({ body }) => body as { values: object; confirmed: string[] }) }
}

const box = (name: string | RegExp) => screen.getByRole('textbox', { name })
const press = (user: UserEvent, name: string | RegExp) => user.click(screen.getByRole('button', { name }))

describe('the sign-off of a count', () => {
  it('says what the samples make while they are typed', async () => {
    const { user } = open([density])
    expect(screen.getByText('Count, and this says what it makes.')).toBeDefined()
    await user.type(box('Sample 1'), '120')
    expect(screen.getByText('Makes 120 per mL')).toBeDefined()
    await user.type(box('Sample 2'), '100')
    expect(screen.getByText('Makes 110 per mL')).toBeDefined()
    await user.clear(box(/Diluted/))
    await user.type(box(/Diluted/), '5')
    expect(screen.getByText('Makes 550 per mL')).toBeDefined()
  })

  it('takes one more sample than was planned', async () => {
    const { user, sent } = open([density])
    await press(user, 'One more sample')
    for (const [i, number] of ['110', '100', '90', '100'].entries()) await user.type(box(`Sample ${i + 1}`), number)
    await press(user, 'Done')
    await waitFor(() => expect(sent()).toHaveLength(1))
    expect(sent()[0]?.values).toEqual({ density: { animals: [110, 100, 90, 100], volumeMl: 1, dilution: 1 } })
  })

  it('is not sent without a sample: says so, and puts the cursor where it belongs', async () => {
    const { user, sent } = open([density])
    await press(user, 'Done')
    expect(screen.getByText('Needed to go on.')).toBeDefined()
    expect(screen.getByRole('alert').textContent).toBe('One thing to look at above before this can be booked.')
    expect(document.activeElement).toBe(box('Sample 1'))
    expect(sent()).toEqual([])
  })

  it.each([
    ['Sample 1', '12.5', 'Whole numbers, one for each sample.'],
    ['Eggs on them', '7', 'How many animals the eggs were on.'],
    ['Volume of one sample', '0', 'The volume of one sample in mL, more than 0.'],
    ['Sample 1', '9000', 'That makes 9,000. From 0 to 5,000 per mL.'],
  ])('refuses %s of %s, with what is wanted', async (name, typed, sentence) => {
    const { user, sent } = open([density])
    if (name !== 'Sample 1') await user.type(box('Sample 1'), '100')
    await user.clear(box(name))
    await user.type(box(name), typed)
    await press(user, 'Done')
    expect(screen.getByText(sentence)).toBeDefined()
    expect(sent()).toEqual([])
  })

  it('asks about a number that is unlikely here, and books it once it is said to be right', async () => {
    const { user, sent } = open([density])
    await user.type(box('Sample 1'), '1500')
    await press(user, 'Done')
    expect(screen.getByText('Rotifers: 1,500 per mL. Likely here: 50 to 800.')).toBeDefined()
    expect(sent()).toEqual([])
    await press(user, 'Yes, it is right')
    await waitFor(() => expect(sent()).toHaveLength(1))
    expect(sent()[0]).toMatchObject({ values: { density: { animals: [1500] } }, confirmed: ['density'] })
  })

  it('keeps what was typed for another look, and asks anew about what is typed then', async () => {
    const { user, sent } = open([density])
    await user.type(box('Sample 1'), '1500')
    await press(user, 'Done')
    await press(user, 'Look at it again')
    expect(box('Sample 1')).toHaveProperty('value', '1500')
    await user.clear(box('Sample 1'))
    await user.type(box('Sample 1'), '2500')
    await press(user, 'Done')
    expect(screen.getByText(/2,500 per mL. Likely here/)).toBeDefined()
    expect(sent()).toEqual([])
  })
})

describe('what the API says to a sign-off', () => {
  const about = (message: string) => [{ path: 'body.values.density', message }]

  it('stands at the field it is about, and what was confirmed of the old number goes with it', async () => {
    const { user, sent } = open([density], {
      refusals: [{ status: 400, code: 'invalid_input', detail: 'Look at it again.', fields: about('more than 10') }],
    })
    await user.type(box('Sample 1'), '1500')
    await press(user, 'Done')
    await press(user, 'Yes, it is right')
    expect(await screen.findByText('more than 10')).toBeDefined()
    // Above the buttons too, by the name that the form gives the field.
    expect(screen.getByText(`${density.label} · more than 10`)).toBeDefined()
    await user.clear(box('Sample 1'))
    await user.type(box('Sample 1'), '100')
    await press(user, 'Done')
    await waitFor(() => expect(sent()).toHaveLength(2))
    expect(sent().map(({ confirmed }) => confirmed)).toEqual([['density'], []])
  })

  it('is asked where it is a question, and its answer goes along', async () => {
    const { user, sent } = open([density], {
      refusals: [
        { status: 409, code: 'needs_confirmation', detail: 'A question.', fields: about('Half of yesterday. Right?') },
      ],
    })
    await user.type(box('Sample 1'), '100')
    await press(user, 'Done')
    expect(await screen.findByText('Half of yesterday. Right?')).toBeDefined()
    expect(screen.queryByText('A question.')).toBeNull()
    await press(user, 'Yes, it is right')
    await waitFor(() => expect(sent()).toHaveLength(2))
    expect(sent().map(({ confirmed }) => confirmed)).toEqual([[], ['density']])
  })
})

describe('the sign-off of a number', () => {
  it('is asked for where a choice is missing, at its first answer', async () => {
    const { user, sent } = open([{ ...smell, isRequired: true }, temperature])
    await user.type(box(/Temperature/), '26')
    await press(user, 'Done')
    expect(screen.getByText('Needed to go on.')).toBeDefined()
    expect(document.activeElement).toBe(screen.getByRole('radio', { name: 'Fresh' }))
    expect(sent()).toEqual([])
  })

  it('is booked by Enter in its box, in the wire’s unit', async () => {
    const { user, sent } = open([temperature], { room: makeRoom({ units: 'us' }) })
    await user.type(box(/Temperature/), '78.8{Enter}')
    await waitFor(() => expect(sent()).toHaveLength(1))
    // (78.8 − 32) × 5/9 °C
    expect(sent()[0]?.values).toEqual({ temperature: expect.closeTo(26, 5) })
  })

  it('takes the usual value only when it is pressed', async () => {
    const { user, sent } = open([temperature])
    await press(user, 'Done')
    expect(sent()).toEqual([])
    await press(user, /As usual: 26/)
    expect(box(/Temperature/)).toHaveProperty('value', '26')
    await press(user, 'Done')
    await waitFor(() => expect(sent()).toHaveLength(1))
  })

  it('names the range when it is outside', async () => {
    const { user } = open([temperature])
    await user.type(box(/Temperature/), '78')
    await press(user, 'Done')
    expect(screen.getByText('From 5 to 40 °C.')).toBeDefined()
  })

  it('leaves out what was not said', async () => {
    const { user, sent } = open([temperature, smell])
    await user.type(box(/Temperature/), '26')
    await press(user, 'Done')
    await waitFor(() => expect(sent()).toHaveLength(1))
    expect(sent()[0]?.values).toEqual({ temperature: 26 })
  })
})

describe('the sign-off of a harvest', () => {
  it('begins with what was planned, adds up, and asks when it is more than most days', async () => {
    const { user, sent } = open([parts])
    expect(screen.getByText('2 L together')).toBeDefined()
    await user.selectOptions(screen.getByRole('combobox', { name: 'Also to' }), 'the drain')
    await user.type(box('To the drain'), '4')
    expect(screen.getByText('6 L together')).toBeDefined()
    await press(user, 'Done')
    expect(screen.getByText('6 L together. Most days at most 5 L.')).toBeDefined()
    await press(user, 'Yes, it is right')
    await waitFor(() => expect(sent()).toHaveLength(1))
    expect(sent()[0]?.values).toEqual({
      parts: [
        { to: 'larval_batch', subjectId: batchId, volumeL: 2 },
        { to: 'drain', volumeL: 4 },
      ],
    })
  })

  it('is refused where it is more than the culture holds', async () => {
    const { user, sent } = open([parts])
    await user.clear(box('To L1'))
    await user.type(box('To L1'), '11')
    await press(user, 'Done')
    expect(screen.getByText('11 L together; at most 10 L.')).toBeDefined()
    expect(sent()).toEqual([])
  })
})

describe('the sheet', () => {
  it('keeps what was typed while another is open beside it', async () => {
    const { user, task, show } = open([temperature])
    await user.type(box(/Temperature/), '27')
    show(<p>another sheet</p>)
    show(<SignOffForm task={task} />)
    expect(box(/Temperature/)).toHaveProperty('value', '27')
  })

  it('is not a stand-in’s where the task is for a caretaker', () => {
    answerApi({})
    const task = makeTask([temperature], { isForStandIn: false })
    renderInRoom(<SignOffForm task={task} />, { room: makeRoom({ myRole: 'stand_in' }) })
    expect(screen.getByText(/This one is for a caretaker/)).toBeDefined()
    expect(screen.queryByRole('button', { name: 'Done' })).toBeNull()
  })
})

describe('what was said of a value', () => {
  it('goes when the value changes, and whoever changes it stays where they type', async () => {
    const refused: Refusal = {
      ...{ status: 400, code: 'invalid_input', detail: 'Look at the temperature.' },
      fields: [{ path: 'values.temperature', message: 'Give a number of at most 40.' }],
    }
    const { user, sent } = open([temperature], { refusals: [refused] })
    await user.clear(box('Temperature'))
    await user.type(box('Temperature'), '27')
    await press(user, 'Done')
    expect(await screen.findByText('Give a number of at most 40.')).toBeDefined()
    await user.type(box('Temperature'), '.5')
    expect(screen.queryByText('Give a number of at most 40.')).toBeNull()
    expect(screen.queryByText('Look at the temperature.')).toBeNull()
    expect(document.activeElement).toBe(box('Temperature'))
    await press(user, 'Done')
    await waitFor(() => expect(sent()).toHaveLength(2))
  })
})

describe('skipping', () => {
  it('begins at its first reason, and what was said of an empty one goes with the first that is chosen', async () => {
    const { user } = open([temperature])
    await press(user, 'Skip…')
    const first = screen.getByRole('radio', { name: 'Not needed today' })
    expect(document.activeElement).toBe(first)
    await press(user, 'Skip this')
    expect(screen.getByText(/Say in a few words why/)).toBeDefined()
    await user.click(first)
    expect(screen.queryByText(/Say in a few words why/)).toBeNull()
  })
})
