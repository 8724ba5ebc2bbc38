import { DEFAULT_NAUPLII_PER_GRAM } from '@fryward/live-feed'
import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, fromMemory, published } from '../../rule/parameters.ts'

/** Dry as bought, dry and bought without shells, or without shells and wet off the sieve. */
export const cystKinds = ['dry_in_shells', 'dry_without_shells', 'drained_without_shells'] as const
export type CystKind = (typeof cystKinds)[number]

export const artemiaStartDefinition = {
  id: 'artemia-start',
  title: 'Start Artemia cysts',
  sentence:
    'Start {cysts} so that the nauplii of the next feeds are ready on time, in a vessel that is empty: {naupliiPerGram} from a gram of dry cysts where no harvest and no test says otherwise, {spare} more than the feeds ask for, enriched for {enrichHours}, {handlingHours} set aside for the harvest; drained cysts weigh {wetPerDry} as much.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    cysts: {
      type: 'choice',
      label: 'cysts that the room uses',
      choices: cystKinds,
      default: 'dry_in_shells',
      source: commonPractice('as they come out of the tin'),
    },
    wetPerDry: {
      type: 'number',
      label: 'heavier when drained than dry',
      unit: 'times',
      default: 2.4,
      minimum: 1,
      maximum: 5,
      source: fromMemory(
        'cysts take up to 140 % of their dry weight in water: FAO Fish. Tech. Pap. 361, sect. 4.2; weigh a batch of your own',
      ),
    },
    naupliiPerGram: {
      type: 'number',
      label: 'from a gram of dry cysts',
      unit: 'animals',
      default: DEFAULT_NAUPLII_PER_GRAM,
      minimum: 20_000,
      maximum: 400_000,
      source: published(
        '200,000-300,000 from good cysts: Treece 2000, SRAC Publication 702; better from your own lot test',
      ),
    },
    spare: {
      type: 'number',
      label: 'more than the feeds ask for',
      unit: 'share',
      default: 0.2,
      minimum: 0,
      maximum: 1,
      source: commonPractice('the last look of a day may find larvae hungrier, and what is left over is thrown away'),
    },
    enrichHours: {
      type: 'number',
      label: 'of enriching',
      unit: 'hours',
      default: 0,
      minimum: 0,
      maximum: 24,
      source: published(
        'newly hatched nauplii for clownfish; 24 h enriched ones are 870 µm: Lavens, Thongrod & Sorgeloos 2000, ch. 6',
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
