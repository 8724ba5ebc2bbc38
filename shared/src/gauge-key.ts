import * as z from 'zod/mini'

/** What a device calls one of its gauges. SenML's names fit (RFC 8428, section 4.5.1). */
export const GaugeKeySchema = z
  .string()
  .check(
    z.regex(/^[A-Za-z0-9][A-Za-z0-9:./_-]{0,79}$/, 'up to 80 letters, digits and : . / _ -, a letter or digit first'),
  )
