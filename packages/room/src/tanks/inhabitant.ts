import type { Id } from '@fryward/shared'
import { invalid } from '../errors.ts'
import type { Work } from '../frame/write-in-room.ts'

// The forecasts of eggs and larvae hold from here up (husbandry's thermal/check.ts); colder is a slip of the thumb.
const coldestC = 10

/** The name of a pair, batch or group that lives in a tank; null when nothing does. */
export async function findInhabitant(work: Work, tankId: Id): Promise<string | null> {
  const query = {
    where: { roomId: work.roomId, tankId, subject: { endedAt: null } },
    include: { subject: true },
  } as const
  const found =
    (await work.tx.pair.findFirst(query)) ??
    (await work.tx.larvalBatch.findFirst(query)) ??
    (await work.tx.juvenileGroup.findFirst(query))
  return found?.subject.name ?? null
}

/** Refuses to have living things in water that none of the species here could live in. */
export function assertWarmEnough(tank: { name: string; temperatureC: number }, path: 'tankId' | 'temperatureC'): void {
  if (tank.temperatureC < coldestC)
    throw invalid(
      path,
      `${tank.name} would be at ${tank.temperatureC} °C with something living in it; that takes ${coldestC} to 40 °C.`,
      tank.temperatureC,
    )
}
