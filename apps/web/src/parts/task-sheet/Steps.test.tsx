import type { TaskStep } from '@fryward/shared'
import { screen, within } from '@testing-library/react'
import { describe, expect, it } from 'vitest'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { Steps } from './Steps.tsx'

const step = (text: string): TaskStep => ({ text, quantities: {} })
const heading = (text: string): TaskStep => ({ ...step(text), isHeading: true })
const lines = (list: HTMLElement) =>
  within(list)
    .getAllByRole('listitem')
    .map(({ textContent }) => textContent)

describe('the steps of a task', () => {
  it('that are for two sorts of fish stand under two headings, which have no number', () => {
    renderInRoom(
      <Steps
        steps={[
          step('Stop the pump.'),
          heading('For Young clowns: dry food'),
          step('Over the whole surface.'),
          step('All gone in two minutes.'),
          heading('For Ponies: frozen food'),
          step('Thaw it.'),
        ]}
      />,
    )
    expect(screen.getAllByRole('heading', { level: 3 }).map(({ textContent }) => textContent)).toEqual([
      'For Young clowns: dry food',
      'For Ponies: frozen food',
    ])
    expect(screen.getAllByRole('list').map(lines)).toEqual([
      ['Stop the pump.'],
      ['Over the whole surface.', 'All gone in two minutes.'],
      ['Thaw it.'],
    ])
    expect(lines(screen.getByRole('list', { name: 'For Ponies: frozen food' }))).toEqual(['Thaw it.'])
  })

  it('of one sort, or of a task that was kept before there were headings, are one numbered list', () => {
    renderInRoom(<Steps steps={[step('Thaw it.'), step('For Ponies frozen food:'), step('A little at a time.')]} />)
    expect(screen.queryByRole('heading')).toBeNull()
    expect(lines(screen.getByRole('list'))).toHaveLength(3)
  })
})
