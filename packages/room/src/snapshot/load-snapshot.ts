import { findSpecies, type RoomSnapshot, type RuleSetting } from '@fryward/husbandry'
import type { Fact, Id } from '@fryward/shared'
import { RoundsSchema } from '@fryward/shared'
import { fromDateColumn, type Transaction } from '@fryward/store'
import { toFact } from '../facts/fact-view.ts'
import { userNames } from '../people/user-names.ts'

// Two months cover every window that a rule looks back over; life events are few and are kept whole.
const factWindowDays = 60

/** Everything the rules may know of a room, as one consistent read. */
export async function loadSnapshot(
  tx: Transaction,
  { roomId, now }: { roomId: Id; now: string },
): Promise<RoomSnapshot> {
  const since = new Date(new Date(now).getTime() - factWindowDays * 86_400_000)
  const alive = { roomId, subject: { endedAt: null } }
  const room = await tx.room.findUniqueOrThrow({ where: { id: roomId } })
  const tanks = await tx.tank.findMany({ where: alive, include: { subject: true } })
  const cultures = await tx.culture.findMany({ where: alive, include: { subject: true } })
  const concentrates = await tx.concentrate.findMany({ where: { roomId, isFinished: false } })
  const pairs = await tx.pair.findMany({ where: alive, include: { subject: true } })
  const clutches = await tx.clutch.findMany({ where: alive, include: { subject: true, pair: true } })
  const batches = await tx.larvalBatch.findMany({ where: alive, include: { subject: true, clutches: true } })
  const groups = await tx.juvenileGroup.findMany({ where: alive, include: { subject: true } })
  const feedLinks = await tx.feedLink.findMany({ where: { roomId } })
  const facts = await tx.fact.findMany({
    where: {
      roomId,
      struckAt: null,
      OR: [
        { at: { gte: since } },
        { kind: { in: ['spawning', 'hatch', 'inoculation', 'transfer', 'loss', 'outcome'] } },
        { kind: 'count', data: { path: ['of'], equals: 'juveniles' } },
      ],
    },
    include: { subject: { select: { kind: true } }, signOff: { select: { taskId: true } } },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  })
  const names = await userNames(
    tx,
    facts.flatMap((fact) => (fact.recordedBy ? [fact.recordedBy] : [])),
  )
  return {
    room: {
      id: room.id,
      name: room.name,
      timeZone: room.timeZone,
      units: room.units,
      lightsOnAt: room.lightsOnAt,
      lightsOffAt: room.lightsOffAt,
      rounds: RoundsSchema.parse(room.rounds),
      salinity: room.salinity,
      temperatureC: room.temperatureC,
    },
    tanks: tanks.map(({ subject, roomId: _roomId, ...tank }) => ({ ...tank, name: subject.name })),
    cultures: cultures.map(({ subject, roomId: _roomId, startedAt, ...culture }) => ({
      ...culture,
      name: subject.name,
      startedAt: startedAt.toISOString(),
    })),
    concentrates: concentrates.map((bottle) => ({
      id: bottle.id,
      name: bottle.name,
      cellsPerMl: bottle.cellsPerMl,
      openedOn: bottle.openedOn ? fromDateColumn(bottle.openedOn) : null,
      useBy: bottle.useBy ? fromDateColumn(bottle.useBy) : null,
    })),
    pairs: pairs.map(({ subject, roomId: _roomId, formedOn, ...pair }) => ({
      ...pair,
      name: subject.name,
      formedOn: formedOn ? fromDateColumn(formedOn) : null,
    })),
    clutches: clutches.map((clutch) => ({
      id: clutch.id,
      name: clutch.subject.name,
      pairId: clutch.pairId,
      species: clutch.pair.species,
      care: findSpecies(clutch.pair.species)?.care.value ?? 'nest',
      tankId: clutch.pair.tankId,
      intent: clutch.intent,
      spawnedAt: clutch.spawnedAt.toISOString(),
    })),
    batches: batches.map((batch) => ({
      id: batch.id,
      name: batch.subject.name,
      species: batch.species,
      tankId: batch.tankId,
      clutchIds: batch.clutches.map((clutch) => clutch.clutchId),
      hatchedOn: fromDateColumn(batch.hatchedOn),
    })),
    groups: groups.map((group) => ({
      id: group.id,
      name: group.subject.name,
      species: group.species,
      tankId: group.tankId,
      fromBatchId: group.fromBatchId,
      settledOn: fromDateColumn(group.settledOn),
    })),
    feedLinks: feedLinks.map((link) => ({
      id: link.id,
      batchId: link.batchId,
      cultureId: link.cultureId,
      fromOn: fromDateColumn(link.fromOn),
      untilOn: link.untilOn ? fromDateColumn(link.untilOn) : null,
    })),
    facts: facts.map((fact): Fact => toFact(fact, names)),
    ruleSettings: await loadRuleSettings(tx, roomId),
  }
}

async function loadRuleSettings(tx: Transaction, roomId: Id): Promise<Record<string, RuleSetting>> {
  const changes = await tx.ruleChange.findMany({
    where: { roomId },
    distinct: ['ruleId'],
    orderBy: [{ ruleId: 'asc' }, { version: 'desc' }],
  })
  return Object.fromEntries(
    changes.map((change) => [
      change.ruleId,
      { isOn: change.isOn, parameters: change.parameters as RuleSetting['parameters'] },
    ]),
  )
}
