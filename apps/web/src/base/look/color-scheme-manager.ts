import type { MantineColorScheme, MantineColorSchemeManager } from '@mantine/core'
import { type Look, onLookChange, readLook } from './looks.ts'

const schemeOfLook: Record<Look, MantineColorScheme> = {
  system: 'auto',
  day: 'light',
  night: 'dark',
  lights_out: 'dark',
}

/** Mantine follows our look; it never keeps one of its own. */
export function lookColorSchemeManager(): MantineColorSchemeManager {
  let stop = () => {}
  return {
    get: (fallback) => (typeof window === 'undefined' ? fallback : schemeOfLook[readLook()]),
    set: () => {},
    subscribe: (onUpdate) => {
      stop = onLookChange(() => onUpdate(schemeOfLook[readLook()]))
    },
    unsubscribe: () => stop(),
    clear: () => {},
  }
}
