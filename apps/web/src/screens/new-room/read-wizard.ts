import type { BodyInputOf } from '@fryward/shared'
import { typedNumber } from '@fryward/words'
import { readRoom } from '@/parts/rooms/room-draft.ts'
import { readAnimals } from './read-animals.ts'
import { readVessels } from './read-vessels.ts'
import type { WizardDraft } from './wizard-draft.ts'

const billion = 1e9

type Setup = BodyInputOf<'createRoom'>

/** The one request of the wizard, or a sentence about what is missing. */
export function readWizard(draft: WizardDraft, withVessels: boolean): Setup | string {
  const room = readRoom(draft)
  if (typeof room === 'string') return room
  if (!withVessels) return room
  const vessels = readVessels(draft, { salinity: room.salinity, temperatureC: room.temperatureC })
  if (typeof vessels === 'string') return vessels
  const animals = readAnimals(draft)
  if (typeof animals === 'string') return animals
  const strength = typedNumber(draft.bottleStrength, null, draft)
  if (draft.bottleName.trim() !== '' && strength === undefined)
    return 'The strength of the bottle from its label, or no bottle at all.'
  const concentrate =
    strength === undefined
      ? {}
      : { concentrate: { name: draft.bottleName.trim() || 'Concentrate', cellsPerMl: strength * billion } }
  return { ...room, ...vessels, ...animals, ...concentrate }
}
