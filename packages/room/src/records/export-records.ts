import { addDays, timeOf } from '@fryward/husbandry'
import type { Id, RecordFile, RecordFileQuery, UnitSystem } from '@fryward/shared'
import { listClutchesInRoom } from '../clutches/clutch-view.ts'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { nameOf } from '../people/user-names.ts'
import { type FactFile, factFiles } from './fact-files.ts'
import { factPages } from './fact-pages.ts'
import { csvOf, type FileRow, utf8Mark, whenCells } from './file-cells.ts'
import { taskHeaders, taskPages } from './task-pages.ts'

export type RecordsFile = { name: string; text: AsyncIterable<string> }

type Asked = { ctx: Context; roomId: Id; what: RecordFile; query: RecordFileQuery }

/** One kind of a room's records between two dates as a file, a page at a time; for an owner. */
export async function exportRecords({ ctx, roomId, what, query }: Asked): Promise<RecordsFile> {
  const room = await readInRoom({ ctx, roomId, permission: 'own' }, async ({ tx }) => {
    const found = await tx.room.findUniqueOrThrow({ where: { id: roomId } })
    const subjects = await tx.subject.findMany({ where: { roomId }, select: { id: true, name: true } })
    const bottles = await tx.concentrate.findMany({ where: { roomId }, select: { id: true, name: true } })
    const users = await tx.user.findMany({ select: { id: true, name: true } })
    return {
      ...{ timeZone: found.timeZone, units: found.units, revision: found.revision },
      things: new Map([...subjects, ...bottles].map(({ id, name }) => [id, name])),
      people: new Map(users.map(({ id, name }) => [id, name])),
    }
  })
  return {
    name: `${what}-${query.from}-${query.to}.csv`,
    text: toCsv(rowPages({ ctx, roomId, what, query, room }), query.decimal),
  }
}

type Known = {
  timeZone: string
  units: UnitSystem
  revision: number
  things: Map<Id, string>
  people: Map<string, string>
}
type Pages = AsyncGenerator<readonly FileRow[]>

function rowPages({ room, ...asked }: Asked & { room: Known }): Pages {
  if (asked.what === 'clutches') return clutchPages(asked, room)
  if (asked.what === 'tasks') return taskRows(asked, room)
  return factRows(asked, room, factFiles[asked.what])
}

async function* toCsv(pages: Pages, decimal: RecordFileQuery['decimal']): AsyncGenerator<string> {
  yield utf8Mark
  for await (const rows of pages) yield csvOf(rows, decimal)
}

async function* factRows({ ctx, roomId, query }: Asked, room: Known, file: FactFile): Pages {
  yield [['date', 'time', 'thing', ...file.headers]]
  const names = {
    person: (userId: string | null) => nameOf(room.people, userId),
    thing: (id: string | undefined) => (id === undefined ? '' : (room.things.get(id) ?? '')),
  }
  const asked = { roomId, kind: file.kind, ...spanOf(room, query), revision: room.revision }
  for await (const facts of factPages(ctx.database, asked))
    yield facts.map((fact) => [...whenCells(room.timeZone, fact.at), fact.subject.name, ...file.cells(fact, names)])
}

async function* taskRows({ ctx, roomId, query }: Asked, room: Known): Pages {
  yield [taskHeaders]
  yield* taskPages(ctx.database, { roomId, query, timeZone: room.timeZone, units: room.units, people: room.people })
}

/** As many as a room has laid: a few a week, so they come at once. */
async function* clutchPages({ ctx, roomId, query }: Asked, room: Known): Pages {
  yield [['laid_on', 'laid_at', 'clutch', 'pair', 'tank', 'species', 'meant', 'state', 'eggs']]
  const clutches = await readInRoom({ ctx, roomId, permission: 'own' }, listClutchesInRoom)
  const { from, before } = spanOf(room, query)
  const name = (id: Id) => room.things.get(id) ?? ''
  yield clutches
    .toReversed()
    .filter(({ spawnedAt }) => spawnedAt >= from && spawnedAt < before)
    .map(({ spawnedAt, name: clutch, pairId, tankId, species, intent, state, eggs }) => [
      ...whenCells(room.timeZone, new Date(spawnedAt)),
      ...[clutch, name(pairId), name(tankId), species, intent, state, eggs],
    ])
}

/** From the first midnight of the first day to that after the last, by the room's own clock. */
const spanOf = (room: Known, { from, to }: RecordFileQuery) => ({
  from: timeOf(room, { date: from, time: '00:00' }),
  before: timeOf(room, { date: addDays(to, 1), time: '00:00' }),
})
