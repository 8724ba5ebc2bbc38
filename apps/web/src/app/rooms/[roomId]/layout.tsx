import type { ReactNode } from 'react'
import { RoomShell } from '@/parts/shell/RoomShell.tsx'

export default function RoomLayout({ children }: { children: ReactNode }) {
  return <RoomShell>{children}</RoomShell>
}
