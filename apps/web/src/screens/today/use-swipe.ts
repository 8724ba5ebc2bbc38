'use client'

import { type TouchEvent, useRef } from 'react'

// A swipe is long, level and quick; anything else is reading or scrolling. from memory
const shortestPx = 80
const steepest = 0.5
const longestMs = 700

/** Touch handlers that tell a swipe to the left or the right from a scroll; no other input is touched. */
export function useSwipe(onSwipe: (to: 'left' | 'right') => void) {
  const start = useRef<{ x: number; y: number; at: number }>(undefined)
  return {
    onTouchStart: (event: TouchEvent) => {
      const touch = event.touches.length === 1 ? event.touches[0] : undefined
      start.current = touch && { x: touch.clientX, y: touch.clientY, at: event.timeStamp }
    },
    onTouchEnd: (event: TouchEvent) => {
      const from = start.current
      const touch = event.changedTouches[0]
      start.current = undefined
      if (!from || !touch || event.timeStamp - from.at > longestMs) return
      const right = touch.clientX - from.x
      if (Math.abs(right) < shortestPx || Math.abs(touch.clientY - from.y) > Math.abs(right) * steepest) return
      onSwipe(right > 0 ? 'right' : 'left')
    },
  }
}
