'use client'

import { TextInput } from '@mantine/core'
import { useRef, useState } from 'react'
import { Button } from '@/base/ui/Button.tsx'

/** A link to pass on. On a plain http address the clipboard is out of reach: then it is selected, ready to copy. */
export function CopyLink({ link, label = 'Invitation link' }: { link: string; label?: string }) {
  const box = useRef<HTMLInputElement>(null)
  const [said, say] = useState('')
  const copy = async () => {
    box.current?.select()
    if (navigator.clipboard === undefined) return say('Selected. Copy it with your device’s own copy.')
    try {
      await navigator.clipboard.writeText(link)
      say('Copied.')
    } catch {
      // Refused by the browser or the person: the link stands selected in the box.
      say('Selected. Copy it with your device’s own copy.')
    }
  }
  return (
    <div style={{ width: '100%', display: 'grid', gap: '0.5rem' }}>
      <TextInput ref={box} label={label} value={link} readOnly onFocus={(event) => event.target.select()} />
      <Button variant="default" onClick={() => void copy()}>
        Copy the link
      </Button>
      <p role="status">{said}</p>
    </div>
  )
}
