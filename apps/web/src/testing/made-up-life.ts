import { type ClutchLife, ClutchLifeSchema } from '@fryward/shared'
import { newId } from './made-up.ts'

const thing = (kind: 'clutch' | 'pair' | 'culture' | 'tank', name: string) => ({ id: newId(), kind, name })
const tank = thing('tank', 'L1')
const stage = (name: string, on: string | null) => ({
  ...{ stage: name, status: on === null ? 'not_yet' : 'reached', on, ageDays: null, atLeast: 60, atMost: 60 },
  ...{ interval: null, fromStage: null, lost: null, share: null, ofFirst: null, isAboveBook: false },
})
const numbers = [80, 80, 72, 60].map((number, ageDays) => ({
  ...{ on: `2026-03-${String(9 + ageDays).padStart(2, '0')}`, ageDays },
  ...{ atLeast: ageDays === 3 ? 60 : number - 12, atMost: number, isCounted: ageDays === 3 },
}))

/** A clutch of 80 young of which 60 are left on their third day; invented. */
export const makeLife = (row: Partial<ClutchLife['row']> = {}): ClutchLife =>
  ClutchLifeSchema.parse({
    row: {
      ...{
        id: newId(),
        clutches: [thing('clutch', 'C1')],
        pairs: [thing('pair', 'P1')],
        species: 'amphiprion-ocellaris',
        care: 'nest',
      },
      ...{
        tanks: [tank],
        cultures: [],
        protocol: ['rotifers'],
        spawnedOn: '2026-03-01',
        bornOn: '2026-03-09',
        losses: [],
        missing: 0,
      },
      ...{
        numberNow: 60,
        mixedOn: null,
        stages: [stage('laid', '2026-03-01'), stage('hatched', '2026-03-09'), stage('settled', null)],
      },
      ...row,
    },
    ...{ today: '2026-03-12', numbers, events: [], vessels: [] },
    expected: [{ stage: 'hatched', from: '2026-03-08', to: '2026-03-10' }],
    departures: [{ on: '2026-03-11', ageDays: 2, kind: 'loss', number: 8, cause: 'thin' }],
    meals: [
      { food: 'rotifers', culture: thing('culture', 'R1'), firstOn: '2026-03-09', lastOn: '2026-03-12', times: 12 },
      { food: 'dry', culture: null, firstOn: '2026-03-11', lastOn: '2026-03-12', times: 2 },
    ],
    temperatures: [{ at: '2026-03-10T09:00:00.000Z', temperatureC: 26.4, tankId: tank.id }],
    setPoints: [{ tank, temperatureC: 26.5 }],
  })
