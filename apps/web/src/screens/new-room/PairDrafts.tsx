'use client'

import { TextInput } from '@mantine/core'
import { Row } from '@/base/forms/Row.tsx'
import { Button } from '@/base/ui/Button.tsx'
import styles from '@/parts/rooms/rooms.module.css'
import { SpeciesSelect } from '@/parts/species/SpeciesSelect.tsx'
import { DraftTankSelect } from './DraftTankSelect.tsx'
import type { PairDraft, TankDraft } from './wizard-draft.ts'

type Props = { pairs: PairDraft[]; tanks: TankDraft[]; onPairs: (pairs: PairDraft[]) => void }

/** Fish that spawn together already, each pair in one of the tanks above. */
export function PairDrafts({ pairs, tanks, onPairs }: Props) {
  const change = (id: number, part: Partial<PairDraft>) =>
    onPairs(pairs.map((pair) => (pair.id === id ? { ...pair, ...part } : pair)))
  const add = () => {
    const id = Math.max(0, ...pairs.map((pair) => pair.id)) + 1
    onPairs([...pairs, { id, name: `Pair ${id}`, species: '', tankId: tanks[0]?.id ?? 0, formedOn: '' }])
  }
  return (
    <fieldset className={styles.rounds}>
      <legend className={styles.legend}>Pairs</legend>
      {tanks.length === 0 && <p>A pair lives in a tank: add its tank first.</p>}
      <ul className={styles.vessels}>
        {pairs.map((pair) => (
          <li key={pair.id} className={styles.vessel}>
            <Row>
              <TextInput
                label="Name"
                value={pair.name}
                onChange={(event) => change(pair.id, { name: event.currentTarget.value })}
              />
              <TextInput
                type="date"
                label="Together since, if known"
                value={pair.formedOn}
                onChange={(event) => change(pair.id, { formedOn: event.currentTarget.value })}
              />
            </Row>
            <SpeciesSelect value={pair.species} onChoose={(species) => change(pair.id, { species })} />
            <DraftTankSelect tanks={tanks} tankId={pair.tankId} onTank={(tankId) => change(pair.id, { tankId })} />
            <Button
              variant="subtle"
              aria-label={`Take out the pair ${pair.name}`}
              onClick={() => onPairs(pairs.filter((one) => one.id !== pair.id))}
            >
              Take out
            </Button>
          </li>
        ))}
      </ul>
      {tanks.length > 0 && (
        <div>
          <Button variant="default" onClick={add}>
            {pairs.length === 0 ? 'Add a pair' : 'One more pair'}
          </Button>
        </div>
      )}
    </fieldset>
  )
}
