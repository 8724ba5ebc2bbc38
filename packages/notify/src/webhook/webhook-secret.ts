import { createHmac } from 'node:crypto'

/**
 * The secret that signs the messages of one webhook (Standard Webhooks: `whsec_` and base64), made of the one that sending has:
 * it is kept nowhere, and another address of the same room has another one.
 */
export const webhookSecretOf = (secret: string, webhookId: string): string =>
  `whsec_${createHmac('sha256', secret).update(`webhook ${webhookId}`).digest('base64')}`
