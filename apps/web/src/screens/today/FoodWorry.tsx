'use client'

import { sayFoodWorry } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { WorrySign } from '@/base/ui/Notice.tsx'
import { foodInPassing } from '@/parts/food/queries.ts'
import styles from './today.module.css'

/** One line where the food of the weeks ahead gives worry. */
export function FoodWorry() {
  const room = useRoom()
  const voice = useVoice()
  const outlook = useQuery(foodInPassing(room.id)).data?.plan?.outlook
  const today = outlook?.days[0]?.date
  const sentence = outlook && today ? sayFoodWorry(outlook, { today, voice }) : null
  if (!sentence) return null
  return (
    <p className={styles.foodWorry}>
      <WorrySign />
      <span>
        {sentence} <Link href={`/rooms/${room.id}/food`}>What would help</Link>
      </span>
    </p>
  )
}
