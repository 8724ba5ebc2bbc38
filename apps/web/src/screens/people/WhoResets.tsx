'use client'

import { useQuery } from '@tanstack/react-query'
import { Notice } from '@/base/ui/Notice.tsx'
import { meOptions } from '@/parts/session/me.ts'

/**
 * Whom an owner of this room asks when somebody forgot their password. They cannot open the account themselves: it may be in
 * other rooms too, and whoever opens it is let into those.
 */
export function WhoResets() {
  const me = useQuery(meOptions()).data
  if (!me || me.ownsServer) return null
  return (
    <Notice title="Somebody forgot their password?">
      <p>
        They ask for a link by mail on the sign-in page. Where this server sends no mail, ask whoever claimed the
        server: they make a link, or set a new password on its machine. An owner of one room cannot, as an account may
        be in others too.
      </p>
    </Notice>
  )
}
