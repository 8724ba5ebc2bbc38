'use client'

import { sayTime } from '@fryward/words'
import { type KeyboardEvent, useRef } from 'react'
import { useVoice } from '@/base/room/room-context.tsx'
import { type RoundState, sayLeft } from './arrange.ts'
import styles from './today.module.css'

type Props = { rounds: RoundState[]; chosen: string | undefined; onChoose: (id: string) => void; panelId: string }

/** Rounds of the day with what is still open in each; arrow keys move between them. */
export function RoundTabs({ rounds, chosen, onChoose, panelId }: Props) {
  const voice = useVoice()
  const list = useRef<HTMLDivElement>(null)
  const step = (event: KeyboardEvent) => {
    const by = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0
    if (by === 0) return
    event.preventDefault()
    const at = rounds.findIndex((round) => round.id === chosen)
    const next = rounds[(at + by + rounds.length) % rounds.length]
    if (!next) return
    onChoose(next.id)
    list.current?.querySelector<HTMLElement>(`[data-round="${next.id}"]`)?.focus()
  }
  return (
    <div className={styles.tabs} role="tablist" aria-label="Rounds" ref={list} onKeyDown={step}>
      {rounds.map((round) => (
        <button
          key={round.id}
          id={`${panelId}-${round.id}`}
          type="button"
          role="tab"
          data-round={round.id}
          aria-selected={round.id === chosen}
          aria-controls={panelId}
          tabIndex={round.id === chosen ? 0 : -1}
          className={styles.tab}
          onClick={() => onChoose(round.id)}
        >
          <span className={styles.tabName}>{round.name}</span>
          <span className={styles.tabSmall}>
            <span className={styles.tabTime}>{sayTime(round.startsAt, voice)} · </span>
            {sayLeft(round)}
          </span>
        </button>
      ))}
    </div>
  )
}
