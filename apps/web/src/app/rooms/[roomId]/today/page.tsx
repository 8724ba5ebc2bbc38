import type { Metadata } from 'next'
import { askAhead } from '@/app/rooms/[roomId]/ask-ahead.ts'
import { TodayPage } from '@/screens/today/TodayPage.tsx'

export const metadata: Metadata = { title: 'Today' }

type Props = { params: Promise<{ roomId: string }>; searchParams: Promise<{ date?: string }> }

export default async function Page({ params, searchParams }: Props) {
  const { date } = await searchParams
  // Another day's page asks for that day: an answer nobody takes would be an old one by the time somebody does.
  if (date === undefined) await askAhead(['getDay'], { ...(await params), date: 'today' })
  return <TodayPage />
}
