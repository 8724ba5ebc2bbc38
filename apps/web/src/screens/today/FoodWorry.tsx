'use client'

import { sayFoodWorry } from '@fryward/words'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { WorrySign } from '@/base/ui/Notice.tsx'
import { useOutlook } from '@/parts/food/use-outlook.ts'
import styles from './today.module.css'

/** One line where the food of the weeks ahead gives worry. */
export function FoodWorry() {
  const room = useRoom()
  const voice = useVoice()
  const outlook = useOutlook()
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
