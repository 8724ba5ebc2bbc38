import { type BodyInputOf, defaultRounds, type RotiferStrain, stations, type TankKind } from '@fryward/shared'
import { toPlainDate, typedNumber } from '@fryward/words'
import { serverNow } from '@/base/api/server-clock.ts'
import { deviceVoice } from '@/base/room/device-voice.ts'
import { type RoomDraft, readRoom } from '@/parts/rooms/room-draft.ts'
import { deviceTimeZone } from '@/parts/rooms/time-zones.ts'

export type TankDraft = { id: number; name: string; kind: TankKind; volume: string }
export type CultureDraft = { id: number; name: string; strain: RotiferStrain; volume: string; density: string }
/** `tankId` is the number of a tank draft. */
export type PairDraft = { id: number; name: string; species: string; tankId: number; formedOn: string }
export type WizardDraft = RoomDraft & {
  pairs: PairDraft[]
  tanks: TankDraft[]
  cultures: CultureDraft[]
  bottleName: string
  /** Billions of cells per mL, as printed on the label. */
  bottleStrength: string
}

/** Where new water starts: full-strength sea water at 26 °C; 12 h of light. common practice */
export const startWizard = (): WizardDraft => ({
  name: '',
  timeZone: deviceTimeZone(),
  units: 'metric',
  locale: deviceVoice().locale,
  lightsOnAt: '08:00',
  lightsOffAt: '20:00',
  rounds: defaultRounds,
  stationOrder: [...stations],
  salinity: '35',
  temperature: '26',
  pairs: [],
  tanks: [],
  cultures: [],
  bottleName: '',
  bottleStrength: '',
})

const billion = 1e9

type Setup = BodyInputOf<'createRoom'>

function readVessels(
  draft: WizardDraft,
  water: { salinity: number; temperatureC: number },
): Pick<Setup, 'tanks' | 'cultures'> | string {
  const volumes = [...draft.tanks, ...draft.cultures].map((vessel) => typedNumber(vessel.volume, 'L', draft))
  if (volumes.some((volume) => volume === undefined)) return 'Each vessel needs its volume, as a number.'
  return {
    tanks: draft.tanks.map((tank) => ({
      name: tank.name,
      kind: tank.kind,
      volumeL: typedNumber(tank.volume, 'L', draft) ?? 0,
      ...water,
    })),
    cultures: draft.cultures.map((culture) => {
      const startDensityPerMl = typedNumber(culture.density, 'per_mL', draft)
      return {
        name: culture.name,
        kind: 'rotifer' as const,
        strain: culture.strain,
        volumeL: typedNumber(culture.volume, 'L', draft) ?? 0,
        ...water,
        ...(startDensityPerMl === undefined ? {} : { startDensityPerMl }),
      }
    }),
  }
}

/** The pairs, each with the tank that it is in; or a sentence about the first that lacks something. */
function readPairs(draft: WizardDraft): Pick<Setup, 'pairs'> | string {
  const pairs: NonNullable<Setup['pairs']> = []
  const today = toPlainDate(serverNow(), draft.timeZone)
  for (const { name, species, tankId, formedOn } of draft.pairs) {
    const tank = draft.tanks.find(({ id }) => id === tankId)
    if (!tank) return `The tank that ${name} lives in.`
    if (species === '') return `The species of ${name}.`
    if (formedOn > today) return `${name}: together since a day that is not still to come.`
    pairs.push({ name, species, tank: tank.name, formedOn: formedOn || null })
  }
  return { pairs }
}

/** The one request of the wizard, or a sentence about what is missing. */
export function readWizard(draft: WizardDraft, withVessels: boolean): Setup | string {
  const room = readRoom(draft)
  if (typeof room === 'string') return room
  if (!withVessels) return room
  const vessels = readVessels(draft, { salinity: room.salinity, temperatureC: room.temperatureC })
  if (typeof vessels === 'string') return vessels
  const pairs = readPairs(draft)
  if (typeof pairs === 'string') return pairs
  const strength = typedNumber(draft.bottleStrength, null, draft)
  if (draft.bottleName.trim() !== '' && strength === undefined)
    return 'The strength of the bottle from its label, or no bottle at all.'
  const concentrate =
    strength === undefined
      ? {}
      : { concentrate: { name: draft.bottleName.trim() || 'Concentrate', cellsPerMl: strength * billion } }
  return { ...room, ...vessels, ...pairs, ...concentrate }
}
