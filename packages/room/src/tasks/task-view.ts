import { rules } from '@fryward/husbandry'
import type { Id, Quantity, Task, TaskContent } from '@fryward/shared'
import { fromDateColumn, type Prisma, type Transaction } from '@fryward/store'
import { nameOf, userNames } from '../people/user-names.ts'

export const taskIncludes = {
  subject: { select: { id: true, kind: true, name: true } },
  signOffs: { orderBy: [{ receivedAt: 'asc' }, { id: 'asc' }] },
  changes: { orderBy: { revision: 'asc' } },
} as const satisfies Prisma.TaskInclude

export type TaskRow = Prisma.TaskGetPayload<{ include: typeof taskIncludes }>

const ruleTitles = new Map(rules.map((rule) => [rule.id, rule.title]))
// Three earlier values are enough to see a slip of the thumb.
const lastValuesShown = 3

/** Tasks as the wire knows them, with names and the last values of the same rule and subject. */
export async function toTasks(tx: Transaction, roomId: Id, rows: readonly TaskRow[]): Promise<Task[]> {
  const names = await userNames(
    tx,
    rows.flatMap((row) => [...row.signOffs.map((signOff) => signOff.userId), ...(row.closedBy ? [row.closedBy] : [])]),
  )
  const lastValues = await loadLastValues(tx, roomId, rows)
  return rows.map((row) => ({
    ...withoutWhy(row.content as TaskContent),
    id: row.id,
    key: row.key,
    ruleId: row.ruleId,
    ruleTitle: ruleTitles.get(row.ruleId) ?? row.ruleId,
    subject: row.subject,
    station: row.station as Task['station'],
    onDate: fromDateColumn(row.onDate),
    roundId: row.roundId,
    ordinal: row.ordinal,
    state: row.state,
    dueAt: row.dueAt.toISOString(),
    lateAt: row.lateAt.toISOString(),
    closesAt: row.closesAt.toISOString(),
    isForStandIn: row.isForStandIn,
    reason: row.reason,
    closedByName: row.closedBy ? nameOf(names, row.closedBy) : null,
    closedAt: row.closedAt?.toISOString() ?? null,
    signOffs: row.signOffs.map((signOff) => toSignOffView(signOff, names)),
    lastValues: lastValues.get(`${row.ruleId}/${row.subjectId}`) ?? {},
    changes: row.changes.map((change) => ({
      at: change.at.toISOString(),
      from: (change.before as Pick<TaskContent, 'amount'>).amount,
      to: (change.after as Pick<TaskContent, 'amount'>).amount,
      why: change.why,
    })),
    version: row.version,
  }))
}

const withoutWhy = ({ because: _because, ...content }: TaskContent): Omit<TaskContent, 'because'> => content

function toSignOffView(
  signOff: TaskRow['signOffs'][number],
  names: ReadonlyMap<string, string>,
): Task['signOffs'][number] {
  return {
    id: signOff.id,
    byName: nameOf(names, signOff.userId),
    byUserId: signOff.userId,
    doneAt: signOff.doneAt.toISOString(),
    receivedAt: signOff.receivedAt.toISOString(),
    values: signOff.values as Record<string, unknown>,
    shownAmount: signOff.shownAmount as Quantity | null,
    isRepeat: signOff.isRepeat,
    isAfterTheFact: signOff.isAfterTheFact,
    undoneAt: signOff.undoneAt?.toISOString() ?? null,
  }
}

type LastValues = Map<string, Task['lastValues']>

async function loadLastValues(tx: Transaction, roomId: Id, rows: readonly TaskRow[]): Promise<LastValues> {
  const withFields = rows.filter((row) => (row.content as TaskContent).fields.length > 0)
  const found: LastValues = new Map()
  if (withFields.length === 0) return found
  const ids = new Set(rows.map((row) => row.id))
  const earliest = new Date(Math.min(...rows.map((row) => row.dueAt.getTime())))
  const signOffs = await tx.signOff.findMany({
    where: {
      roomId,
      undoneAt: null,
      doneAt: { gte: new Date(earliest.getTime() - 21 * 86_400_000) },
      task: {
        ruleId: { in: [...new Set(withFields.map((row) => row.ruleId))] },
        subjectId: { in: [...new Set(withFields.map((row) => row.subjectId))] },
      },
    },
    include: { task: { select: { id: true, ruleId: true, subjectId: true } } },
    orderBy: [{ doneAt: 'desc' }, { id: 'desc' }],
  })
  for (const signOff of signOffs) {
    if (ids.has(signOff.task.id)) continue
    const key = `${signOff.task.ruleId}/${signOff.task.subjectId}`
    const values = found.get(key) ?? {}
    for (const [name, value] of Object.entries(signOff.values as Record<string, unknown>)) {
      const list = values[name] ?? []
      if (list.length < lastValuesShown) list.push({ value, at: signOff.doneAt.toISOString() })
      values[name] = list
    }
    found.set(key, values)
  }
  return found
}
