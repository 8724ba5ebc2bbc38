'use client'

import type { Rule, RuleParameter } from '@fryward/shared'
import { toFieldUnit } from '@/base/quantities/room-units.ts'
import { useUnitSystem } from '@/base/room/room-context.tsx'
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
  const slot = (parameter: RuleParameter, { before = '', rest = '' } = {}) => (
    <Slot
      parameter={parameter}
      before={before}
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
          const said = parameter ? slot(parameter, { before: parts[i - 1] ?? '', rest: parts[i + 1] ?? '' }) : part
          // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of one fixed sentence
          return <span key={i}>{said}</span>
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

/** "every 3 days", "from day 3", "half a fish a litre": the sentence has the word already. */
const isUnitSaid = ({ label, before, rest }: { label: string; before: string; rest: string }) =>
  rest.trimStart().startsWith(label) ||
  (label === 'days' && /\bday\s*$/i.test(before)) ||
  (label === 'per L' && /^\s*\w+ a litre\b/.test(rest))

type SlotProps = {
  parameter: RuleParameter
  /** What the sentence comes from and goes on with; either may say the unit itself. */
  before: string
  rest: string
  draft: string | boolean
  isReadOnly: boolean
  onDraft: (value: string | boolean) => void
}

function Slot({ parameter, before, rest, draft, isReadOnly, onDraft }: SlotProps) {
  const unit = toFieldUnit(parameter.unit, useUnitSystem())
  const word = isUnitSaid({ label: unit.label, before, rest }) ? '' : unit.label
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
