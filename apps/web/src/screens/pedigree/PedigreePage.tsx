'use client'

import type { Pedigree } from '@fryward/shared'
import { sayInbreeding, sayNumber, sayWhole } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { LinkButton } from '@/base/ui/Button.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Card, Page, Section, Traits } from '@/base/ui/Page.tsx'
import { pedigreeOptions } from '@/parts/pedigree/queries.ts'
import { speciesOptions } from '@/parts/species/queries.ts'
import { nameOfOther } from '@/parts/species/typed-species.ts'
import { hrefOf } from '@/parts/things/href.ts'
import { FamilyTree } from './FamilyTree.tsx'
import { PairToBe } from './PairToBe.tsx'
import styles from './pedigree.module.css'
import { layOut } from './tree-layout.ts'

/** Who descends from whom, and how inbred; two fish can be tried as a pair before they are one. */
export function PedigreePage() {
  const pedigree = useQuery(pedigreeOptions(useRoom().id))
  return (
    <Page
      title="Pedigree"
      lead="Who descends from whom. Fish that were bought in, caught wild or whose parents nobody knows are taken as founders, related to nobody."
    >
      <Loaded query={pedigree} skeleton={<Bones heights={[14, 14]} />} what="The pedigree">
        {(data) => (data.pairs.length === 0 ? <NoPairs /> : <Families pedigree={data} />)}
      </Loaded>
    </Page>
  )
}

function NoPairs() {
  const room = useRoom()
  return (
    <Notice title="No pair yet">
      <p>Add a pair, and say on its page which clutch its fish grew up from.</p>
      <LinkButton href={`/rooms/${room.id}/add?what=pair`} variant="filled">
        Add a pair
      </LinkButton>
    </Notice>
  )
}

function Families({ pedigree }: { pedigree: Pedigree }) {
  const species = useQuery(speciesOptions()).data ?? []
  const nameOf = (id: string) => species.find((one) => one.id === id)?.commonName ?? nameOfOther(id) ?? id
  return (
    <>
      <PairToBe pedigree={pedigree} />
      {pedigree.bySpecies.map((stock) => (
        <Section key={stock.species} title={nameOf(stock.species)}>
          <Card>
            <FamilyTree pedigree={pedigree} species={stock.species} label={`Family tree, ${nameOf(stock.species)}`} />
            {layOut(pedigree, stock.species).links.length > 0 && (
              <p className={styles.soft}>A whole line leads to the female of a pair, a dashed one to its male.</p>
            )}
            <Stock stock={stock} />
          </Card>
          <PairList pedigree={pedigree} species={stock.species} />
        </Section>
      ))}
    </>
  )
}

function Stock({ stock }: { stock: Pedigree['bySpecies'][number] }) {
  const voice = useVoice()
  const { effectiveSize, inbreedingPerGeneration } = stock
  return (
    <Traits
      traits={[
        { label: 'Founders', value: sayWhole(stock.founders, voice) },
        { label: 'Pairs now', value: sayWhole(stock.females, voice) },
        {
          label: 'As if there were',
          value: effectiveSize === null ? 'none' : `${sayNumber(effectiveSize, voice)} unrelated fish`,
        },
        {
          label: 'Each generation adds',
          value:
            inbreedingPerGeneration === null
              ? 'nothing now'
              : `${sayNumber(inbreedingPerGeneration * 100, voice)}% inbreeding`,
        },
      ]}
    />
  )
}

/** The tree for those who read. */
function PairList({ pedigree, species }: { pedigree: Pedigree; species: string }) {
  const room = useRoom()
  const pairs = pedigree.pairs.filter((pair) => pair.species === species)
  return (
    <ul className={styles.pairs}>
      {pairs.map(({ pair, generation, isLiving, offspringInbreeding }) => (
        <li key={pair.id}>
          <Link href={hrefOf(room.id, pair) ?? ''}>{pair.name}</Link>
          <span className={styles.soft}>
            {generation === 0 ? 'founders' : `generation ${sayWhole(generation, room)}`}
            {!isLiving && ', ended'}
          </span>
          {pedigree.fish
            .filter((fish) => fish.pair.id === pair.id)
            .map((fish) => (
              <span key={fish.sex}>
                {fish.sex}: {fish.sameAs && `the ${fish.sameAs.sex} of ${fish.sameAs.pair.name}, `}
                {fish.fromClutch && fish.parents ? (
                  <>
                    from <Link href={hrefOf(room.id, fish.fromClutch) ?? ''}>{fish.fromClutch.name}</Link>
                  </>
                ) : (
                  'founder'
                )}
              </span>
            ))}
          <span>young: {sayInbreeding(offspringInbreeding, room)}</span>
        </li>
      ))}
    </ul>
  )
}
