import type { FactOf } from '@fryward/shared'

/** Animals per mL of one count; undefined for what was counted by the head. */
export function densityOf({ animals, volumeMl, dilution }: FactOf<'count'>['data']): number | undefined {
  if (volumeMl === undefined) return undefined
  return (animals.reduce((sum, one) => sum + one, 0) / animals.length / volumeMl) * dilution
}
