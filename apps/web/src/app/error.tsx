'use client'

import { Button } from '@/ui/Button.tsx'

export default function PageError({ reset }: { error: Error; reset: () => void }) {
  return (
    <main style={{ padding: '2rem 1.2rem', display: 'grid', gap: '0.8rem', justifyItems: 'start' }}>
      <h1>This page stopped</h1>
      <p>What was booked stays booked. Try once more; if it stops again, load the page anew.</p>
      <Button onClick={reset}>Try again</Button>
    </main>
  )
}
