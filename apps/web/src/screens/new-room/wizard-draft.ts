import { defaultRounds, type RotiferStrain, stations, type TankKind } from '@fryward/shared'
import { deviceVoice } from '@/base/room/device-voice.ts'
import type { RoomDraft } from '@/parts/rooms/room-draft.ts'
import { deviceTimeZone } from '@/parts/rooms/time-zones.ts'

export type TankDraft = { id: number; name: string; kind: TankKind; volume: string }
export type CultureDraft = { id: number; name: string; strain: RotiferStrain; volume: string; density: string }
/** `tankId` is the number of a tank draft. */
export type PairDraft = { id: number; name: string; species: string; tankId: number; formedOn: string }
/** Larvae or settled fish: `age` in days or `day`, whichever was typed; `cultureId` is 0 where none of the form's feeds them. */
export type SwimmerDraft = {
  id: number
  what: 'larvae' | 'juveniles'
  name: string
  species: string
  tankId: number
  age: string
  day: string
  number: string
  cultureId: number
}
export type WizardDraft = RoomDraft & {
  pairs: PairDraft[]
  swimmers: SwimmerDraft[]
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
  swimmers: [],
  tanks: [],
  cultures: [],
  bottleName: '',
  bottleStrength: '',
})
