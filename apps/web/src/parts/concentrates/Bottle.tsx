'use client'

import type { Concentrate } from '@fryward/shared'
import { sayDate } from '@/base/dates/say.ts'
import { FormProblem } from '@/base/forms/Form.tsx'
import { formatNumber } from '@/base/quantities/format-number.ts'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Card } from '@/base/ui/Page.tsx'
import { useChangeConcentrate } from './queries.ts'

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
