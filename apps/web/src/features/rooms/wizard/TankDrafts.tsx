'use client'

import { tankKinds, type UnitSystem } from '@fryward/shared'
import { TextInput } from '@mantine/core'
import { NumberBox } from '@/forms/NumberBox.tsx'
import { Row } from '@/forms/Row.tsx'
import { SelectBox } from '@/forms/SelectBox.tsx'
import { Button } from '@/ui/Button.tsx'
import { tankKindLabels } from '@/words/labels.ts'
import styles from '../rooms.module.css'
import type { TankDraft } from './wizard-draft.ts'

type Props = { tanks: TankDraft[]; units: UnitSystem; onTanks: (tanks: TankDraft[]) => void }

export function TankDrafts({ tanks, units, onTanks }: Props) {
  const change = (id: number, part: Partial<TankDraft>) =>
    onTanks(tanks.map((tank) => (tank.id === id ? { ...tank, ...part } : tank)))
  const add = () => {
    const id = Math.max(0, ...tanks.map((tank) => tank.id)) + 1
    onTanks([...tanks, { id, name: `T${id}`, kind: 'broodstock', volume: '' }])
  }
  return (
    <fieldset className={styles.rounds}>
      <legend className={styles.legend}>Tanks</legend>
      <ul className={styles.vessels}>
        {tanks.map((tank) => (
          <li key={tank.id} className={styles.vessel}>
            <Row>
              <TextInput
                label="Name"
                value={tank.name}
                onChange={(event) => change(tank.id, { name: event.currentTarget.value })}
              />
              <NumberBox
                label="Volume"
                unitWord={units === 'us' ? 'gal' : 'L'}
                text={tank.volume}
                onText={(volume) => change(tank.id, { volume })}
              />
            </Row>
            <SelectBox
              label="For"
              value={tank.kind}
              onChoose={(value) => {
                const kind = tankKinds.find((one) => one === value)
                if (kind) change(tank.id, { kind })
              }}
              choices={tankKinds.map((value) => ({ value, label: tankKindLabels[value] }))}
            />
            <Button
              variant="subtle"
              aria-label={`Take out the tank ${tank.name}`}
              onClick={() => onTanks(tanks.filter((one) => one.id !== tank.id))}
            >
              Take out
            </Button>
          </li>
        ))}
      </ul>
      <div>
        <Button variant="default" onClick={add}>
          {tanks.length === 0 ? 'Add a tank' : 'One more tank'}
        </Button>
      </div>
    </fieldset>
  )
}
