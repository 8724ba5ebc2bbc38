'use client'

import { useQuery } from '@tanstack/react-query'
import { useRoom } from '@/base/room/room-context.tsx'
import { foodInPassing } from './queries.ts'

/** The food of the weeks ahead as last planned, on a page that is about something else. */
export const useOutlook = ({ isAsked = true } = {}) =>
  useQuery({ ...foodInPassing(useRoom().id), enabled: isAsked }).data?.plan?.outlook
