'use client'

import { QueryClientProvider } from '@tanstack/react-query'
import { type ReactNode, useEffect, useState } from 'react'
import { makeQueryClient } from '@/api/query-client.ts'
import { applyLook, onLookChange, readLook } from '@/look/looks.ts'
import { ToastProvider } from '@/ui/toast.tsx'

export function Providers({ children }: { children: ReactNode }) {
  const [queryClient] = useState(makeQueryClient)
  // Follows the device from day to night while the page stays open.
  useEffect(() => {
    applyLook(readLook())
    return onLookChange(() => {})
  }, [])
  return (
    <QueryClientProvider client={queryClient}>
      <ToastProvider>{children}</ToastProvider>
    </QueryClientProvider>
  )
}
