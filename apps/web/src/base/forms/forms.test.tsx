import { screen, within } from '@testing-library/react'
import { type ReactNode, useState } from 'react'
import { describe, expect, it } from 'vitest'
import { ApiProblem } from '@/base/api/problem.ts'
import { makeRoom } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { ChoiceChips, ChoicesChips } from './Chips.tsx'
import { DateTimeBox } from './DateTimeBox.tsx'
import { Form } from './Form.tsx'
import { NumberBox } from './NumberBox.tsx'
import { SelectBox } from './SelectBox.tsx'
import { TimeBox } from './TimeBox.tsx'

/** A box with the state that its form would keep for it. */
function Kept<T>({ start, children }: { start: T; children: (value: T, keep: (next: T) => void) => ReactNode }) {
  const [value, setValue] = useState(start)
  return children(value, setValue)
}

describe('a number', () => {
  const volume = (error?: string) => (
    <Kept start="">
      {(text, keep) => <NumberBox label="Volume" unit="L" usual={20} text={text} onText={keep} error={error} />}
    </Kept>
  )

  it('is typed on a number pad, keeps what was typed, and shows the usual ghosted', async () => {
    const { user } = renderInRoom(volume())
    const box = screen.getByRole('textbox', { name: 'Volume' })
    expect(box.getAttribute('inputmode')).toBe('decimal')
    expect(box.getAttribute('placeholder')).toBe('20')
    await user.type(box, '2,5x')
    expect(box).toHaveProperty('value', '2,5x')
  })

  it('is asked for in the units of the room', () => {
    renderInRoom(volume(), { room: makeRoom({ units: 'us' }) })
    expect(screen.getByText('gal')).toBeDefined()
    // 20 L; a US gallon is 3.785411784 L (NIST Handbook 44, 2024, Appendix C)
    expect(screen.getByRole('textbox', { name: 'Volume' }).getAttribute('placeholder')).toBe('5.28')
  })

  it('says what is wrong with it to a screen reader too', () => {
    renderInRoom(volume('From 1 to 500 L.'))
    const box = screen.getByRole('textbox', { name: 'Volume' })
    expect(box.getAttribute('aria-invalid')).toBe('true')
    const told = (box.getAttribute('aria-describedby') ?? '').split(' ').map((id) => document.getElementById(id))
    expect(told.map((one) => one?.textContent)).toContain('From 1 to 500 L.')
  })
})

describe('a number that may be two', () => {
  const sent: string[] = []
  const form = (
    <Kept start="">
      {(text, keep) => (
        <Form submitLabel="Save" isBusy={false} onSubmit={() => sent.push(text)}>
          <NumberBox label="Volume" unit="L" text={text} onText={keep} />
        </Form>
      )}
    </Kept>
  )

  // Unicode CLDR: a French thousand has a narrow space, a French decimal a comma; a point is neither.
  it('is asked about under its box, keeps its form back, and is what was pressed', async () => {
    sent.length = 0
    const { user } = renderInRoom(form, { room: makeRoom({ locale: 'fr-FR' }) })
    await user.type(screen.getByRole('textbox', { name: 'Volume' }), '1.200')
    expect(screen.getByText('1.200: is it 1200 or 1,2?')).toBeDefined()
    await user.click(screen.getByRole('button', { name: 'Save' }))
    expect(sent).toEqual([])
    await user.click(screen.getByRole('button', { name: 'Volume: 1,2' }))
    expect(screen.getByRole('textbox', { name: 'Volume' })).toHaveProperty('value', '1,2')
    await user.click(screen.getByRole('button', { name: 'Save' }))
    expect(sent).toEqual(['1,2'])
  })

  it('is none where the room writes thousands so', async () => {
    sent.length = 0
    const { user } = renderInRoom(form, { room: makeRoom({ locale: 'en-GB' }) })
    await user.type(screen.getByRole('textbox', { name: 'Volume' }), '1,200')
    await user.click(screen.getByRole('button', { name: 'Save' }))
    expect(sent).toEqual(['1,200'])
  })

  it('that is no number at all keeps its form back too, and says so', async () => {
    sent.length = 0
    const { user } = renderInRoom(form, { room: makeRoom({ locale: 'de-DE' }) })
    await user.type(screen.getByRole('textbox', { name: 'Volume' }), 'a jug{Enter}')
    expect(screen.getByText('A number, such as 12,5.')).toBeDefined()
    expect(sent).toEqual([])
  })
})

describe('a time of day', () => {
  const starts = <Kept start="">{(text, keep) => <TimeBox label="Starts" text={text} onText={keep} isRequired />}</Kept>

  it.each([
    ['730', '07:30'],
    ['19.30', '19:30'],
    ['7', '07:00'],
  ])('typed as %s reads %s once it is left', async (typed, tidy) => {
    const { user } = renderInRoom(starts)
    const box = screen.getByRole('textbox', { name: 'Starts' })
    await user.type(box, typed)
    await user.tab()
    expect(box).toHaveProperty('value', tidy)
  })

  it('is not complained about while it is being typed, only once it is left', async () => {
    const { user } = renderInRoom(starts)
    const box = screen.getByRole('textbox', { name: 'Starts' })
    await user.type(box, '25')
    expect(screen.queryByText(/A time of day/)).toBeNull()
    await user.tab()
    expect(screen.getByText('A time of day, such as 7:30 or 19:30.')).toBeDefined()
    expect(box).toHaveProperty('value', '25')
    await user.type(box, '{Backspace}')
    expect(screen.queryByText(/A time of day/)).toBeNull()
  })
})

describe('a moment', () => {
  it('is read by the room’s clock, whatever zone the device is in, and is none while half typed', async () => {
    const said: (string | undefined)[] = []
    const { user } = renderInRoom(<DateTimeBox label="When" value={undefined} onChange={(at) => said.push(at)} />, {
      room: makeRoom({ timeZone: 'Asia/Tokyo' }),
    })
    await user.type(screen.getByLabelText('Date'), '2026-11-25')
    expect(said.at(-1)).toBeUndefined()
    await user.type(screen.getByLabelText(/Time/), '7:40')
    expect(said.at(-1)).toBe('2026-11-24T22:40:00Z')
  })
})

describe('a choice', () => {
  const choices = [
    { value: 's', label: 'S' },
    { value: 'l', label: 'L' },
    { value: 'ss', label: 'SS' },
  ]
  it('is one group with its name and its error, moved through by arrows', async () => {
    const { user } = renderInRoom(
      <Kept start="s">
        {(value, keep) => (
          <ChoiceChips legend="Strain" choices={choices} value={value} onChoose={keep} error="Choose one." />
        )}
      </Kept>,
    )
    const group = screen.getByRole('group', { name: 'Strain' })
    expect(document.getElementById(group.getAttribute('aria-describedby') ?? '')?.textContent).toBe('Choose one.')
    await user.tab()
    expect(document.activeElement).toBe(within(group).getByRole('radio', { name: 'S' }))
    await user.keyboard('{ArrowDown}')
    expect(within(group).getByRole('radio', { name: 'L', checked: true })).toBeDefined()
  })

  it('of several can be taken back one by one', async () => {
    const { user } = renderInRoom(
      <Kept start={['s']}>
        {(values, keep) => <ChoicesChips legend="Seen" choices={choices} values={values} onChoose={keep} />}
      </Kept>,
    )
    await user.click(screen.getByRole('checkbox', { name: 'SS' }))
    await user.click(screen.getByRole('checkbox', { name: 'S' }))
    expect(screen.getAllByRole('checkbox', { checked: true }).map((one) => one.closest('label')?.textContent)).toEqual([
      'SS',
    ])
  })

  it('from a list is the system’s own, under its name', async () => {
    const { user } = renderInRoom(
      <Kept start="s">
        {(value, keep) => <SelectBox label="Into tank" choices={choices} value={value} onChoose={keep} isRequired />}
      </Kept>,
    )
    const box = screen.getByRole('combobox', { name: /Into tank/ })
    await user.selectOptions(box, 'L')
    expect(box).toHaveProperty('value', 'l')
  })
})

describe('a form', () => {
  const refusal = new ApiProblem({
    ...{ code: 'invalid_input' as const, detail: 'One of these cannot be kept.', status: 400 },
    fields: [{ path: 'body.volumeL', message: 'more than 0' }],
  })

  it('goes out by Enter in any of its boxes, and not again while it is on its way', async () => {
    let sent = 0
    const form = (isBusy: boolean) => (
      <Form submitLabel="Save" isBusy={isBusy} onSubmit={() => sent++}>
        <NumberBox label="Volume" text="" onText={() => {}} />
      </Form>
    )
    const { user, show } = renderInRoom(form(false))
    await user.type(screen.getByRole('textbox', { name: 'Volume' }), '{Enter}')
    expect(sent).toBe(1)
    show(form(true))
    await user.type(screen.getByRole('textbox', { name: 'Volume' }), '{Enter}')
    expect(sent).toBe(1)
  })

  it('says above its buttons what the API refused, field by field', () => {
    renderInRoom(
      <Form submitLabel="Save" isBusy={false} error={refusal} onSubmit={() => {}}>
        {null}
      </Form>,
    )
    expect(screen.getByText('One of these cannot be kept.')).toBeDefined()
    expect(screen.getByText(/volume: more than 0/)).toBeDefined()
  })
})
