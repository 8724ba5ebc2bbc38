import { redirect } from 'next/navigation'

export default async function Page({ params }: { params: Promise<{ roomId: string }> }) {
  redirect(`/rooms/${(await params).roomId}/today`)
}
