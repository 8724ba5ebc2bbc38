'use client'

import type { Concentrate } from '@fryward/shared'
import { sayDate, sayNumber } from '@fryward/words'
import { FormProblem } from '@/base/forms/Form.tsx'
import { useMay, useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Card } from '@/base/ui/Page.tsx'
import { useChangeConcentrate } from './queries.ts'

export function Bottle({ bottle }: { bottle: Concentrate }) {
  const voice = useVoice()
  const room = useRoom()
  const may = useMay('manage')
  const change = useChangeConcentrate(room.id)
  return (
    <Card>
      <p>
        <strong>{bottle.name}</strong>, {sayNumber(bottle.cellsPerMl, voice)} cells per mL
        {bottle.openedOn && `, opened ${sayDate(bottle.openedOn, voice)}`}
        {bottle.useBy && `, use by ${sayDate(bottle.useBy, voice)}`}
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
