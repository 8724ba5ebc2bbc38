import { type Context, claimMessages, markMessage, type Outgoing, tellAlarms } from '@fryward/room'
import type { HandOver } from './hand-over.ts'
import type { TickLog } from './tick-log.ts'

type Sender = { ctx: () => Context; handOver: HandOver; isMailSetUp: boolean; log: TickLog }

// Rounds of one tick; what is left waits for the next.
const mostRounds = 20

/**
 * What is to be said is written down, then taken, then handed over, and each time the step before is committed: whatever
 * stops this process, nothing is said twice by it, and nothing is lost without a word.
 * @returns how many messages were handed over.
 */
export async function sendMessages({ ctx, handOver, isMailSetUp, log }: Sender): Promise<number> {
  await tellAlarms(ctx(), { isMailSetUp })
  let number = 0
  for (let round = 0; round < mostRounds; round += 1) {
    const outgoing = await claimMessages(ctx())
    if (outgoing.length === 0) return number
    await Promise.all(outgoing.map((message) => send({ ctx, handOver, log }, message)))
    number += outgoing.length
  }
  return number
}

async function send({ ctx, handOver, log }: Omit<Sender, 'isMailSetUp'>, message: Outgoing): Promise<void> {
  const outcome = await handOver(message, ctx().now)
  if (outcome.state !== 'sent') log.warn({ message: message.id, ...outcome }, 'a message did not surely arrive')
  await markMessage(ctx(), message, outcome)
}
