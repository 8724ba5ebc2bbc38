import type { ReactNode } from 'react'
import { askAhead } from '@/app/rooms/[roomId]/ask-ahead.ts'
import { RoomShell } from '@/parts/shell/RoomShell.tsx'

type Props = { children: ReactNode; params: Promise<{ roomId: string }> }

export default async function RoomLayout({ children, params }: Props) {
  await askAhead(['getMe', 'getRoom'], await params)
  return <RoomShell>{children}</RoomShell>
}
