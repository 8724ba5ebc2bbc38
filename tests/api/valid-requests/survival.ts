import { inRoom, type Requests } from './writing.ts'

export const survivalRequests = {
  getSurvival: (writing) => ({ params: inRoom(writing), query: { from: '2026-01-01', to: '2026-12-31' } }),
  compareSurvival: (writing) => ({ params: inRoom(writing), query: { by: 'pair' } }),
  downloadSurvival: (writing) => ({ params: inRoom(writing), query: { decimal: 'comma' } }),
  getClutchLife: (writing) => ({ params: inRoom(writing, { clutchId: writing.full.batch.clutchIds[0]! }) }),
  getPedigree: (writing) => ({ params: inRoom(writing) }),
  getPairToBe: (writing) => ({
    params: inRoom(writing),
    query: { femaleFromClutchId: writing.full.clutch.id, maleOfPairId: writing.full.pair.id },
  }),
} satisfies Requests
