'use client'

import type { Round } from '@fryward/shared'
import { TextInput } from '@mantine/core'
import { TimeBox } from '@/base/forms/TimeBox.tsx'
import { Button } from '@/base/ui/Button.tsx'
import styles from './rooms.module.css'

/** What the contract allows in one room. */
const mostRounds = 8

/** Made up once and never typed: tasks name their round by it, so that a round can be renamed. */
const freeId = (rounds: Round[]): string => {
  let n = rounds.length + 1
  while (rounds.some((round) => round.id === `round_${n}`)) n++
  return `round_${n}`
}

/** The walks of a day, one a line: its name, when it starts, and away with it. */
export function RoundFields({ rounds, onRounds }: { rounds: Round[]; onRounds: (rounds: Round[]) => void }) {
  const change = (id: string, part: Partial<Round>) =>
    onRounds(rounds.map((round) => (round.id === id ? { ...round, ...part } : round)))
  return (
    <fieldset className={styles.rounds}>
      <legend className={styles.legend}>Rounds a day</legend>
      <div className={styles.round} aria-hidden="true">
        <span>Name</span>
        <span>Starts</span>
      </div>
      {rounds.map((round, i) => (
        <div key={round.id} className={styles.round}>
          <TextInput
            aria-label={`Round ${i + 1}: name`}
            value={round.name}
            onChange={(event) => change(round.id, { name: event.currentTarget.value })}
          />
          <TimeBox
            label={`Round ${i + 1}: starts`}
            isLabelHidden
            isRequired
            text={round.at}
            onText={(at) => change(round.id, { at })}
          />
          {rounds.length > 1 && (
            <button
              type="button"
              className={styles.away}
              aria-label={`Take out the round ${round.name}`}
              onClick={() => onRounds(rounds.filter((one) => one.id !== round.id))}
            >
              <svg viewBox="0 0 24 24" aria-hidden="true">
                <path d="m6 6 12 12M18 6 6 18" stroke="currentColor" strokeWidth="2.4" strokeLinecap="round" />
              </svg>
            </button>
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
