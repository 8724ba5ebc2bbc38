'use client'

import { Button, LinkButton } from '@/base/ui/Button.tsx'
import { Doorway } from '@/parts/doorway/Doorway.tsx'

export default function PageError({ reset }: { error: Error; reset: () => void }) {
  return (
    <Doorway title="This page stopped">
      <p>What was booked stays booked. Try once more; if it stops again, load the page again.</p>
      <Button variant="filled" onClick={reset}>
        Try again
      </Button>
      <LinkButton href="/rooms" variant="default">
        Go to your rooms
      </LinkButton>
    </Doorway>
  )
}
