'use client'

import { useSearchParams } from 'next/navigation'

const paramName = 'task'

const withTaskParam = (taskId: string | null): string => {
  const url = new URL(window.location.href)
  if (taskId === null) url.searchParams.delete(paramName)
  else url.searchParams.set(paramName, taskId)
  return `${url.pathname}${url.search}`
}

/** The task whose sheet is open: kept in the address, so that Back closes it and a link opens it. */
export const useOpenTaskId = (): string | null => useSearchParams().get(paramName)

/** Opens a sheet. Straight through the history: the page under it stays as it is. */
export const useOpenTask = () => (taskId: string) =>
  window.history.pushState({ fromList: true }, '', withTaskParam(taskId))

export function closeTask(): void {
  const state: unknown = window.history.state
  const cameFromList = typeof state === 'object' && state !== null && 'fromList' in state
  if (cameFromList) window.history.back()
  else window.history.replaceState(null, '', withTaskParam(null))
}
