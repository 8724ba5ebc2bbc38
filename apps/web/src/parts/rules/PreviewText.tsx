'use client'

import type { RulePreview } from '@fryward/shared'
import { amountPlace, sayQuantity, sayWholeTitle } from '@fryward/words'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import styles from './rules.module.css'

type Added = RulePreview['added'][number]
type Changed = RulePreview['changed'][number]

/** "Tomorrow this would change: …", before anything is saved. */
export function PreviewText({ preview }: { preview: RulePreview }) {
  const voice = useVoice()
  const { name } = useRoom()
  const say = (amount: Added['amount']) => (amount ? sayQuantity(amount, voice) : 'no amount')
  const whole = ({ title, subjectName }: Added | Changed) => sayWholeTitle(title, { name: subjectName }, voice)
  const withAmount = (one: Added) =>
    one.amount && amountPlace(one.title, one.amount) === undefined ? `${whole(one)}, ${say(one.amount)}` : whole(one)
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
