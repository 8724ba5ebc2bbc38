import type { Id, SurvivalFileQuery, SurvivalRow, SurvivalStage, SurvivalStageName } from '@fryward/shared'
import { survivalStages } from '@fryward/shared'
import { stringify } from 'csv-stringify/sync'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { reviewsIn, toRow } from './survival-rows.ts'

type Cell = string | number | null
type Column = { header: string; cell: (row: SurvivalRow) => Cell }

const namesOf = (things: SurvivalRow['clutches']): string => things.map(({ name }) => name).join(' + ')
const stageOf = (row: SurvivalRow, name: SurvivalStageName): SurvivalStage | undefined =>
  row.stages.find(({ stage }) => stage === name)

/** Nine columns a stage: what is known of it, and the share of the known one before. */
const stageColumns = (stage: SurvivalStageName): Column[] => {
  const of =
    <T extends Cell>(read: (known: SurvivalStage) => T) =>
    (row: SurvivalRow): Cell => {
      const found = stageOf(row, stage)
      return found ? read(found) : null
    }
  return [
    { header: `${stage}_status`, cell: of(({ status }) => status) },
    { header: `${stage}_on`, cell: of(({ on }) => on) },
    { header: `${stage}_at_least`, cell: of(({ atLeast }) => atLeast) },
    { header: `${stage}_at_most`, cell: of(({ atMost }) => atMost) },
    { header: `${stage}_share_of`, cell: of(({ fromStage }) => fromStage) },
    { header: `${stage}_share`, cell: of(({ share }) => share?.share ?? null) },
    { header: `${stage}_share_lower_95`, cell: of(({ share }) => share?.lower ?? null) },
    { header: `${stage}_share_upper_95`, cell: of(({ share }) => share?.upper ?? null) },
    { header: `${stage}_share_of_animals`, cell: of(({ share }) => share?.of ?? null) },
  ]
}

const columns: Column[] = [
  { header: 'clutch', cell: ({ clutches }) => namesOf(clutches) },
  { header: 'pair', cell: ({ pairs }) => namesOf(pairs) },
  { header: 'species', cell: ({ species }) => species },
  { header: 'tank', cell: ({ tanks }) => namesOf(tanks) },
  { header: 'culture', cell: ({ cultures }) => namesOf(cultures) },
  { header: 'fed_first', cell: ({ protocol }) => protocol.join(' + ') },
  { header: 'laid_on', cell: ({ spawnedOn }) => spawnedOn },
  { header: 'first_morning_on', cell: ({ bornOn }) => bornOn },
  ...survivalStages.flatMap(stageColumns),
  { header: 'found_dead', cell: ({ losses }) => losses.reduce((sum, { number }) => sum + number, 0) },
  { header: 'missing_at_counts', cell: ({ missing }) => missing },
  { header: 'causes', cell: ({ losses }) => losses.map(sayLoss).join('; ') },
  { header: 'number_now', cell: ({ numberNow }) => numberNow },
  { header: 'mixed_on', cell: ({ mixedOn }) => mixedOn },
]

const sayLoss = ({ cause, number }: SurvivalRow['losses'][number]): string =>
  `${cause ?? 'cause not written'}: ${number}`

/** Figures after the point that a share is told with; more say nothing of so few animals. */
const SHARE_FIGURES = 4

/**
 * Rows of a review as CSV (RFC 4180) that a spreadsheet opens as it is: a mark for UTF-8 in front, text that would be
 * taken for a formula behind an apostrophe, numbers with the decimal mark asked for.
 */
export function survivalCsv(rows: readonly SurvivalRow[], decimal: SurvivalFileQuery['decimal']): string {
  const mark = decimal === 'comma' ? ',' : '.'
  const toText = (cell: Cell): string => {
    if (cell === null) return ''
    if (typeof cell === 'string') return cell
    return String(Number(cell.toFixed(SHARE_FIGURES))).replace('.', mark)
  }
  return stringify(
    [columns.map(({ header }) => header), ...rows.map((row) => columns.map(({ cell }) => toText(cell(row))))],
    { bom: true, delimiter: decimal === 'comma' ? ';' : ',', record_delimiter: '\r\n', escape_formulas: true },
  )
}

/** The review as a file, with the name that it is saved under. */
export async function getSurvivalFile({
  ctx,
  roomId,
  query: { decimal, ...range },
}: {
  ctx: Context
  roomId: Id
  query: SurvivalFileQuery
}): Promise<{ name: string; text: string }> {
  return readInRoom({ ctx, roomId }, async (read) => {
    const { past, reviews } = await reviewsIn(read, range)
    const text = survivalCsv(
      reviews.map((review) => toRow(past, review)),
      decimal,
    )
    return { name: `survival-${past.room.today}.csv`, text }
  })
}
