import type { AlarmKind, Mark } from '@fryward/shared'

/** Of several on a chart. */
export const markLabels = {
  alarm: 'Alarm',
  hatch: 'Hatch',
  water_change: 'Water change',
  harvest: 'Harvest',
} as const satisfies Record<Mark['kind'], string>

const troubles: Record<AlarmKind, string> = {
  too_low: 'too low',
  too_high: 'too high',
  silent: 'silent',
  too_fast: 'changing too fast',
  implausible: 'not to be believed',
  stuck: 'stuck',
}

/** "Alarm: too high", "Hatch: Clutch 3", "Water change". */
export function sayMark({ kind, subject, alarm }: Pick<Mark, 'kind' | 'subject' | 'alarm'>): string {
  if (alarm) return `${markLabels.alarm}: ${troubles[alarm.kind]}`
  return kind === 'hatch' ? `${markLabels.hatch}: ${subject.name}` : markLabels[kind]
}
