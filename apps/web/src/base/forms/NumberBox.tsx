'use client'

import type { Unit } from '@fryward/shared'
import { TextInput } from '@mantine/core'
import type { ReactNode } from 'react'
import { formatNumber } from '@/base/quantities/format-number.ts'
import { toFieldUnit } from '@/base/quantities/room-units.ts'
import { useUnitSystem } from '@/base/room/room-context.tsx'
import styles from './forms.module.css'

type Props = {
  label: string
  text: string
  onText: (text: string) => void
  unit?: Unit | null
  /** A unit word of its own, where the vocabulary has none. */
  unitWord?: string
  /** In the wire's unit; shown ghosted. */
  usual?: number | null
  isRequired?: boolean
  isWhole?: boolean
  help?: ReactNode
  error?: ReactNode
  isLarge?: boolean
}

/** A number typed on a phone's number pad, with its unit inside the box and the usual value ghosted. */
export function NumberBox(props: Props) {
  const fieldUnit = toFieldUnit(props.unit ?? null, useUnitSystem())
  const word = props.unitWord ?? fieldUnit.label
  const usual = props.usual ?? null
  return (
    <TextInput
      label={props.label}
      description={props.help}
      error={props.error}
      required={props.isRequired ?? false}
      withAsterisk={props.isRequired ?? false}
      value={props.text}
      onChange={(event) => props.onText(event.currentTarget.value)}
      inputMode={props.isWhole ? 'numeric' : 'decimal'}
      autoComplete="off"
      placeholder={usual === null ? undefined : formatNumber(fieldUnit.toShown(usual))}
      classNames={{ input: props.isLarge ? styles.largeInput : styles.numberInput, section: styles.unit }}
      rightSection={word ? <span>{word}</span> : null}
      rightSectionWidth={word ? `${Math.max(3, word.length * 0.62 + 1)}rem` : undefined}
      rightSectionPointerEvents="none"
    />
  )
}
