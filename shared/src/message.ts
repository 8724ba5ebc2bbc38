import * as z from 'zod/mini'
import { IdSchema, InstantSchema } from './primitives.ts'
import { trimmedText } from './shapes.ts'
import { messageOccasions, messageStates, messageWays } from './vocabulary.ts'

/** What went to whom, by which way, and what became of it. */
export const MessageSchema = z
  .object({
    id: IdSchema,
    /** None of a trial. */
    alarmId: z.nullable(IdSchema),
    occasion: z.enum(messageOccasions),
    /** How many times the alarm had been told before. */
    ordinal: z.int(),
    way: z.enum(messageWays),
    /** Whom it is for; none of a webhook. */
    personName: z.nullable(z.string()),
    /** The mail address, the phone by its name, or the host of the webhook. */
    to: z.string(),
    state: z.enum(messageStates),
    createdAt: InstantSchema,
    /** When it was sent, refused or given up. */
    endedAt: z.nullable(InstantSchema),
    /** What the other side said. */
    detail: z.nullable(z.string()),
  })
  .register(z.globalRegistry, { id: 'Message' })
export type Message = z.infer<typeof MessageSchema>

/** How somebody is told of this room's alarms. */
export const ReachSchema = z
  .object({
    /** Whether this server sends mail at all. */
    isMailSetUp: z.boolean(),
    mail: z.string(),
    alarmsByMail: z.boolean(),
    /** What a browser needs to let this server push (Push API: applicationServerKey). */
    pushKey: z.string(),
    phones: z.array(z.object({ id: IdSchema, name: z.string(), createdAt: InstantSchema })),
  })
  .register(z.globalRegistry, { id: 'Reach' })
export type Reach = z.infer<typeof ReachSchema>

export const ChangeReachSchema = z.strictObject({ alarmsByMail: z.boolean() })

// Push services' own addresses are a few hundred letters; keys are 65 and 16 bytes (RFC 8291, section 2.1).
const keyText = (letters: number, what: string) =>
  z.string().check(z.regex(new RegExp(`^[A-Za-z0-9_-]{${letters}}=*$`), `${what}, as the browser gives it`))
export const NewPhoneSchema = z.strictObject({
  name: trimmedText({ shortest: 1, longest: 80 }),
  endpoint: z.string().check(z.regex(/^https:\/\/[^\s]{4,1000}$/, 'the https address that the browser gives')),
  p256dh: keyText(87, 'a key of 87 letters'),
  auth: keyText(22, 'a key of 22 letters'),
})
export type NewPhone = z.infer<typeof NewPhoneSchema>

export const ChangeWebhookSchema = z.strictObject({
  /** Null: no webhook. */
  url: z.nullable(
    z
      .string()
      .check(z.regex(/^https?:\/\/[^\s/@]+(\/\S{0,500})?$/, 'an address such as https://hub.example.org/alarms')),
  ),
})
export const WebhookSchema = z
  .object({
    url: z.nullable(z.string()),
    /** Checks the signature of each message (Standard Webhooks); none where there is no webhook. */
    secret: z.nullable(z.string()),
  })
  .register(z.globalRegistry, { id: 'Webhook' })
export type RoomWebhook = z.infer<typeof WebhookSchema>

/** A time in which this server was off: nothing is known of it. */
export const AbsenceSchema = z
  .object({ from: InstantSchema, to: InstantSchema })
  .register(z.globalRegistry, { id: 'Absence' })
export type Absence = z.infer<typeof AbsenceSchema>
