import { rules } from '@fryward/husbandry'
import type { Id, RecordFileQuery, TaskContent, Unit, UnitSystem } from '@fryward/shared'
import { type Database, fromDateColumn, type Prisma, toDateColumn } from '@fryward/store'
import { toFieldUnit } from '@fryward/words'
import { nameOf } from '../people/user-names.ts'
import { type FileRow, whenCells } from './file-cells.ts'

export const taskHeaders = [
  ...[
    'date',
    'round',
    'thing',
    'task',
    'amount',
    'unit',
    'of',
    'state',
    'done_on',
    'done_at',
    'by',
    'values',
    'reason',
  ],
]

const rowsAtOnce = 1000
const including = {
  subject: { select: { name: true } },
  signOffs: { where: { undoneAt: null }, orderBy: [{ receivedAt: 'asc' }, { id: 'asc' }] },
} as const satisfies Prisma.TaskInclude
type Row = Prisma.TaskGetPayload<{ include: typeof including }>

const titles = new Map(rules.map(({ id, title }) => [id, title]))

type Asked = {
  roomId: Id
  query: RecordFileQuery
  timeZone: string
  units: UnitSystem
  people: ReadonlyMap<string, string>
}

/** Tasks of the days asked for with what became of them, in their order, a page at a time. */
export async function* taskPages(database: Database, asked: Asked): AsyncGenerator<FileRow[]> {
  let after: Row | undefined
  while (true) {
    const page: Row[] = await database.prisma.task.findMany({
      where: {
        roomId: asked.roomId,
        onDate: { gte: toDateColumn(asked.query.from), lte: toDateColumn(asked.query.to) },
        ...(after && { OR: [{ onDate: { gt: after.onDate } }, { onDate: after.onDate, id: { gt: after.id } }] }),
      },
      include: including,
      orderBy: [{ onDate: 'asc' }, { id: 'asc' }],
      take: rowsAtOnce,
    })
    if (page.length > 0) yield page.map((row) => cellsOf(row, asked))
    if (page.length < rowsAtOnce) return
    after = page.at(-1)
  }
}

function cellsOf(row: Row, { timeZone, units, people }: Asked): FileRow {
  // Kept by the engine in the contract's own shape.
  const { amount, amountOf, fields } = row.content as Pick<TaskContent, 'amount' | 'amountOf' | 'fields'>
  const read = amount && inRoomUnit(amount.value, amount.unit, units)
  const signOff = row.signOffs.at(-1)
  const [doneOn, doneAt] = signOff ? whenCells(timeZone, signOff.doneAt) : ['', '']
  const by = signOff?.userId ?? row.closedBy
  return [
    ...[fromDateColumn(row.onDate), row.roundId, row.subject.name, titles.get(row.ruleId) ?? row.ruleId],
    ...[read?.value, read?.unit, amountOf, row.state, doneOn, doneAt, by ? nameOf(people, by) : ''],
    ...[signOff ? valuesOf(signOff.values, { fields, units }) : '', row.reason],
  ]
}

/** A number as the room reads and types it, in one unit down the column: gallons and degrees Fahrenheit, where it does. */
function inRoomUnit(value: number, unit: Unit, units: UnitSystem): { value: number; unit: string } {
  const { label, toShown } = toFieldUnit(unit, units)
  return { value: toShown(value), unit: label }
}

/** What was typed at the sign-off: a name, a value and its unit each. */
const valuesOf = (values: Prisma.JsonValue, { fields, units }: Pick<TaskContent, 'fields'> & Pick<Asked, 'units'>) =>
  Object.entries(Object(values) as Record<string, unknown>)
    .map(([name, value]) => {
      const field = fields.find((each) => each.name === name)
      const unit = field && 'unit' in field ? field.unit : null
      if (typeof value !== 'number' || !unit)
        return `${name}: ${typeof value === 'object' ? JSON.stringify(value) : String(value)}`
      const read = inRoomUnit(value, unit, units)
      return `${name}: ${read.value} ${read.unit}`
    })
    .join('; ')
