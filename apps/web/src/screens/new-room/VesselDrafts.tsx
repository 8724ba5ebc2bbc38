'use client'

import type { UnitSystem } from '@fryward/shared'
import { TextInput } from '@mantine/core'
import type { ReactNode } from 'react'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { Row } from '@/base/forms/Row.tsx'
import { Button } from '@/base/ui/Button.tsx'
import styles from '@/parts/rooms/rooms.module.css'

type Draft = { id: number; name: string; volume: string }
type Change<D> = (part: Partial<D>) => void
type Common = Partial<Pick<Draft, 'name' | 'volume'>>
type Props<D extends Draft> = {
  legend: string
  /** "tank", "culture": what one of them is called. */
  word: string
  /** The button while there is none yet. */
  firstLabel: string
  vessels: D[]
  units: UnitSystem
  /** A new one, with its number. */
  make: (id: number) => D
  onVessels: (vessels: D[]) => void
  /** Fields of its own beside name and volume, and under them. */
  beside?: (vessel: D, change: Change<D>) => ReactNode
  under: (vessel: D, change: Change<D>) => ReactNode
}

/** A list of vessels to set up: name and volume each, with what is its own kind's. */
export function VesselDrafts<D extends Draft>(props: Props<D>) {
  const { legend, word, firstLabel, vessels, units, make, onVessels, beside, under } = props
  const change = (id: number, part: Partial<D> | Common) =>
    onVessels(vessels.map((vessel) => (vessel.id === id ? { ...vessel, ...part } : vessel)))
  const add = () => onVessels([...vessels, make(Math.max(0, ...vessels.map((vessel) => vessel.id)) + 1)])
  return (
    <fieldset className={styles.rounds}>
      <legend className={styles.legend}>{legend}</legend>
      <ul className={styles.vessels}>
        {vessels.map((vessel) => (
          <VesselItem
            key={vessel.id}
            vessel={vessel}
            units={units}
            change={(part) => change(vessel.id, part)}
            beside={beside?.(vessel, (part) => change(vessel.id, part))}
          >
            {under(vessel, (part) => change(vessel.id, part))}
            <Button
              variant="subtle"
              aria-label={`Take out the ${word} ${vessel.name}`}
              onClick={() => onVessels(vessels.filter((one) => one.id !== vessel.id))}
            >
              Take out
            </Button>
          </VesselItem>
        ))}
      </ul>
      <div>
        <Button variant="default" onClick={add}>
          {vessels.length === 0 ? firstLabel : `One more ${word}`}
        </Button>
      </div>
    </fieldset>
  )
}

type ItemProps = {
  vessel: Draft
  units: UnitSystem
  change: (part: Common) => void
  beside: ReactNode
  children: ReactNode
}

function VesselItem({ vessel, units, change, beside, children }: ItemProps) {
  return (
    <li className={styles.vessel}>
      <Row>
        <TextInput label="Name" value={vessel.name} onChange={(event) => change({ name: event.currentTarget.value })} />
        <NumberBox
          label="Volume"
          unitWord={units === 'us' ? 'gal' : 'L'}
          text={vessel.volume}
          onText={(volume) => change({ volume })}
        />
        {beside}
      </Row>
      {children}
    </li>
  )
}
