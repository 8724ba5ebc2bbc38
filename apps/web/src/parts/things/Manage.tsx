'use client'

import { type ReactNode, useState } from 'react'
import { useMay } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Card } from '@/base/ui/Page.tsx'
import { EndForm } from './EndForm.tsx'
import type { Endable } from './queries.ts'
import styles from './things.module.css'

type Props = {
  name: string
  version: number
  /** Left out for what cannot be ended by hand. */
  endable?: Endable
  edit: (close: () => void) => ReactNode
}

/** Change and end, for those who may; one form open at a time. */
export function Manage({ name, version, endable, edit }: Props) {
  const may = useMay('manage')
  const [open, setOpen] = useState<'edit' | 'end' | null>(null)
  const close = () => setOpen(null)
  if (!may) return null
  return (
    <>
      <div className={styles.actions}>
        <Button
          variant="default"
          aria-expanded={open === 'edit'}
          onClick={() => setOpen(open === 'edit' ? null : 'edit')}
        >
          Change
        </Button>
        {endable && (
          <Button
            variant="default"
            aria-expanded={open === 'end'}
            onClick={() => setOpen(open === 'end' ? null : 'end')}
          >
            End
          </Button>
        )}
      </div>
      {open === 'edit' && <Card>{edit(close)}</Card>}
      {open === 'end' && endable && (
        <Card>
          <EndForm name={name} version={version} endable={endable} onClose={close} />
        </Card>
      )}
    </>
  )
}
