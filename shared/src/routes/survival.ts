import { PairToBeQuerySchema, PairToBeSchema, PedigreeSchema } from '../pedigree.ts'
import { IdSchema } from '../primitives.ts'
import {
  ClutchLifeSchema,
  CompareQuerySchema,
  SurvivalComparisonSchema,
  SurvivalFileQuerySchema,
  SurvivalQuerySchema,
  SurvivalReviewSchema,
} from '../survival.ts'
import { inRoom, routesTagged } from './route.ts'

const { get, download } = routesTagged('survival and lineage')

export const survivalRoutes = {
  getSurvival: get('/rooms/:roomId/survival', {
    summary: 'How many of each clutch made it, stage by stage, newest first',
    permission: 'read',
    params: inRoom,
    query: SurvivalQuerySchema,
    response: SurvivalReviewSchema,
  }),
  compareSurvival: get('/rooms/:roomId/survival/compare', {
    summary: 'Survival curves of groups of clutches, and what may be concluded',
    permission: 'read',
    params: inRoom,
    query: CompareQuerySchema,
    response: SurvivalComparisonSchema,
  }),
  downloadSurvival: download('/rooms/:roomId/survival.csv', {
    summary: 'The survival review as a file for a spreadsheet',
    permission: 'read',
    params: inRoom,
    query: SurvivalFileQuerySchema,
    gives: 'text/csv',
  }),
  getClutchLife: get('/rooms/:roomId/clutches/:clutchId/life', {
    summary: 'One clutch from its eggs until its young were placed',
    permission: 'read',
    params: { ...inRoom, clutchId: IdSchema },
    response: ClutchLifeSchema,
  }),
  getPedigree: get('/rooms/:roomId/pedigree', {
    summary: 'Who descends from whom, and how inbred',
    permission: 'read',
    params: inRoom,
    response: PedigreeSchema,
  }),
  getPairToBe: get('/rooms/:roomId/pedigree/pair-to-be', {
    summary: 'How inbred the young of two fish would be',
    permission: 'read',
    params: inRoom,
    query: PairToBeQuerySchema,
    response: PairToBeSchema,
  }),
}
