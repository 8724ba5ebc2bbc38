'use client'

import { TextInput } from '@mantine/core'
import type { ReactNode } from 'react'
import { CheckBox } from '@/base/forms/CheckBox.tsx'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { Row } from '@/base/forms/Row.tsx'
import type { VesselDraft } from './vessel-draft.ts'

type Props = {
  draft: VesselDraft
  change: (part: Partial<VesselDraft>) => void
  /** Where the name is written: "the tank". */
  bearer: string
  /** What is missing of the water. */
  error: string | undefined
  /** What kind it is; stands under the name. */
  kind: ReactNode
  /** What only this vessel has; stands under the water. */
  children?: ReactNode
  /** More to tick beside the filter. */
  marks?: ReactNode
}

/** Name, water, filter and note of a vessel, with what is its own in between. */
export function VesselFields({ draft, change, bearer, error, kind, children, marks }: Props) {
  return (
    <>
      <TextInput
        label="Name"
        description={`As it stands on ${bearer}`}
        required
        value={draft.name}
        onChange={(event) => change({ name: event.currentTarget.value })}
      />
      {kind}
      <Row>
        <NumberBox
          label="Volume"
          help="Of water, when full to its mark"
          unit="L"
          isRequired
          error={error}
          text={draft.volume}
          onText={(volume) => change({ volume })}
        />
        <NumberBox
          label="Temperature"
          unit="degC"
          isRequired
          text={draft.temperature}
          onText={(temperature) => change({ temperature })}
        />
        <NumberBox label="Salinity" isRequired text={draft.salinity} onText={(salinity) => change({ salinity })} />
      </Row>
      {children}
      <CheckBox label="It has a filter" isChecked={draft.hasFilter} onCheck={(hasFilter) => change({ hasFilter })} />
      {marks}
      <TextInput label="Note" value={draft.note} onChange={(event) => change({ note: event.currentTarget.value })} />
    </>
  )
}
