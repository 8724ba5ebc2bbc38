import type { NewFact } from '@fryward/shared'
import { screen, waitFor } from '@testing-library/react'
import type { UserEvent } from '@testing-library/user-event'
import { describe, expect, it } from 'vitest'
import type { RecordKind } from '@/parts/facts/record-kinds.ts'
import { answerApi, type Refusal } from '@/testing/answer-api.ts'
import { keepFact, makeCulture } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { RecordForm } from './RecordForm.tsx'

const own = makeCulture({ name: 'R1' })
const other = makeCulture({ name: 'R2' })
const ended = makeCulture({ name: 'R3', endedAt: '2026-11-20T08:00:00.000Z' })

const larvae = { id: '0197a000-0000-7000-8000-00000000b001', kind: 'larval_batch', name: 'Batch 1' } as const
const vessel = { id: own.id, kind: 'culture', name: own.name } as const

function open(
  kind: RecordKind,
  { refusals = [] as Refusal[], subject = vessel as typeof vessel | typeof larvae } = {},
) {
  const none = () => []
  const left = [...refusals]
  const { writes } = answerApi({
    recordFact: ({ body }) => {
      const refused = left.shift()
      return refused ? { refused } : keepFact(body as NewFact)
    },
    ...{ listTanks: none, listPairs: none, listClutches: none, listLarvalBatches: none, listJuvenileGroups: none },
    ...{ listConcentrates: none, listCultures: () => [own, other, ended] },
  })
  let closed = 0
  const { user } = renderInRoom(<RecordForm subject={subject} kind={kind} onClose={() => closed++} />)
  return { user, sent: () => writes.map(({ body }) => body as NewFact), closed: () => closed }
}

const box = (name: string | RegExp) => screen.getByRole('textbox', { name })
const record = (user: UserEvent) => user.click(screen.getByRole('button', { name: 'Record' }))

describe('a count without a task', () => {
  it('says what its samples make, and is kept with all of them', async () => {
    const { user, sent, closed } = open('count')
    await user.type(box('Sample 1'), '120')
    await user.type(box('Sample 2'), '100')
    await user.clear(box(/Diluted/))
    await user.type(box(/Diluted/), '2')
    expect(screen.getByText('Makes 220 per mL')).toBeDefined()
    await record(user)
    await waitFor(() => expect(closed()).toBe(1))
    expect(sent()).toMatchObject([
      { kind: 'count', subjectId: own.id, data: { of: 'culture', animals: [120, 100], volumeMl: 1, dilution: 2 } },
    ])
    expect(screen.getByRole('status').textContent).toBe('Recorded: R1')
  })

  it('is not sent without a sample, and says what it wants', async () => {
    const { user, sent } = open('count')
    await record(user)
    expect(screen.getByText('At least one sample, as a whole number.')).toBeDefined()
    expect(sent()).toEqual([])
  })
})

describe('a harvest without a task', () => {
  it('goes to the cultures in use but its own, and is as much as its parts', async () => {
    const { user, sent } = open('harvest')
    const to = await screen.findByRole('textbox', { name: 'To R2' })
    expect(screen.queryByRole('textbox', { name: 'To R1' })).toBeNull()
    expect(screen.queryByRole('textbox', { name: 'To R3' })).toBeNull()
    await user.type(to, '1.5')
    await user.type(box('To the drain'), '0.5')
    await record(user)
    await waitFor(() => expect(sent()).toHaveLength(1))
    expect(sent()[0]?.data).toEqual({
      volumeL: 2,
      parts: [
        { to: 'culture', subjectId: other.id, volumeL: 1.5 },
        { to: 'drain', volumeL: 0.5 },
      ],
    })
  })

  it('of nothing is not sent', async () => {
    const { user, sent } = open('harvest')
    await user.type(await screen.findByRole('textbox', { name: 'To R2' }), '0')
    await record(user)
    expect(screen.getByText('How much went where.')).toBeDefined()
    expect(sent()).toEqual([])
  })
})

describe('more than the book knew of', () => {
  const asked: Refusal = {
    ...{ status: 409, code: 'needs_confirmation', detail: 'The book says nothing of them. Why were there more?' },
    fields: [],
  }

  it('is asked about, and the reason goes along on the second try', async () => {
    const { user, sent, closed } = open('loss', { refusals: [asked] })
    await record(user)
    await user.type(await screen.findByRole('textbox', { name: /Why were there more/ }), 'found behind the filter')
    expect(closed()).toBe(0)
    await record(user)
    await waitFor(() => expect(closed()).toBe(1))
    expect(sent().map(({ data }) => 'beyondBook' in data && data.beyondBook)).toEqual([
      false,
      'found behind the filter',
    ])
  })
})

describe('a loss that was mistyped', () => {
  it('is not asked about again once it is another number, and what was said of the first goes', async () => {
    const detail = 'The book says 40, and 5000 is more than that.'
    const asked: Refusal = { status: 422, code: 'needs_confirmation', detail, fields: [] }
    const { writes } = answerApi({
      recordFact: ({ body }) =>
        JSON.stringify(body).includes('5000') ? { refused: asked } : keepFact(body as NewFact),
    })
    const batch = { id: own.id, kind: 'larval_batch' as const, name: 'B1' }
    const { user } = renderInRoom(<RecordForm subject={batch} kind="loss" onClose={() => {}} />)
    await user.type(box('How many'), '5000')
    await record(user)
    expect(await screen.findByRole('textbox', { name: /Why were there more/ })).toBeDefined()
    await user.clear(box('How many'))
    await user.type(box('How many'), '7')
    expect(screen.queryByText(detail)).toBeNull()
    expect(screen.queryByRole('textbox', { name: /Why were there more/ })).toBeNull()
    await record(user)
    await waitFor(() => expect(writes).toHaveLength(2))
    expect(writes[1]?.body).toMatchObject({ kind: 'loss', data: { of: 'larvae', number: 7 } })
    expect(JSON.stringify(writes[1])).not.toContain('beyondBook')
  })
})

describe('fish that are placed', () => {
  it('are told with their length, what they eat and to whom they go; what is not ticked is not said', async () => {
    const { user, sent } = open('outcome')
    await user.type(box('How many'), '12')
    await user.type(box('Length of most'), '31')
    for (const name of ['They eat dry food', 'They eat frozen food'])
      await user.click(screen.getByRole('checkbox', { name }))
    await user.type(box('To whom'), 'a shop in town')
    await user.type(box('Price, if you want it kept'), '12 each')
    await record(user)
    await waitFor(() => expect(sent()).toHaveLength(1))
    expect(sent()[0]?.data).toEqual({
      ...{
        outcome: 'placed',
        number: 12,
        lengthMm: 31,
        eatsDryFood: true,
        eatsFrozenFood: true,
        toWhom: 'a shop in town',
      },
      price: '12 each',
    })
  })
})

describe('a feed out of the chilled jar, without a task', () => {
  it('says how much of it went, so that the reserve falls', async () => {
    const { user, sent } = open('feeding', { subject: larvae })
    expect(screen.queryByRole('radio', { name: 'its chilled jar' })).toBeNull()
    await screen.findByRole('option', { name: 'R1' })
    await user.selectOptions(screen.getByRole('combobox', { name: 'From culture' }), own.id)
    await user.click(screen.getByRole('radio', { name: 'its chilled jar' }))
    await record(user)
    expect(screen.getByText(/How many mL of the jar/)).toBeDefined()
    await user.type(box(/By volume/), '25')
    await record(user)
    await waitFor(() => expect(sent()).toHaveLength(1))
    expect(sent()[0]?.data).toEqual({ food: 'rotifers', fromCultureId: own.id, isChilled: true, amountMl: 25 })
  })
})
