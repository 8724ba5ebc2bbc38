import type { Alarm, Instant, MessageOccasion, MessageState, MessageWay } from '@fryward/shared'
import { sayMoment } from '../dates/say-date.ts'
import type { Voice } from '../voice.ts'
import { firstSteps, sayAlarm } from './say-alarm.ts'

/** What somebody who is not at a page is told. `text` stands alone, lines and all. */
export type SaidMessage = { title: string; text: string }

type Told = {
  occasion: MessageOccasion
  /** How many times it had been said before. */
  ordinal: number
  roomName: string
  alarm: Pick<Alarm, 'kind' | 'value' | 'subject' | 'gauge' | 'raisedAt'> | null
  /** Where the room is looked at. */
  address: string
}

/** A message of an alarm: what is wrong, since when, what to do first, and where to say "I have it". */
export function sayMessage(
  { occasion, ordinal, roomName, alarm, address }: Told,
  now: Instant,
  voice: Voice,
): SaidMessage {
  if (alarm === null)
    return {
      title: `${roomName}: a message to try`,
      text: `This is how an alarm of ${roomName} reaches you. Nothing is wrong.\n\n${address}`,
    }
  const said = sayAlarm(alarm, voice)
  const since = sayMoment(alarm.raisedAt, now, voice)
  if (occasion === 'over')
    return { title: `${roomName}: over`, text: `It is over: ${said}. It had been so since ${since}.\n\n${address}` }
  const again = ordinal === 0 ? '' : ' Nobody has it yet.'
  return {
    title: `${roomName}: ${said}`,
    text: `${said}, since ${since}.${again}\n\nFirst: ${firstSteps(alarm)}\n\nSay that you have it: ${address}`,
  }
}

export const messageWayLabels = {
  push: 'Push',
  mail: 'Mail',
  webhook: 'Webhook',
} as const satisfies Record<MessageWay, string>

export const messageStateLabels = {
  waiting: 'waits to be sent',
  claimed: 'on its way',
  sent: 'taken by the other side',
  failed: 'not sent',
  unknown: 'sent perhaps: nobody said whether it arrived',
  withdrawn: 'not sent, it was no longer so',
} as const satisfies Record<MessageState, string>
