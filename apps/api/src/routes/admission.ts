import { type Actor, assertMayInRoom, assertOwnsServer, assertSignedInRecently } from '@fryward/room'
import { IdSchema, type Route } from '@fryward/shared'
import type { FastifyInstance, FastifyRequest } from 'fastify'

declare module 'fastify' {
  interface FastifyRequest {
    /** Who asks; null on routes that are for anyone. */
    person: Extract<Actor, { kind: 'person' }> | null
    /** What asks, on routes that are for devices; null on all others. */
    device: Extract<Actor, { kind: 'device' }> | null
  }
  interface FastifyContextConfig {
    /** Media types that the route reads. */
    takes?: readonly string[]
  }
}

/**
 * Who asks, and whether they may, is settled before the first byte of a body is read and before anybody waits for a
 * turn to write. Where something is only asked for, the use case is the one that looks.
 */
export const admissionTo = (app: FastifyInstance, { permission, method, asksAgain }: Route) =>
  async function admit(request: FastifyRequest): Promise<void> {
    if (permission === 'anyone') return
    if (permission === 'device') {
      request.device = await app.deviceOf(request)
      return
    }
    request.person = await app.personOf(request)
    const ctx = app.contextFor(request.person)
    if (permission === 'own_server') await assertOwnsServer({ ctx })
    else if (permission !== 'signed_in' && method !== 'GET') {
      const room = IdSchema.safeParse((request.params as { roomId?: unknown }).roomId)
      // An id that is none is refused with the rest of what the address gets wrong.
      if (room.success) await assertMayInRoom({ ctx, roomId: room.data, permission })
    }
    // Last: whoever may not is told so, and types no password for it.
    if (asksAgain) await assertSignedInRecently({ ctx })
  }
