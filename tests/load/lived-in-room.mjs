// Puts a room of the rules' own test builders into a database, and five years of things that have ended beside it.
import { randomUUID } from 'node:crypto'

const dayMs = 86_400_000
const date = (day) => (day === null ? null : new Date(`${day}T00:00:00.000Z`))
const tables = {
  tanks: ['tank', 'tank'],
  cultures: ['culture', 'culture'],
  pairs: ['pair', 'pair'],
  clutches: ['clutch', 'clutch'],
  batches: ['larvalBatch', 'larval_batch'],
  groups: ['juvenileGroup', 'juvenile_group'],
}
const rowOf = {
  tanks: ({ kind, volumeL, temperatureC, salinity, hasFilter }) => ({
    kind,
    volumeL,
    temperatureC,
    salinity,
    hasFilter,
  }),
  cultures: ({ name: _name, startedAt, concentrateId, ...row }) => ({
    ...row,
    startedAt: new Date(startedAt),
    concentrateId,
  }),
  pairs: ({ name: _name, formedOn, ...row }) => ({ ...row, formedOn: date(formedOn) }),
  clutches: ({ pairId, intent, spawnedAt }) => ({ pairId, intent, spawnedAt: new Date(spawnedAt) }),
  batches: ({ species, tankId, hatchedOn }) => ({ species, tankId, hatchedOn: date(hatchedOn) }),
  groups: ({ species, tankId, fromBatchId: _from, settledOn }) => ({ species, tankId, settledOn: date(settledOn) }),
}

/** Writes a snapshot as a room; what its facts name and it no longer holds has ended. */
export async function keepRoom({ prisma }, snapshot, now) {
  const { room, concentrates, facts } = snapshot
  const { id: roomId, rounds, ...settings } = room
  const createdAt = new Date(Date.parse(now) - 400 * dayMs)
  await prisma.room.create({ data: { id: roomId, ...settings, rounds, revision: 1, createdAt } })
  const subjects = [{ id: roomId, kind: 'room', name: room.name, endedAt: null }]
  for (const [list, [, kind]] of Object.entries(tables))
    for (const { id, name } of snapshot[list]) subjects.push({ id, kind, name, endedAt: null })
  const held = new Set(subjects.map(({ id }) => id))
  for (const { subjectId: id, kind } of facts)
    if (!held.has(id) && held.add(id))
      subjects.push({
        id,
        kind: kind === 'spawning' ? 'clutch' : 'larval_batch',
        name: `ended ${id.slice(-4)}`,
        endedAt: new Date(now),
      })
  await prisma.subject.createMany({ data: subjects.map((subject) => ({ roomId, createdAt, ...subject })) })
  await prisma.concentrate.createMany({
    data: concentrates.map((row) => ({
      roomId,
      createdAt,
      ...row,
      openedOn: date(row.openedOn),
      useBy: date(row.useBy),
    })),
  })
  for (const [list, [table]] of Object.entries(tables))
    await prisma[table].createMany({
      data: snapshot[list].map((thing) => ({ roomId, id: thing.id, ...rowOf[list](thing) })),
    })
  await prisma.batchClutch.createMany({
    data: snapshot.batches.flatMap(({ id: batchId, clutchIds }) =>
      clutchIds.map((clutchId) => ({ roomId, batchId, clutchId })),
    ),
  })
  await prisma.feedLink.createMany({
    data: snapshot.feedLinks.map((link) => ({
      roomId,
      ...link,
      fromOn: date(link.fromOn),
      untilOn: date(link.untilOn),
    })),
  })
  await keepFacts(
    prisma,
    roomId,
    facts.map(({ id, kind, subjectId, at, data }) => ({ id, kind, subjectId, at: new Date(at), data })),
  )
  return roomId
}

async function keepFacts(prisma, roomId, facts) {
  for (let from = 0; from < facts.length; from += 2000)
    await prisma.fact.createMany({
      data: facts.slice(from, from + 2000).map((fact) => ({ roomId, revision: 1, receivedAt: fact.at, ...fact })),
    })
}

/**
 * Years of a room that is as busy: each year twelve cultures, four pairs with a clutch every four weeks, their batches and
 * groups, all ended, with the facts that such lives leave.
 */
export async function addEndedYears({ prisma }, roomId, { years, now }) {
  const tank = await prisma.tank.findFirstOrThrow({ where: { roomId, kind: 'grow_out' } })
  const made = { subjects: [], culture: [], pair: [], clutch: [], larvalBatch: [], juvenileGroup: [], facts: [] }
  const begin = Date.parse(now) - (years * 365 + 70) * dayMs
  const at = (days) => new Date(begin + days * dayMs)
  const thing = (kind, days, endDays) => {
    const id = randomUUID()
    const name = `${kind} ${made.subjects.length}`
    made.subjects.push({
      roomId,
      id,
      kind,
      name,
      createdAt: at(days),
      endedAt: endDays === null ? null : at(endDays),
      endReason: endDays === null ? null : 'it was over',
    })
    return id
  }
  const fact = (kind, subjectId, days, data) =>
    made.facts.push({ id: randomUUID(), kind, subjectId, at: at(days), data })
  const water = { species: 'amphiprion-ocellaris', tankId: tank.id }
  for (let year = 0; year < years; year += 1) {
    for (let i = 0; i < 12; i += 1) addCulture(year * 365 + i)
    for (let i = 0; i < 4; i += 1) addPair(year * 365 + i * 5)
  }
  function addCulture(from) {
    const id = thing('culture', from, from + 350)
    made.culture.push({
      roomId,
      id,
      kind: 'rotifer',
      strain: 'L',
      volumeL: 18,
      temperatureC: 25,
      salinity: 25,
      startedAt: at(from),
    })
    fact('inoculation', id, from, { densityPerMl: 60 })
    for (let day = 1; day < 350; day += 1) {
      fact('count', id, from + day, { of: 'culture', animals: [150, 160, 155], volumeMl: 1, dilution: 1 })
      fact('harvest', id, from + day + 0.1, { volumeL: 3, parts: [{ to: 'drain', volumeL: 3 }] })
    }
  }
  function addPair(from) {
    const pairId = thing('pair', from, from + 345)
    made.pair.push({ roomId, id: pairId, ...water, nestSite: 'the pot', formedOn: at(from) })
    for (let day = 5; day < 320; day += 28) addClutch(pairId, from + day)
  }
  function addClutch(pairId, from) {
    const clutchId = thing('clutch', from, null)
    made.clutch.push({ roomId, id: clutchId, pairId, intent: 'raise_all', spawnedAt: at(from) })
    fact('spawning', clutchId, from, { eggs: 300 })
    const batchId = thing('larval_batch', from + 8, from + 34)
    made.larvalBatch.push({ roomId, id: batchId, ...water, hatchedOn: at(from + 8) })
    const hatchedOn = at(from + 8)
      .toISOString()
      .slice(0, 10)
    fact('hatch', clutchId, from + 8, { hatchedOn, batchId, larvae: 180 })
    for (let day = 9; day < 33; day += 1) fact('loss', batchId, from + day, { of: 'larvae', number: 3 })
    const groupId = thing('juvenile_group', from + 33, from + 100)
    made.juvenileGroup.push({ roomId, id: groupId, ...water, settledOn: at(from + 33) })
    fact('transfer', batchId, from + 33, { number: 100, toSubjectId: groupId })
    for (let day = 40; day < 100; day += 20) fact('outcome', groupId, from + day, { outcome: 'placed', number: 30 })
  }
  const { subjects, facts, ...rows } = made
  await prisma.subject.createMany({ data: subjects })
  for (const [table, data] of Object.entries(rows)) await prisma[table].createMany({ data })
  await keepFacts(prisma, roomId, facts)
  return { things: subjects.length, facts: facts.length }
}
