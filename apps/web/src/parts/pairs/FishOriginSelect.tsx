import type { Pair, PairSex, SameFish } from '@fryward/shared'
import { useQuery } from '@tanstack/react-query'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import { clutchesOptions } from '@/parts/clutches/queries.ts'
import { pairsOptions } from './queries.ts'

/** Where a fish comes from, as one text of a form: a clutch, a fish of another pair, or nothing that is known. */
export type FishOrigin = string

export const originOf = (clutchId: string | null | undefined, same: SameFish | null | undefined): FishOrigin =>
  clutchId ? `clutch ${clutchId}` : same ? `${same.sex} ${same.pairId}` : ''

/** The same for the wire. */
export function readOrigin(origin: FishOrigin): { clutchId: string | null; same: SameFish | null } {
  const [what, id] = origin.split(' ')
  if (!id) return { clutchId: null, same: null }
  return what === 'clutch'
    ? { clutchId: id, same: null }
    : { clutchId: null, same: { pairId: id, sex: what as PairSex } }
}

type Props = {
  label: string
  species: string
  /** The pair whose fish it is, which is no other pair. */
  pair: Pair | undefined
  value: FishOrigin
  onChoose: (origin: FishOrigin) => void
}

/** A clutch of this room that a fish grew up from, or the fish of another pair that it is; of one species. */
export function FishOriginSelect({ label, species, pair, value, onChoose }: Props) {
  const room = useRoom()
  const clutches = useQuery(clutchesOptions(room.id)).data ?? []
  const pairs = useQuery(pairsOptions(room.id)).data ?? []
  const grownUp = clutches.filter((clutch) => clutch.species === species && clutch.state === 'hatched')
  const others = pairs.filter((other) => other.species === species && other.id !== pair?.id)
  return (
    <SelectBox
      label={label}
      value={value}
      onChoose={onChoose}
      choices={[
        { value: '', label: 'none of this room, or not known' },
        ...grownUp.map(({ id, name }) => ({ value: originOf(id, null), label: `a young one of ${name}` })),
        ...others.flatMap(({ id, name }) =>
          (['female', 'male'] as const).map((sex) => ({
            value: originOf(null, { pairId: id, sex }),
            label: `the ${sex} of ${name}`,
          })),
        ),
      ]}
    />
  )
}
