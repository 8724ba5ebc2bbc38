'use client'

import { MantineProvider } from '@mantine/core'
import { QueryClientProvider } from '@tanstack/react-query'
import { type ReactNode, useState } from 'react'
import { makeQueryClient } from '@/api/query-client.ts'
import { lookColorSchemeManager } from '@/look/color-scheme-manager.ts'
import { theme } from '@/look/theme.ts'
import { ToastProvider } from '@/ui/toast.tsx'

const colorSchemeManager = lookColorSchemeManager()

export function Providers({ children }: { children: ReactNode }) {
  const [queryClient] = useState(makeQueryClient)
  return (
    <QueryClientProvider client={queryClient}>
      <MantineProvider theme={theme} defaultColorScheme="auto" colorSchemeManager={colorSchemeManager}>
        <ToastProvider>{children}</ToastProvider>
      </MantineProvider>
    </QueryClientProvider>
  )
}
