'use client'

import type { RulePreview } from '@fryward/shared'
import { useRoom, useUnitSystem } from '@/features/rooms/room-context.tsx'
import { toQuantityText } from '@/quantities/Amount.tsx'
import { Notice } from '@/ui/Notice.tsx'
import styles from './rules.module.css'

type Amount = RulePreview['added'][number]['amount']

/** The amounts stand beside the title here, so its places for them are left out. */
const withoutPlaces = (title: string) => title.replaceAll(/\{[^}]*\}\s*/g, '').trim()

/** "Tomorrow this would change: …", before anything is saved. */
export function PreviewText({ preview }: { preview: RulePreview }) {
  const system = useUnitSystem()
  const { name } = useRoom()
  const say = (amount: Amount) => (amount ? toQuantityText(amount, system) : 'no amount')
  const isSame = preview.added.length + preview.removed.length + preview.changed.length === 0
  if (isSame) return <Notice title={`Tomorrow nothing would change in ${name}`} />
  return (
    <Notice title="Tomorrow this would change">
      <ul className={styles.sources}>
        {preview.changed.map((one) => (
          <li key={`c ${one.subjectName} ${one.title}`}>
            {one.subjectName}, {withoutPlaces(one.title)}: {say(one.from)} becomes <strong>{say(one.to)}</strong>
          </li>
        ))}
        {preview.added.map((one) => (
          <li key={`a ${one.subjectName} ${one.title}`}>
            New: {one.subjectName}, {withoutPlaces(one.title)}
            {one.amount && `, ${say(one.amount)}`}
          </li>
        ))}
        {preview.removed.map((one) => (
          <li key={`r ${one.subjectName} ${one.title}`}>
            No longer: {one.subjectName}, {withoutPlaces(one.title)}
          </li>
        ))}
      </ul>
      <p>{preview.unchanged} others stay as they are.</p>
    </Notice>
  )
}
