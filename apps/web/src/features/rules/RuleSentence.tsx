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
  const slot = (parameter: RuleParameter, rest = '') => (
    <Slot
      parameter={parameter}
      rest={rest}
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
          return <span key={i}>{parameter ? slot(parameter, parts[i + 1]) : part}</span>
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
  /** What the sentence goes on with; it may say the unit itself. */
  rest: string
  draft: string | boolean
  isReadOnly: boolean
  onDraft: (value: string | boolean) => void
}

function Slot({ parameter, rest, draft, isReadOnly, onDraft }: SlotProps) {
  const unit = toFieldUnit(parameter.unit, useUnitSystem())
  const word = rest.trimStart().startsWith(unit.label) ? '' : unit.label
  if (isReadOnly)
    return (
      <strong>
        {typeof draft === 'boolean' ? (draft ? 'yes' : 'no') : draft} {word}
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
      {word && <span className={styles.unit}> {word}</span>}
    </span>
  )
}
