'use client'

import type { TaskField } from '@fryward/shared'
import { type Sampled, Samples } from '@/parts/counting/Samples.tsx'
import { type CountDraft, isHeadCount } from './field-draft.ts'
import styles from './sheet.module.css'

type Props = {
  field: Extract<TaskField, { type: 'count' }>
  draft: CountDraft
  onDraft: (draft: CountDraft) => void
  error: string | undefined
}

/** Sample by sample as the eye counts them; what that makes stands over the Done button. */
export function CountInput({ field, draft, onDraft, error }: Props) {
  const change = (part: Partial<Sampled>) => onDraft({ ...draft, ...part })
  return (
    <fieldset className={styles.count}>
      <legend className={styles.legend}>
        {field.label}
        {field.isRequired && <span aria-hidden="true"> *</span>}
      </legend>
      {field.help && <p className={styles.soft}>{field.help}</p>}
      <Samples typed={draft} change={change} isHeads={isHeadCount(field)} withEggs={field.withEggs} error={error} />
    </fieldset>
  )
}
