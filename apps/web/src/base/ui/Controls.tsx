'use client'

import '@/base/look/mantine.css'
import { MantineProvider } from '@mantine/core'
import type { ReactNode } from 'react'
import { lookColorSchemeManager } from '@/base/look/color-scheme-manager.ts'
import { theme } from '@/base/look/theme.ts'

const colorSchemeManager = lookColorSchemeManager()

/** What Mantine's inputs and drawers need around them. Today's list does without, so it comes with the parts that use it. */
export function Controls({ children }: { children: ReactNode }) {
  return (
    <MantineProvider
      theme={theme}
      defaultColorScheme="auto"
      colorSchemeManager={colorSchemeManager}
      // Both would be style elements, which the page's policy refuses: tokens.css says what they would.
      withCssVariables={false}
      withGlobalClasses={false}
    >
      {children}
    </MantineProvider>
  )
}
