'use client'

import type { Rule, RuleParameter } from '@fryward/shared'
import { useUnitSystem } from '@/features/rooms/room-context.tsx'
import { toFieldUnit } from '@/quantities/room-units.ts'
import type { ParameterDrafts } from './rule-draft.ts'
import styles from './rules.module.css'

type Props = {
  rule: Rule
  drafts: ParameterDrafts
  isReadOnly: boolean
  onDraft: (name: string, value: string | boolean) => void
}

/** The sentence cut at its `{name}` places; each place holds that parameter as a field. */
export function RuleSentence({ rule, drafts, isReadOnly, onDraft }: Props) {
  const parts = rule.sentence.split(/(\{[a-zA-Z0-9_]+\})/)
  const placed = new Set(parts.filter((part) => part.startsWith('{')).map((part) => part.slice(1, -1)))
  const rest = rule.parameters.filter((parameter) => !placed.has(parameter.name))
  const slot = (parameter: RuleParameter) => (
    <Slot
      parameter={parameter}
      draft={drafts[parameter.name] ?? ''}
      isReadOnly={isReadOnly}
      onDraft={(value) => onDraft(parameter.name, value)}
    />
  )
  return (
    <>
      <p className={styles.sentence}>
        {parts.map((part, i) => {
          const parameter = part.startsWith('{') && rule.parameters.find((one) => `{${one.name}}` === part)
          // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of one fixed sentence
          return <span key={i}>{parameter ? slot(parameter) : part}</span>
        })}
      </p>
      {rest.length > 0 && (
        <ul className={styles.rest}>
          {rest.map((parameter) => (
            <li key={parameter.name}>
              {parameter.label} {slot(parameter)}
            </li>
          ))}
        </ul>
      )}
    </>
  )
}

type SlotProps = {
  parameter: RuleParameter
  draft: string | boolean
  isReadOnly: boolean
  onDraft: (value: string | boolean) => void
}

function Slot({ parameter, draft, isReadOnly, onDraft }: SlotProps) {
  const unit = toFieldUnit(parameter.unit, useUnitSystem())
  if (isReadOnly)
    return (
      <strong>
        {typeof draft === 'boolean' ? (draft ? 'yes' : 'no') : draft} {unit.label}
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
            {choice.replaceAll('_', ' ')}
          </option>
        ))}
      </select>
    )
  return (
    <span className={styles.number}>
      <input
        className={styles.slot}
        aria-label={`${parameter.label}${unit.label ? `, ${unit.label}` : ''}`}
        inputMode="decimal"
        autoComplete="off"
        value={String(draft)}
        size={Math.max(3, String(draft).length)}
        onChange={(event) => onDraft(event.currentTarget.value)}
      />
      {unit.label && <span className={styles.unit}> {unit.label}</span>}
    </span>
  )
}
