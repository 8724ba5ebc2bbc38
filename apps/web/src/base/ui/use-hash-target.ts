'use client'

import { useEffect, useState, useSyncExternalStore } from 'react'

const onHashChange = (listener: () => void) => {
  window.addEventListener('hashchange', listener)
  return () => window.removeEventListener('hashchange', listener)
}
const readHash = () => decodeURIComponent(window.location.hash.slice(1))

/**
 * The id that the address points at. What it names may come only after the page (a list that is still loading), so it
 * is scrolled to here once `isThere` says so, not by the browser.
 */
export function useHashTarget(isThere: (id: string) => boolean): string {
  const id = useSyncExternalStore(onHashChange, readHash, () => '')
  const [reachedId, setReachedId] = useState('')
  const isReady = id !== '' && isThere(id)
  useEffect(() => {
    if (!isReady || reachedId === id) return
    document.getElementById(id)?.scrollIntoView({ block: 'start' })
    setReachedId(id)
  }, [id, isReady, reachedId])
  return id
}
