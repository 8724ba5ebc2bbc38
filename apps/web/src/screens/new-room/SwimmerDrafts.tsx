'use client'

import { TextInput } from '@mantine/core'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { Row } from '@/base/forms/Row.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { Button } from '@/base/ui/Button.tsx'
import styles from '@/parts/rooms/rooms.module.css'
import { SpeciesSelect } from '@/parts/species/SpeciesSelect.tsx'
import { DraftTankSelect } from './DraftTankSelect.tsx'
import type { CultureDraft, SwimmerDraft, TankDraft } from './wizard-draft.ts'

type Props = {
  swimmers: SwimmerDraft[]
  tanks: TankDraft[]
  cultures: CultureDraft[]
  onSwimmers: (swimmers: SwimmerDraft[]) => void
}

/** Larvae and juveniles that swim already, each lot in one of the tanks above. */
export function SwimmerDrafts({ swimmers, tanks, cultures, onSwimmers }: Props) {
  const change = (id: number, part: Partial<SwimmerDraft>) =>
    onSwimmers(swimmers.map((one) => (one.id === id ? { ...one, ...part } : one)))
  const add = () => {
    const id = Math.max(0, ...swimmers.map((one) => one.id)) + 1
    const [tank, culture] = [tanks.find(({ kind }) => kind === 'larval') ?? tanks[0], cultures[0]]
    const own = { tankId: tank?.id ?? 0, cultureId: culture?.id ?? 0 }
    onSwimmers([
      ...swimmers,
      { ...own, id, what: 'larvae', name: `Larvae ${id}`, species: '', age: '', day: '', number: '' },
    ])
  }
  return (
    <fieldset className={styles.rounds}>
      <legend className={styles.legend}>Larvae and juveniles that swim already</legend>
      {tanks.length === 0 && <p>They swim in a tank: add its tank first.</p>}
      <ul className={styles.vessels}>
        {swimmers.map((one) => (
          <li key={one.id} className={styles.vessel}>
            <SwimmerFields swimmer={one} tanks={tanks} cultures={cultures} change={(part) => change(one.id, part)} />
            <Button
              variant="subtle"
              aria-label={`Take out ${one.name}`}
              onClick={() => onSwimmers(swimmers.filter(({ id }) => id !== one.id))}
            >
              Take out
            </Button>
          </li>
        ))}
      </ul>
      {tanks.length > 0 && (
        <div>
          <Button variant="default" onClick={add}>
            {swimmers.length === 0 ? 'Add larvae or juveniles' : 'More larvae or juveniles'}
          </Button>
        </div>
      )}
    </fieldset>
  )
}

const kinds = [
  { value: 'larvae', label: 'Larvae' },
  { value: 'juveniles', label: 'Juveniles' },
] as const

const ages = {
  larvae: { help: 'Day 0 is the morning after they hatched', day: 'Or the hatch night' },
  juveniles: { help: 'Since they settled', day: 'Or the day they settled' },
}

type FieldsProps = {
  swimmer: SwimmerDraft
  tanks: TankDraft[]
  cultures: CultureDraft[]
  change: (part: Partial<SwimmerDraft>) => void
}

function SwimmerFields({ swimmer, tanks, cultures, change }: FieldsProps) {
  const { what } = swimmer
  const rename = (next: SwimmerDraft['what']) =>
    /^(Larvae|Juveniles) \d+$/.test(swimmer.name)
      ? { name: `${kinds.find(({ value }) => value === next)?.label ?? ''} ${swimmer.id}` }
      : {}
  return (
    <>
      <ChoiceChips
        legend="They are"
        choices={kinds}
        value={what}
        onChoose={(value) => {
          const next = kinds.find((kind) => kind.value === value)?.value
          if (next) change({ what: next, ...rename(next) })
        }}
      />
      <TextInput label="Name" value={swimmer.name} onChange={(event) => change({ name: event.currentTarget.value })} />
      <SpeciesSelect value={swimmer.species} onChoose={(species) => change({ species })} />
      <DraftTankSelect tanks={tanks} tankId={swimmer.tankId} onTank={(tankId) => change({ tankId })} />
      <Row>
        <NumberBox
          label="How old"
          help={ages[what].help}
          unitWord="days"
          isWhole
          text={swimmer.age}
          onText={(age) => change({ age, day: '' })}
        />
        <TextInput
          type="date"
          label={ages[what].day}
          value={swimmer.day}
          onChange={(event) => change({ day: event.currentTarget.value, age: '' })}
        />
      </Row>
      <NumberBox
        label="About how many"
        help="Not known? Leave it empty"
        isWhole
        text={swimmer.number}
        onText={(number) => change({ number })}
      />
      {what === 'larvae' && cultures.length > 0 && (
        <SelectBox
          label="Fed from"
          value={String(swimmer.cultureId)}
          onChoose={(id) => change({ cultureId: Number(id) })}
          choices={[
            ...cultures.map((culture) => ({ value: String(culture.id), label: culture.name })),
            { value: '0', label: 'none of these' },
          ]}
        />
      )}
    </>
  )
}
