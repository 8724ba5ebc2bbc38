import { DEFAULT_NAUPLII_PER_GRAM } from '@fryward/live-feed'
import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, published } from '../../rule/parameters.ts'

export const artemiaStartDefinition = {
  id: 'artemia-start',
  title: 'Start Artemia cysts',
  sentence:
    'Start shell-free cysts so that the nauplii of the next feeds are ready on time: {naupliiPerGram} a gram, enriched for {enrichHours}, {handlingHours} set aside for the harvest.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    naupliiPerGram: {
      type: 'number',
      label: 'from a gram of cysts',
      unit: 'animals',
      default: DEFAULT_NAUPLII_PER_GRAM,
      minimum: 20_000,
      maximum: 400_000,
      source: published(
        '200,000-300,000 from good cysts: Treece 2000, SRAC Publication 702; better from your own lot test',
      ),
    },
    enrichHours: {
      type: 'number',
      label: 'of enriching',
      unit: 'hours',
      default: 0,
      minimum: 0,
      maximum: 24,
      source: published(
        'first nauplii for clownfish; 24 h enriched ones are 870 um: Lavens, Thongrod & Sorgeloos 2000, ch. 6',
      ),
    },
    handlingHours: {
      type: 'number',
      label: 'set aside to settle, sieve and rinse',
      unit: 'hours',
      default: 1,
      minimum: 0,
      maximum: 12,
      source: commonPractice(),
    },
  },
} satisfies RuleDefinition
