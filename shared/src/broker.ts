import * as z from 'zod/mini'
import { InstantSchema } from './primitives.ts'
import { atMost } from './shapes.ts'

/**
 * Where devices publish by MQTT: the topic of a device. A post goes to it; a number alone to it, a slash and what the device
 * calls the gauge. No wildcards, and none of the broker's own topics, which begin with `$`.
 */
export const TopicSchema = z
  .string()
  .check(
    z.regex(
      /^[^\s/+#$\p{C}][^\s/+#\p{C}]*(\/[^\s/+#\p{C}]+)*$/u,
      'a topic such as home/rack, without spaces, + and #, and without a slash at its ends',
    ),
    atMost(120),
  )

// What goes into the first packet goes to whatever listens there: no line breaks for one that reads lines.
const plainText = (longest: number, what: string) =>
  z.string().check(
    atMost(longest),
    z.refine((typed) => !/\p{C}/u.test(typed), `${what} without line breaks and control characters`),
  )

export const ChangeBrokerSchema = z.strictObject({
  /** Null: none. */
  url: z.nullable(
    z
      .string()
      .check(
        z.regex(
          /^mqtts?:\/\/([A-Za-z0-9._-]{1,253}|\[[0-9A-Fa-f:.]{2,45}\])(:\d{1,5})?$/,
          'an address such as mqtt://broker.lan:1883, or mqtts:// for TLS',
        ),
      ),
  ),
  username: z.nullable(plainText(200, 'a user name')),
  /** Left out: the one that is kept, as long as the address is the same. Null: none. */
  password: z.optional(z.nullable(plainText(500, 'a password'))),
  /** The certificate that signed the broker's own, as PEM, where no public authority did. */
  authority: z.nullable(
    z
      .string()
      .check(
        z.regex(/^\s*-----BEGIN CERTIFICATE-----[\sA-Za-z0-9+/=-]+$/, 'a certificate as PEM, from its BEGIN line on'),
        atMost(20_000),
      ),
  ),
})
export type ChangeBroker = z.infer<typeof ChangeBrokerSchema>

/** A message that was not kept: the newest of its topic and reason, and how often that came. */
const RefusedMessageSchema = z.object({
  topic: z.string(),
  reason: z.string(),
  detail: z.string(),
  number: z.int(),
  lastAt: InstantSchema,
})

/** The broker that a room hears its devices by, and how that goes; its password is never told. */
export const BrokerSchema = z
  .object({
    url: z.nullable(z.string()),
    username: z.nullable(z.string()),
    hasPassword: z.boolean(),
    authority: z.nullable(z.string()),
    isConnected: z.boolean(),
    /** When it was last surely connected, to the minute. */
    lastConnectedAt: z.nullable(InstantSchema),
    /** What stands in the way, or last did. */
    trouble: z.nullable(z.string()),
    troubleAt: z.nullable(InstantSchema),
    /** Of the last seven days, newest first. */
    refusals: z.array(RefusedMessageSchema),
  })
  .register(z.globalRegistry, { id: 'Broker' })
export type Broker = z.infer<typeof BrokerSchema>
