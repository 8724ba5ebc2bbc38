import type { BodyInputOf } from '@fryward/shared'
import { typedNumber } from '@fryward/words'
import type { WizardDraft } from './wizard-draft.ts'

type Setup = BodyInputOf<'createRoom'>
type Water = { salinity: number; temperatureC: number }

/** Tanks and cultures in the wire's units, or a sentence about the first that lacks something. */
export function readVessels(draft: WizardDraft, water: Water): Pick<Setup, 'tanks' | 'cultures'> | string {
  const wrong = sayWrong('tank', draft.tanks, draft) ?? sayWrong('culture', draft.cultures, draft)
  if (wrong) return wrong
  const volumeL = (vessel: { volume: string }) => typedNumber(vessel.volume, 'L', draft) ?? 0
  return {
    tanks: draft.tanks.map((tank) => ({ name: tank.name.trim(), kind: tank.kind, volumeL: volumeL(tank), ...water })),
    cultures: draft.cultures.map((culture) => {
      const startDensityPerMl = typedNumber(culture.density, 'per_mL', draft)
      return {
        ...{ name: culture.name.trim(), kind: 'rotifer' as const, strain: culture.strain },
        ...{ volumeL: volumeL(culture), ...water },
        ...(startDensityPerMl === undefined ? {} : { startDensityPerMl }),
      }
    }),
  }
}

type Typed = { name: string; volume: string }

function sayWrong(word: string, vessels: readonly Typed[], draft: WizardDraft): string | undefined {
  const seen = new Set<string>()
  for (const { name: typed, volume } of vessels) {
    const name = typed.trim()
    if (name === '') return `A name for each ${word}, so that it can be told apart.`
    if (seen.has(name.toLowerCase())) return `Two ${word}s are called ${name}: give one of them another name.`
    seen.add(name.toLowerCase())
    if (!((typedNumber(volume, 'L', draft) ?? 0) > 0)) return `The volume of ${name}, a number above 0.`
  }
  return undefined
}
