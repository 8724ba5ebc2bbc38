'use client'

import type { Concentrate } from '@fryward/shared'
import { sayDate } from '@/dates/say.ts'
import { useChangeConcentrate } from '@/features/vessels/queries.ts'
import { FormProblem } from '@/forms/Form.tsx'
import { formatNumber } from '@/quantities/format-number.ts'
import { Button } from '@/ui/Button.tsx'
import { Card } from '@/ui/Page.tsx'
import { useMay, useRoom } from './room-context.tsx'

export function Bottle({ bottle }: { bottle: Concentrate }) {
  const room = useRoom()
  const may = useMay('manage')
  const change = useChangeConcentrate(room.id)
  return (
    <Card>
      <p>
        <strong>{bottle.name}</strong>, {formatNumber(bottle.cellsPerMl)} cells per mL
        {bottle.openedOn && `, opened ${sayDate(bottle.openedOn)}`}
        {bottle.useBy && `, use by ${sayDate(bottle.useBy)}`}
        {bottle.isFinished && ', finished'}
      </p>
      <FormProblem error={change.error} />
      {may && !bottle.isFinished && (
        <div>
          <Button
            variant="default"
            isBusy={change.isPending}
            aria-label={`It is finished: ${bottle.name}`}
            onClick={() => change.mutate({ id: bottle.id, body: { isFinished: true, version: bottle.version } })}
          >
            It is finished
          </Button>
        </div>
      )}
    </Card>
  )
}
