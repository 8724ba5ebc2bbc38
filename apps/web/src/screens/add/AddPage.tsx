'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { type ReactNode, useState } from 'react'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Card, Page } from '@/base/ui/Page.tsx'
import { BatchForm } from '@/parts/batches/BatchForm.tsx'
import { ConcentrateForm } from '@/parts/concentrates/ConcentrateForm.tsx'
import { CultureForm } from '@/parts/cultures/CultureForm.tsx'
import { FeedLinkForm } from '@/parts/feed-links/FeedLinkForm.tsx'
import { GroupForm } from '@/parts/groups/GroupForm.tsx'
import { PairForm } from '@/parts/pairs/PairForm.tsx'
import { TankForm } from '@/parts/tanks/TankForm.tsx'
import { ClutchForm } from './ClutchForm.tsx'

const kinds = ['culture', 'tank', 'pair', 'clutch', 'batch', 'group', 'link', 'bottle'] as const
type Kind = (typeof kinds)[number]

const labels: Record<Kind, string> = {
  culture: 'A culture',
  tank: 'A tank',
  pair: 'A pair',
  clutch: 'Eggs laid',
  batch: 'A hatch',
  group: 'A juvenile group',
  link: 'A feed link',
  bottle: 'A bottle of concentrate',
}
/** What a stand-in may add too: what happened, not what there is. */
const recordOnly: Kind[] = ['clutch', 'batch', 'group']

/** Each kind has a form of its own; `?what=` opens one, for links that know what is missing. */
export function AddPage() {
  const room = useRoom()
  const router = useRouter()
  const params = useSearchParams()
  const mayManage = useMay('manage')
  const mayRecord = useMay('record')
  const offered = kinds.filter((kind) => mayManage || (mayRecord && recordOnly.includes(kind)))
  const [chosen, choose] = useState<Kind | undefined>(() => offered.find((kind) => kind === params.get('what')))
  const done = () => router.push(`/rooms/${room.id}/room`)
  const forms: Record<Kind, ReactNode> = {
    culture: <CultureForm onDone={done} />,
    tank: <TankForm onDone={done} />,
    pair: <PairForm onDone={done} />,
    clutch: <ClutchForm onDone={done} />,
    batch: <BatchForm clutchId={params.get('clutch')} onDone={done} />,
    group: <GroupForm fromBatchId={params.get('batch')} onDone={done} />,
    link: <FeedLinkForm onDone={done} />,
    bottle: <ConcentrateForm onDone={done} />,
  }
  if (offered.length === 0)
    return (
      <Page title="Add something">
        <Notice>You are reading along: adding is for caretakers and the owner.</Notice>
      </Page>
    )
  return (
    <Page title="Add something">
      <ChoiceChips
        legend="What is new?"
        choices={offered.map((value) => ({ value, label: labels[value] }))}
        value={chosen}
        onChoose={(value) => choose(offered.find((kind) => kind === value))}
      />
      {/* The key drops what was typed of another kind. */}
      {chosen && <Card key={chosen}>{forms[chosen]}</Card>}
    </Page>
  )
}
