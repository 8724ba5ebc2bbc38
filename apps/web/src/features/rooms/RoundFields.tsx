'use client'

import type { Round } from '@fryward/shared'
import { TextInput } from '@mantine/core'
import { Row } from '@/forms/Row.tsx'
import { Button } from '@/ui/Button.tsx'
import styles from './rooms.module.css'

/** What the contract allows in one room. */
const mostRounds = 8

const freeId = (rounds: Round[]): string => {
  let n = rounds.length + 1
  while (rounds.some((round) => round.id === `round_${n}`)) n++
  return `round_${n}`
}

/** The walks of a day: a name and a time each. */
export function RoundFields({ rounds, onRounds }: { rounds: Round[]; onRounds: (rounds: Round[]) => void }) {
  const change = (id: string, part: Partial<Round>) =>
    onRounds(rounds.map((round) => (round.id === id ? { ...round, ...part } : round)))
  return (
    <fieldset className={styles.rounds}>
      <legend className={styles.legend}>Rounds a day</legend>
      {rounds.map((round) => (
        <div key={round.id} className={styles.round}>
          <Row>
            <TextInput
              label="Round"
              value={round.name}
              onChange={(event) => change(round.id, { name: event.currentTarget.value })}
            />
            <TextInput
              type="time"
              label="Starts"
              value={round.at}
              onChange={(event) => change(round.id, { at: event.currentTarget.value })}
            />
          </Row>
          {rounds.length > 1 && (
            <Button
              variant="subtle"
              aria-label={`Take out the round ${round.name}`}
              onClick={() => onRounds(rounds.filter((one) => one.id !== round.id))}
            >
              Take out
            </Button>
          )}
        </div>
      ))}
      {rounds.length < mostRounds && (
        <div>
          <Button
            variant="default"
            onClick={() => onRounds([...rounds, { id: freeId(rounds), name: 'Late', at: '21:30' }])}
          >
            One more round
          </Button>
        </div>
      )}
    </fieldset>
  )
}
