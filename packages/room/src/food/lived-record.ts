import { type BatchLived, livedInPast } from '@fryward/husbandry'
import type { Id } from '@fryward/shared'
import { readEndedBatches, type Transaction } from '@fryward/store'
import { toStandingFact } from '../state/standing-fact.ts'

/** What became of the larvae of batches that have ended, which the room's state has closed off. */
export async function livedRecord(
  tx: Transaction,
  { roomId, timeZone }: { roomId: Id; timeZone: string },
): Promise<BatchLived[]> {
  const { batches, facts } = await readEndedBatches(tx, roomId)
  // Who wrote them does not matter here.
  return livedInPast({ timeZone, batches, facts: facts.map((row) => toStandingFact(row, {})) })
}
