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

const isFromList = (): boolean => {
  const state: unknown = window.history.state
  return typeof state === 'object' && state !== null && 'fromList' in state
}

/** Opens a sheet, instead of one that is open. Straight through the history: the page under it stays as it is. */
export const useOpenTask = () => (taskId: string) => {
  const isInstead = new URLSearchParams(window.location.search).has(paramName)
  // The router passes over entries that carry its own state, so the old one is not handed on as it is.
  if (isInstead) window.history.replaceState(isFromList() ? { fromList: true } : {}, '', withTaskParam(taskId))
  else window.history.pushState({ fromList: true }, '', withTaskParam(taskId))
}

export function closeTask(): void {
  if (isFromList()) window.history.back()
  else window.history.replaceState(null, '', withTaskParam(null))
}
