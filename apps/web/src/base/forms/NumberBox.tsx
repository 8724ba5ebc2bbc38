'use client'

import type { Unit } from '@fryward/shared'
import { askWhich, clearWays, readNumber, sayNumber, toFieldUnit, typeNumber } from '@fryward/words'
import { TextInput } from '@mantine/core'
import { type ReactNode, useState } from 'react'
import { useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
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

/**
 * A number typed on a phone's number pad, with its unit inside the box and the usual value ghosted. A text that may be
 * two numbers is asked about under it; one that is none is said to be, and its form does not go out with it.
 */
export function NumberBox(props: Props) {
  const voice = useVoice()
  const [isLeft, setLeft] = useState(false)
  const fieldUnit = toFieldUnit(props.unit ?? null, voice.units)
  const word = props.unitWord ?? fieldUnit.label
  const usual = props.usual ?? null
  const { is } = readNumber(props.text, voice)
  const unread = is === 'wrong' && isLeft ? `A number, such as ${typeNumber(12.5, voice)}.` : undefined
  return (
    <div>
      <TextInput
        label={props.label}
        description={props.help}
        error={
          props.error ?? unread ?? (is === 'unclear' ? `${props.text}: ${askWhich(props.text, voice)}` : undefined)
        }
        required={props.isRequired ?? false}
        withAsterisk={props.isRequired ?? false}
        value={props.text}
        onChange={(event) => {
          setLeft(false)
          props.onText(event.currentTarget.value)
        }}
        onBlur={() => setLeft(true)}
        data-unread={is === 'wrong' || is === 'unclear' || undefined}
        inputMode={props.isWhole ? 'numeric' : 'decimal'}
        autoComplete="off"
        placeholder={usual === null ? undefined : sayNumber(fieldUnit.toShown(usual), voice)}
        classNames={{ input: props.isLarge ? styles.largeInput : styles.numberInput, section: styles.unit }}
        rightSection={word ? <span>{word}</span> : null}
        rightSectionWidth={word ? `clamp(3rem, ${word.length * 0.62 + 1}rem, 55%)` : undefined}
        rightSectionPointerEvents="none"
      />
      {is === 'unclear' && (
        <div className={styles.buttons}>
          {clearWays(props.text, voice).map((way) => (
            <Button key={way} variant="default" onClick={() => props.onText(way)} aria-label={`${props.label}: ${way}`}>
              {way}
            </Button>
          ))}
        </div>
      )}
    </div>
  )
}
