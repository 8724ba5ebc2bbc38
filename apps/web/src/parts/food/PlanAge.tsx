import type { FoodView } from '@fryward/shared'
import { sayMoment } from '@fryward/words'
import { useServerNow } from '@/base/dates/use-now.ts'
import { useVoice } from '@/base/room/room-context.tsx'

/** When the plan was made, and whether the next one is under way. */
export function PlanAge({ plan }: { plan: NonNullable<FoodView['plan']> }) {
  const voice = useVoice()
  const now = useServerNow(plan)
  return (
    <span role="status">
      As planned {sayMoment(plan.madeAt, now, voice)}.
      {plan.isStale && ' The room has changed since; the next plan is being worked out.'}
    </span>
  )
}
