'use client'

import { TextInput } from '@mantine/core'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import styles from '@/parts/rooms/rooms.module.css'
import type { WizardDraft } from './wizard-draft.ts'

type Props = { draft: WizardDraft; change: (part: Partial<WizardDraft>) => void }

/** The bottle that feeds the cultures. */
export function BottleFields({ draft, change }: Props) {
  return (
    <fieldset className={styles.rounds}>
      <legend className={styles.legend}>Microalgae concentrate</legend>
      <TextInput
        label="Name on the bottle"
        value={draft.bottleName}
        onChange={(event) => change({ bottleName: event.currentTarget.value })}
      />
      <NumberBox
        label="Strength from the label"
        help="Rations follow from it; there is no safe guess"
        unitWord="billion cells per mL"
        text={draft.bottleStrength}
        onText={(bottleStrength) => change({ bottleStrength })}
      />
    </fieldset>
  )
}
