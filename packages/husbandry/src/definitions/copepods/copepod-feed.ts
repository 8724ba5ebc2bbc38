import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, published } from '../../rule/parameters.ts'

export const copepodFeedDefinition = {
  id: 'copepod-feed',
  title: 'Feed the copepods',
  sentence:
    'Keep {cellsPerMl} algal cells in every copepod culture: all of it at first and when the water is clear, else the {eatenShare} that a day takes; in {feedsPerDay} feeds.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    cellsPerMl: {
      type: 'number',
      label: 'to keep',
      unit: 'cells_per_mL',
      default: 50_000,
      minimum: 1000,
      maximum: 2_000_000,
      source: published(
        'best survival of Bestiolina similis at 50,000 Rhodomonas per mL: VanderLugt 2005, J. Young Investig. (University of Hawaii); of the smaller Isochrysis B. amoyensis did best at 400,000: Wang et al. 2021, Front. Mar. Sci. 8:788744',
      ),
    },
    eatenShare: {
      type: 'number',
      label: 'gone in a day',
      unit: 'share',
      default: 0.5,
      minimum: 0.05,
      maximum: 1,
      source: commonPractice('eaten and settled: about half a day, as in green water'),
    },
    feedsPerDay: {
      type: 'number',
      label: 'a day',
      unit: 'feeds',
      default: 1,
      minimum: 1,
      maximum: 8,
      source: published(
        'one daily supply of algae: Cruz-Rosado et al. 2020, Ecosist. Recur. Agropec. 7(2) e2505, Apocyclops panamensis',
      ),
    },
  },
} satisfies RuleDefinition
