'use client'

import type { Pedigree, QueryOf } from '@fryward/shared'
import { sayInbreeding } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Row } from '@/base/forms/Row.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Card, Section } from '@/base/ui/Page.tsx'
import { clutchesOptions } from '@/parts/clutches/queries.ts'
import { pairToBeOptions } from '@/parts/pedigree/queries.ts'
import styles from './pedigree.module.css'

type Fish = { value: string; label: string; clutchId?: string; pairId?: string }
const stranger: Fish = { value: '', label: 'a fish of unknown parents' }

/** Two fish tried as a pair: how inbred their young would be. */
export function PairToBe({ pedigree }: { pedigree: Pedigree }) {
  const room = useRoom()
  const clutches = useQuery(clutchesOptions(room.id)).data ?? []
  const [chosen, choose] = useState({ female: '', male: '' })
  const young = clutches
    .filter(({ state }) => state === 'hatched')
    .map(({ id, name }): Fish => ({ value: `clutch ${id}`, label: `a young one of ${name}`, clutchId: id }))
  const ofPairs = pedigree.pairs
    .filter(({ isLiving }) => isLiving)
    .map(({ pair }): Fish => ({ value: `pair ${pair.id}`, label: `the one of ${pair.name}`, pairId: pair.id }))
  const fish = [stranger, ...ofPairs, ...young]
  const find = (value: string) => fish.find((one) => one.value === value) ?? stranger
  return (
    <Section title="A pair to be">
      <Card>
        <Row>
          {(['female', 'male'] as const).map((sex) => (
            <SelectBox
              key={sex}
              label={sex === 'female' ? 'Female' : 'Male'}
              value={chosen[sex]}
              choices={fish}
              onChoose={(value) => choose({ ...chosen, [sex]: value })}
            />
          ))}
        </Row>
        <Answer female={find(chosen.female)} male={find(chosen.male)} />
      </Card>
    </Section>
  )
}

function Answer({ female, male }: { female: Fish; male: Fish }) {
  const room = useRoom()
  const query: QueryOf<'getPairToBe'> = {
    ...(female.clutchId === undefined ? {} : { femaleFromClutchId: female.clutchId }),
    ...(female.pairId === undefined ? {} : { femaleOfPairId: female.pairId }),
    ...(male.clutchId === undefined ? {} : { maleFromClutchId: male.clutchId }),
    ...(male.pairId === undefined ? {} : { maleOfPairId: male.pairId }),
  }
  const answer = useQuery(pairToBeOptions(room.id, query))
  return (
    <div aria-live="polite">
      <Loaded query={answer} skeleton={<Bones heights={[3]} />} what="The answer">
        {({ offspringInbreeding, hasUnknownParent }) => (
          <>
            <p>
              <strong>Young of these two: {sayInbreeding(offspringInbreeding, room)}.</strong>
            </p>
            {hasUnknownParent && (
              <p className={styles.soft}>
                A fish whose parents are not known is taken as related to nobody; bought from one breeder, two may be
                brother and sister all the same.
              </p>
            )}
          </>
        )}
      </Loaded>
    </div>
  )
}
