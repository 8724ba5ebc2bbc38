'use client'

import type { TaskField } from '@fryward/shared'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { Row } from '@/base/forms/Row.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { type CountDraft, isHeadCount } from './field-draft.ts'
import styles from './sheet.module.css'

type Props = {
  field: Extract<TaskField, { type: 'count' }>
  draft: CountDraft
  onDraft: (draft: CountDraft) => void
  error: string | undefined
}

/** What the contract allows in one count. */
const mostSamples = 20

/** Sample by sample as the eye counts them; what that makes stands over the Done button. */
export function CountInput({ field, draft, onDraft, error }: Props) {
  const change = (part: Partial<CountDraft>) => onDraft({ ...draft, ...part })
  const isHeads = isHeadCount(field)
  return (
    <fieldset className={styles.count}>
      <legend className={styles.legend}>
        {field.label}
        {field.isRequired && <span aria-hidden="true"> *</span>}
      </legend>
      {field.help && <p className={styles.soft}>{field.help}</p>}
      <Row isTight>
        {draft.animals.map((text, i) => (
          <NumberBox
            // biome-ignore lint/suspicious/noArrayIndexKey: samples have no other name than their place
            key={i}
            label={isHeads ? `Number ${i + 1}` : `Sample ${i + 1}`}
            text={text}
            isWhole
            isLarge
            error={i === 0 && error !== undefined}
            onText={(next) => change({ animals: draft.animals.map((one, j) => (j === i ? next : one)) })}
          />
        ))}
      </Row>
      {error && <p className={styles.worry}>{error}</p>}
      {draft.animals.length < mostSamples && (
        <div>
          <Button variant="subtle" onClick={() => change({ animals: [...draft.animals, ''] })}>
            One more sample
          </Button>
        </div>
      )}
      {!isHeads && (
        <Row>
          <NumberBox
            label="Volume of one sample"
            unit="mL"
            text={draft.volumeMl}
            onText={(volumeMl) => change({ volumeMl })}
          />
          <NumberBox
            label="Diluted, times"
            text={draft.dilution}
            onText={(dilution) => change({ dilution })}
            help="1 is straight from the vessel"
          />
        </Row>
      )}
      {field.withEggs && (
        <Row>
          <NumberBox
            label="Animals looked at for eggs"
            isWhole
            text={draft.females}
            onText={(females) => change({ females })}
          />
          <NumberBox label="Eggs on them" isWhole text={draft.eggs} onText={(eggs) => change({ eggs })} />
        </Row>
      )}
    </fieldset>
  )
}
