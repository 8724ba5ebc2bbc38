import { act, screen } from '@testing-library/react'
import { useState } from 'react'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { SheetFrame } from './SheetFrame.tsx'

declare global {
  interface Window {
    happyDOM: { setViewport: (size: { width: number; height: number }) => void }
  }
}
const turnTo = (width: number, height: number) => act(async () => window.happyDOM.setViewport({ width, height }))

function Question() {
  const [isAsked, setAsked] = useState(false)
  if (isAsked) return <p>Is this right?</p>
  return (
    <button type="button" onClick={() => setAsked(true)}>
      Done
    </button>
  )
}

describe('a sheet', () => {
  beforeEach(() => turnTo(1024, 1366))
  afterEach(() => turnTo(1024, 768))

  it('keeps the question that is open when a tablet is turned on its side, and back', async () => {
    const { user } = renderInRoom(
      <SheetFrame title="Count R1">
        <Question />
      </SheetFrame>,
    )
    await user.click(screen.getByRole('button', { name: 'Done' }))
    const isBeside = () => screen.getByText('Is this right?').closest('dialog') !== null
    expect(isBeside()).toBe(false)
    await turnTo(1366, 1024)
    expect(isBeside()).toBe(true)
    await turnTo(1024, 1366)
    expect(isBeside()).toBe(false)
    expect(screen.getByText('Is this right?').closest('[role=dialog]')).not.toBeNull()
  })
})
