import { NowherePage } from '@/features/rooms/NowherePage.tsx'

export default function NotFound() {
  return <NowherePage />
}
