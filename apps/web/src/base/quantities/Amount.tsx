'use client'

import type { Phrase, Quantity } from '@fryward/shared'
import { type Piece, quantityParts, sayPhrase } from '@fryward/words'
import { useVoice } from '@/base/room/room-context.tsx'
import styles from './amount.module.css'

type AmountProps = {
  quantity: Quantity
  isLarge?: boolean
}

/** A number with its unit a size smaller, in the room's units. */
export function Amount({ quantity, isLarge = false }: AmountProps) {
  const said = quantityParts(quantity, useVoice())
  return (
    <span className={isLarge ? styles.large : styles.plain}>
      {said.number}
      <span className={styles.unit}>
        {said.gap}
        {said.unit}
      </span>
    </span>
  )
}

/** A sentence of the engine with its numbers in the room's units. */
export function PhraseText({ phrase }: { phrase: Phrase }) {
  return <>{sayPhrase(phrase, useVoice())}</>
}

/** A sentence with one of its numbers large: the one to measure out. */
export function PieceText({ pieces, large }: { pieces: Piece[]; large: string }) {
  const voice = useVoice()
  return (
    <>
      {pieces.map((piece, index) => {
        // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of one fixed sentence
        if (typeof piece === 'string') return <span key={index}>{piece}</span>
        if (piece.name === large) return <Amount key={piece.name} quantity={piece.quantity} isLarge />
        return piece.isBare ? (
          <span key={piece.name}>{quantityParts(piece.quantity, voice).number}</span>
        ) : (
          <Amount key={piece.name} quantity={piece.quantity} />
        )
      })}
    </>
  )
}
