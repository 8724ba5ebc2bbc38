import type { ClutchLife, Food, PlainDate, SurvivalStage, SurvivalStageName } from '@fryward/shared'
import { foodLabels } from '@fryward/words'

export type StageRow = {
  stage: SurvivalStageName
  seenOn: PlainDate | null
  expected: { from: PlainDate; to: PlainDate } | null
}
export type FoodRow = { key: string; label: string; food: Food; spans: { from: PlainDate; to: PlainDate }[] }

/** Stages that have a date, or may have one; the first is where the line begins. */
export function stageRows({ row, expected }: ClutchLife): StageRow[] {
  const seen = (stage: SurvivalStage) => (stage.status === 'reached' || stage.status === 'so_far' ? stage.on : null)
  return row.stages
    .filter(({ stage }) => stage !== 'laid')
    .map((stage) => ({
      stage: stage.stage,
      seenOn: seen(stage),
      expected: expected.find((each) => each.stage === stage.stage) ?? null,
    }))
}

/** A row for each culture that fed it, and for each food that came from none. */
export function foodRows({ meals }: ClutchLife): FoodRow[] {
  const rows = new Map<string, FoodRow>()
  for (const { food, culture, firstOn, lastOn } of meals) {
    const key = `${food} ${culture?.id ?? ''}`
    const row = rows.get(key) ?? { key, label: culture?.name ?? foodLabels[food], food, spans: [] }
    row.spans.push({ from: firstOn, to: lastOn })
    rows.set(key, row)
  }
  return [...rows.values()]
}
