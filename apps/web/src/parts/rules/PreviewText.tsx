'use client'

import type { RulePreview } from '@fryward/shared'
import { placeOf, toQuantityText, toText } from '@/base/quantities/Amount.tsx'
import { useRoom, useUnitSystem } from '@/base/room/room-context.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import styles from './rules.module.css'

type Added = RulePreview['added'][number]
type Changed = RulePreview['changed'][number]

/** "Tomorrow this would change: …", before anything is saved. */
export function PreviewText({ preview }: { preview: RulePreview }) {
  const system = useUnitSystem()
  const { name } = useRoom()
  const say = (amount: Added['amount']) => (amount ? toQuantityText(amount, system) : 'no amount')
  const whole = ({ title, subjectName }: Added | Changed) => {
    const text = toText(title, system)
    return text.includes(subjectName) ? text : `${subjectName}: ${text}`
  }
  const withAmount = (one: Added) =>
    one.amount && placeOf(one.title, one.amount) === undefined ? `${whole(one)}, ${say(one.amount)}` : whole(one)
  const keyOf = (one: Added | Changed) => `${one.subjectName} ${whole(one)}`
  const isSame = preview.added.length + preview.removed.length + preview.changed.length === 0
  if (isSame) return <Notice title={`Tomorrow nothing would change in ${name}`} />
  return (
    <Notice title="Tomorrow this would change">
      <ul className={styles.sources}>
        {preview.changed.map((one) => (
          <li key={`c ${keyOf(one)}`}>
            {whole(one)}: {say(one.from)} becomes <strong>{say(one.to)}</strong>
          </li>
        ))}
        {preview.added.map((one) => (
          <li key={`a ${keyOf(one)}`}>New: {withAmount(one)}</li>
        ))}
        {preview.removed.map((one) => (
          <li key={`r ${keyOf(one)}`}>No longer: {withAmount(one)}</li>
        ))}
      </ul>
      <p>{preview.unchanged} others stay as they are.</p>
    </Notice>
  )
}
