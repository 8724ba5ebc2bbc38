'use client'

import { QueryClientProvider } from '@tanstack/react-query'
import { type ReactNode, useEffect, useState } from 'react'
import { makeQueryClient } from '@/base/api/query-client.ts'
import { applyLook, onLookChange, readLook } from '@/base/look/looks.ts'
import { ToastProvider } from '@/base/ui/toast.tsx'

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
