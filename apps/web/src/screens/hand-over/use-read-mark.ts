'use client'

import type { HandOver, Id } from '@fryward/shared'
import { useEffect, useRef } from 'react'
import { useMarkLooked } from '@/parts/hand-over/queries.ts'

/**
 * Marks the page as read when somebody leaves it after its end has been on the screen. The revision is the one that was
 * shown: what came in later is new the next time. Returns the place to hang at the end of the page.
 */
export function useReadMark(roomId: Id, handOver: HandOver | undefined) {
  const { mutate } = useMarkLooked(roomId)
  const end = useRef<HTMLDivElement>(null)
  const shownRevision = useRef<number>(undefined)
  const hasSeenEnd = useRef(false)
  const isHere = handOver !== undefined
  useEffect(() => {
    shownRevision.current = handOver?.revision
  }, [handOver?.revision])
  useEffect(() => {
    if (!isHere || !end.current) return
    const observer = new IntersectionObserver((entries) => {
      if (entries.some((entry) => entry.isIntersecting)) hasSeenEnd.current = true
    })
    observer.observe(end.current)
    return () => observer.disconnect()
  }, [isHere])
  useEffect(() => {
    const leave = () => {
      if (hasSeenEnd.current && shownRevision.current !== undefined) mutate(shownRevision.current)
    }
    window.addEventListener('pagehide', leave)
    return () => {
      window.removeEventListener('pagehide', leave)
      leave()
    }
  }, [mutate])
  return end
}
