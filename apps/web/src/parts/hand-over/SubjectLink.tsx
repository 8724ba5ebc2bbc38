'use client'

import type { HandOver } from '@fryward/shared'
import { useRoom } from '@/base/room/room-context.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { hrefOf } from '@/parts/things/href.ts'

/** A thing's name, as the way to its page where it has one. */
export function SubjectLink({ subject }: { subject: HandOver['signs'][number]['subject'] }) {
  const href = hrefOf(useRoom().id, subject)
  if (!href) return <strong>{subject.name}</strong>
  return <Link href={href}>{subject.name}</Link>
}
