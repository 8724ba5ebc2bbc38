'use client'

import { rotiferStrains, type UnitSystem } from '@fryward/shared'
import { TextInput } from '@mantine/core'
import { ChoiceChips } from '@/forms/Chips.tsx'
import { NumberBox } from '@/forms/NumberBox.tsx'
import { Row } from '@/forms/Row.tsx'
import { Button } from '@/ui/Button.tsx'
import { strainLabels } from '@/words/labels.ts'
import styles from '../rooms.module.css'
import type { CultureDraft } from './wizard-draft.ts'

type Props = { cultures: CultureDraft[]; units: UnitSystem; onCultures: (cultures: CultureDraft[]) => void }

export function CultureDrafts({ cultures, units, onCultures }: Props) {
  const change = (id: number, part: Partial<CultureDraft>) =>
    onCultures(cultures.map((culture) => (culture.id === id ? { ...culture, ...part } : culture)))
  const add = () => {
    const id = Math.max(0, ...cultures.map((culture) => culture.id)) + 1
    onCultures([...cultures, { id, name: `R${id}`, strain: 'L', volume: '', density: '' }])
  }
  return (
    <fieldset className={styles.rounds}>
      <legend className={styles.legend}>Rotifer cultures</legend>
      <ul className={styles.vessels}>
        {cultures.map((culture) => (
          <li key={culture.id} className={styles.vessel}>
            <Row>
              <TextInput
                label="Name"
                value={culture.name}
                onChange={(event) => change(culture.id, { name: event.currentTarget.value })}
              />
              <NumberBox
                label="Volume"
                unitWord={units === 'us' ? 'gal' : 'L'}
                text={culture.volume}
                onText={(volume) => change(culture.id, { volume })}
              />
              <NumberBox
                label="Density now"
                help="If counted"
                unitWord="per mL"
                text={culture.density}
                onText={(density) => change(culture.id, { density })}
              />
            </Row>
            <ChoiceChips
              legend="Strain"
              choices={rotiferStrains.map((value) => ({ value, label: strainLabels[value] }))}
              value={culture.strain}
              onChoose={(value) => {
                const strain = rotiferStrains.find((one) => one === value)
                if (strain) change(culture.id, { strain })
              }}
            />
            <Button
              variant="subtle"
              aria-label={`Take out the culture ${culture.name}`}
              onClick={() => onCultures(cultures.filter((one) => one.id !== culture.id))}
            >
              Take out
            </Button>
          </li>
        ))}
      </ul>
      <div>
        <Button variant="default" onClick={add}>
          {cultures.length === 0 ? 'Add a rotifer culture' : 'One more culture'}
        </Button>
      </div>
    </fieldset>
  )
}
