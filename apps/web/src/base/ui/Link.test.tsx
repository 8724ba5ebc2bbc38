import { fireEvent, screen } from '@testing-library/react'
import { describe, expect, it } from 'vitest'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { Link } from './Link.tsx'

describe('a link', () => {
  it('goes to its page without loading the dashboard anew', () => {
    const { went } = renderInRoom(<Link href="/rooms/r/food">Food ahead</Link>)
    expect(fireEvent.click(screen.getByRole('link'))).toBe(false)
    expect(went).toEqual(['/rooms/r/food'])
  })

  it.each([
    ['Control', { ctrlKey: true }],
    ['Command', { metaKey: true }],
    ['Shift', { shiftKey: true }],
    ['Alt', { altKey: true }],
    ['the middle button', { button: 1 }],
  ])('is left to the browser with %s', (_with, how) => {
    const { went } = renderInRoom(<Link href="/rooms/r/food">Food ahead</Link>)
    expect(fireEvent.click(screen.getByRole('link'), how)).toBe(true)
    expect(went).toEqual([])
  })

  it('stays where whoever it stands in has taken the tap', () => {
    const { went } = renderInRoom(
      <Link href="/rooms/r/food" onClick={(event) => event.preventDefault()}>
        Food ahead
      </Link>,
    )
    fireEvent.click(screen.getByRole('link'))
    expect(went).toEqual([])
  })
})
