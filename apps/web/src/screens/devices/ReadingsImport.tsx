'use client'

import type { Gauge } from '@fryward/shared'
import { gaugeQuantityLabels } from '@fryward/words'
import { useRoom } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { useImportReadings, usePreviewReadings, useUndoReadings } from '@/parts/gauges/queries.ts'
import { FileImport } from '@/parts/records/FileImport.tsx'

/** Readings of a gauge from a CSV file: a logger's, or what was written down while the line was dead. */
export function ReadingsImport({ gauge, onDone }: { gauge: Gauge; onDone: () => void }) {
  const room = useRoom()
  const of = { roomId: room.id, gaugeId: gauge.id }
  const [preview, keep, undo] = [usePreviewReadings(of), useImportReadings(of), useUndoReadings(of)]
  return (
    <>
      <FileImport one="reading" preview={preview} keep={keep} undo={undo}>
        <p>
          A file saved as CSV, a line a reading of {gaugeQuantityLabels[gauge.quantity].toLowerCase()}, its first line
          naming the columns: <code>date</code> and <code>time</code> by this room’s clock, or both in <code>at</code>,
          and <code>value</code>
          {units[gauge.quantity]}. Values are kept as they stand, without the gauge’s offset. Charts show them; tasks
          and forecasts go by the latest of the last three days where it can be believed, and you are told. Nothing is
          kept before you have seen each line.
        </p>
      </FileImport>
      <div>
        <Button variant="subtle" onClick={onDone}>
          Close
        </Button>
      </div>
    </>
  )
}

/** What a value is in where its line names no unit (SenML's names). */
const units: Record<Gauge['quantity'], string> = {
  temperature: ' in °C, or in °F with F in a column unit',
  salinity: '',
  ph: '',
  oxygen: ' in mg/L',
  redox: ' in mV, or in V with V in a column unit',
  level: ' in cm, or with mm or m in a column unit',
}
