import { closestLocale, type Voice } from '@fryward/words'

let known: Voice | undefined

/** How the person's own device writes numbers, dates and times; metric, as nothing on it says otherwise. */
export function deviceVoice(): Voice {
  // Pages are built without a device; what they show then holds no number yet.
  if (typeof window === 'undefined') return { locale: 'en-GB', timeZone: 'UTC', units: 'metric' }
  known ??= {
    locale: closestLocale(navigator.languages),
    timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    units: 'metric',
  }
  return known
}
