'use client'

import type { Rule, RuleParameter } from '@fryward/shared'
import { rulePieces, sayCode, toFieldUnit } from '@fryward/words'
import { useVoice } from '@/base/room/room-context.tsx'
import type { ParameterDrafts } from './rule-draft.ts'
import styles from './rules.module.css'

type Props = {
  rule: Rule
  drafts: ParameterDrafts
  isReadOnly: boolean
  onDraft: (name: string, value: string | boolean) => void
}

/** The sentence with each parameter as a field in its place; those that it does not name stand below. */
export function RuleSentence({ rule, drafts, isReadOnly, onDraft }: Props) {
  const { units } = useVoice()
  const pieces = rulePieces(rule, units)
  const placed = new Set(pieces.map((piece) => (typeof piece === 'string' ? '' : piece.parameter.name)))
  const rest = rule.parameters.filter((parameter) => !placed.has(parameter.name))
  const slot = (parameter: RuleParameter, unit: string) => (
    <Slot
      parameter={parameter}
      unit={unit}
      draft={drafts[parameter.name] ?? ''}
      isReadOnly={isReadOnly}
      onDraft={(value) => onDraft(parameter.name, value)}
    />
  )
  return (
    <>
      <p className={styles.sentence}>
        {pieces.map((piece, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of one fixed sentence
          <span key={i}>{typeof piece === 'string' ? piece : slot(piece.parameter, piece.unit)}</span>
        ))}
      </p>
      {rest.length > 0 && (
        <ul className={styles.rest}>
          {rest.map((parameter) => (
            <li key={parameter.name}>
              {parameter.label} {slot(parameter, toFieldUnit(parameter.unit, units).label)}
            </li>
          ))}
        </ul>
      )}
    </>
  )
}

type SlotProps = {
  parameter: RuleParameter
  /** Empty where the sentence says it. */
  unit: string
  draft: string | boolean
  isReadOnly: boolean
  onDraft: (value: string | boolean) => void
}

function Slot({ parameter, unit, draft, isReadOnly, onDraft }: SlotProps) {
  const { label } = toFieldUnit(parameter.unit, useVoice().units)
  if (isReadOnly)
    return (
      <strong>
        {typeof draft === 'boolean' ? (draft ? 'yes' : 'no') : draft} {unit}
      </strong>
    )
  if (parameter.type === 'boolean')
    return (
      <select
        className={styles.slot}
        aria-label={parameter.label}
        value={draft === true ? 'yes' : 'no'}
        onChange={(event) => onDraft(event.currentTarget.value === 'yes')}
      >
        <option value="yes">yes</option>
        <option value="no">no</option>
      </select>
    )
  if (parameter.type === 'choice')
    return (
      <select
        className={styles.slot}
        aria-label={parameter.label}
        value={String(draft)}
        onChange={(event) => onDraft(event.currentTarget.value)}
      >
        {(parameter.choices ?? []).map((choice) => (
          <option key={choice} value={choice}>
            {sayCode(choice)}
          </option>
        ))}
      </select>
    )
  return (
    <span className={styles.number}>
      <input
        className={styles.slot}
        aria-label={`${parameter.label}${label ? `, ${label}` : ''}`}
        inputMode="decimal"
        autoComplete="off"
        value={String(draft)}
        size={Math.max(3, String(draft).length)}
        onChange={(event) => onDraft(event.currentTarget.value)}
      />
      {unit && <span className={styles.unit}>{unit}</span>}
    </span>
  )
}
