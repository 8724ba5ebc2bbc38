'use client'

import type { CountValue, Task, TaskField } from '@fryward/shared'
import { sayMoment, sayNumber, toFieldUnit, type UnitVoice } from '@fryward/words'
import { useVoice } from '@/base/room/room-context.tsx'
import styles from './sheet.module.css'

type Last = Task['lastValues'][string]

/** The last values beside the field: "260 per mL yesterday 06:50". */
export function LastValues({ field, values }: { field: TaskField; values: Last }) {
  const voice = useVoice()
  const shown = values.slice(0, 3).flatMap((one) => {
    const text = sayValue(field, one.value, voice)
    return text === undefined ? [] : [`${text} ${sayMoment(one.at, new Date(), voice)}`]
  })
  if (shown.length === 0) return null
  return <p className={styles.last}>Last: {shown.join(' · ')}</p>
}

function sayValue(field: TaskField, value: unknown, voice: UnitVoice): string | undefined {
  if (field.type === 'number' && typeof value === 'number') {
    const unit = toFieldUnit(field.unit, voice.units)
    return `${sayNumber(unit.toShown(value), voice)} ${unit.label}`.trim()
  }
  if (field.type === 'count') return sayCount(value, voice)
  if (field.type === 'yes_no' && typeof value === 'boolean') return value ? 'yes' : 'no'
  if ((field.type === 'choice' || field.type === 'choices') && value !== undefined) {
    const chosen: unknown[] = Array.isArray(value) ? value : [value]
    return chosen.map((one) => field.choices.find((choice) => choice.value === one)?.label ?? String(one)).join(', ')
  }
  if (field.type === 'text' && typeof value === 'string') return `“${value}”`
  return undefined
}

function sayCount(value: unknown, voice: UnitVoice): string | undefined {
  if (typeof value === 'number') return sayNumber(value, voice)
  if (!isCount(value)) return undefined
  const { animals, volumeMl, dilution } = value
  const mean = animals.reduce((sum, one) => sum + one, 0) / animals.length
  return volumeMl === undefined ? sayNumber(mean, voice) : `${sayNumber((mean * dilution) / volumeMl, voice)} per mL`
}

/** The API keeps what a count's shape let in; what a field once was is another matter. */
const isCount = (value: unknown): value is CountValue =>
  typeof value === 'object' && value !== null && 'animals' in value && Array.isArray(value.animals)
