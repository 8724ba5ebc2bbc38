import { randomUUID } from 'node:crypto'
import { rules } from '@fryward/husbandry'
import { stations, type Task } from '@fryward/shared'
import { answersTo } from './answers.ts'
import type { Eggs } from './breeders.ts'
import { clownfish } from './fish.ts'
import { fillTank, type LiveRoom, lightOver } from './live-room.ts'
import type { Service } from './service.ts'
import type { Water } from './water.ts'

const mostWalks = 40

/** Walks one round: each open task of it and of those before, as the list stands once the last one was signed off. */
export async function walkRound(
  world: Service,
  room: LiveRoom,
  { date, roundId }: { date: string; roundId: string },
): Promise<void> {
  const order = room.rounds.map(({ id }) => id)
  const tried = new Map<string, Task>()
  let isCounting = false
  world.clock.advanceMinutes(5)
  await world.planFood(room)
  for (let walk = 0; walk < mostWalks; walk += 1) {
    const { tasks } = await world.ok(room.owner, 'getDay', { params: { roomId: room.roomId, date } })
    look(room, tasks)
    // The plan goes by what was counted; while cultures are counted one after the other it is not waited for.
    const wasCounting = isCounting
    isCounting = tasks.some(isCountToDo)
    if (wasCounting && !isCounting) {
      await world.planFood(room)
      continue
    }
    const open = tasks
      .filter(({ id, state }) => state === 'open' && !tried.has(id))
      .filter((task) => order.indexOf(task.roundId) <= order.indexOf(roundId))
      .sort(inWalkingOrder(Date.parse(world.clock.now())))
    if (open.length === 0) break
    for (const task of open) {
      tried.set(task.id, task)
      await doTask(world, room, task)
      if (mayChangeTheList(task)) break
    }
    await follow(world, room, tried)
  }
}

const isCountToDo = ({ ruleId, state }: Task): boolean => ruleId === 'rotifer-count' && state === 'open'

/** Holds a list against the one before it, and its amounts against the vessels. */
function look({ shown, volumes, tally }: LiveRoom, tasks: readonly Task[]): void {
  const standing = new Map(tasks.filter(({ state }) => state !== 'withdrawn').map((task) => [task.id, task]))
  for (const [id, { ruleId }] of shown) {
    if (standing.has(id)) continue
    shown.delete(id)
    tally.withdrawn[ruleId] = (tally.withdrawn[ruleId] ?? 0) + 1
  }
  for (const [id, { ruleId, subject, amount, state }] of standing) {
    if (state !== 'open' || shown.has(id)) continue
    shown.set(id, standing.get(id)!)
    const mostL = volumes.get(subject.id) ?? Number.POSITIVE_INFINITY
    const isTooMuch = amount?.unit === 'L' && amount.value > mostL
    if (amount && (isTooMuch || amount.value <= 0))
      tally.impossible.push(`${ruleId}, ${subject.name}: ${amount.value} ${amount.unit}`)
  }
}

const places = new Map(rules.map(({ id }, index) => [id, index]))
const placeOf = ({ ruleId }: Task): number => places.get(ruleId) ?? rules.length

/**
 * Station by station as the pages show it, and at each as the list stands: water is changed before larvae are fed. What is due
 * later in the night comes last; what the pages leave to chance is the same for every service.
 */
const inWalkingOrder = (nowMs: number) => (a: Task, b: Task) =>
  Number(Date.parse(a.dueAt) > nowMs) - Number(Date.parse(b.dueAt) > nowMs) ||
  stations.indexOf(a.station) - stations.indexOf(b.station) ||
  a.ordinal - b.ordinal ||
  Date.parse(a.dueAt) - Date.parse(b.dueAt) ||
  placeOf(a) - placeOf(b) ||
  a.subject.name.localeCompare(b.subject.name, 'en')

/** What was counted or found, moved or begun anew changes what the rest of the list says. */
const mayChangeTheList = ({ verb, fields }: Task): boolean =>
  ['restart', 'harvest', 'start', 'move'].includes(verb) ||
  fields.some(({ type, isRequired }) => type === 'count' || isRequired)

async function doTask(world: Service, room: LiveRoom, task: Task): Promise<void> {
  const due = Date.parse(task.dueAt)
  if (due > Date.parse(world.clock.now())) world.clock.set(task.dueAt)
  else world.clock.advanceMinutes(1)
  const nowMs = Date.parse(world.clock.now())
  room.nature.until(nowMs)
  const values = answersTo(task, room.nature, nowMs)
  if ('intent' in values) values.intent = decide(room, task, nowMs)
  const answer = await world.call(room.owner, 'signOffTask', {
    params: { roomId: room.roomId, taskId: task.id },
    body: { values, confirmed: task.fields.map(({ name }) => name), shownAmount: task.amount },
    key: randomUUID(),
  })
  if (answer.problem) {
    const { code, detail, fields } = answer.problem
    room.tally.refusals.push(`${task.ruleId}: ${code}, ${detail} ${JSON.stringify(fields ?? [])}`)
    return
  }
  room.tell(lineOf(task, values, world.clock.now()))
  room.tally.tasks += 1
  room.shown.delete(task.id)
  if (task.ruleId === 'larval-artemia-feed') room.tally.artemiaFeeds += 1
  if (task.steps.some(({ text }) => text.includes('No filter runs here')))
    await changeFilter(world, room, { water: room.nature.waterOf(task.subject.id), isHung: true })
  // Before larvae come the tank is made ready for them.
  if (task.steps.some(({ text }) => text.includes('kept ripe in a sound tank'))) {
    const to = 'to' in task.title ? task.title.to : []
    const tanks = await world.ok(room.owner, 'listTanks', { params: { roomId: room.roomId } })
    const tank = tanks.find(({ name }) => to.some((each) => 'name' in each && each.name === name))
    await changeFilter(world, room, { water: room.nature.waters.get(tank?.id ?? ''), isHung: false })
  }
}

/** A task says where ammonia is read and no filter runs, and where one has to wait until larvae have grown. */
async function changeFilter(
  world: Service,
  room: LiveRoom,
  { water, isHung }: { water: Water | undefined; isHung: boolean },
): Promise<void> {
  const params = { roomId: room.roomId }
  const [tankId] = [...room.nature.waters].find(([, each]) => each === water) ?? []
  const tank = (await world.ok(room.owner, 'listTanks', { params })).find(({ id }) => id === tankId)
  if (!tank || !water || tankId === undefined || tank.hasFilter === isHung) return
  const body = { hasFilter: isHung, version: tank.version }
  await world.ok(room.owner, 'changeTank', { params: { ...params, tankId }, body })
  if (isHung) water.hangFilter(tank.kind === 'larval' ? 'sponge' : 'filter')
  else water.takeFilterOut()
  room.tally.filtersHung += isHung ? 1 : 0
}

function lineOf({ ruleId, roundId, subject, amount }: Task, values: object, at: string): string {
  const told = amount ? ` ${amount.value} ${amount.unit}` : ''
  return `      ${at.slice(11, 16)} ${roundId} ${ruleId}, ${subject.name}${told} ${JSON.stringify(values)}`
}

/** Raised where a tank is free for them and not promised to others, and where those that settle will find room. */
function decide(room: LiveRoom, task: Task, atMs: number): string {
  const { batches, breeders } = room.nature
  const eggs = breeders.byClutch(task.subject.id) ?? breeders.unseen(task.subject.id, atMs)
  const promised = breeders.clutches.filter(
    ({ isRaised, nights }) => isRaised && nights.every(({ isTaken }) => !isTaken),
  )
  const hasNoGrowOut = task.steps.some(({ text }) => text.startsWith('So none is left for this clutch'))
  if (!hasNoGrowOut && batches.size + promised.length < room.larvalTanks) {
    if (eggs) eggs.isRaised = true
    return 'raise_all'
  }
  if (eggs) eggs.isLeft = true
  return 'leave_with_parents'
}

/** Lets nature have what was written down since the last look, and meets whatever came into being by it. */
async function follow(world: Service, room: LiveRoom, tasks: Map<string, Task>): Promise<void> {
  const params = { roomId: room.roomId }
  const { facts } = await world.ok(room.owner, 'listFacts', { params, query: { limit: 100 } })
  const fresh = facts.filter(({ revision }) => revision > room.seenRevision)
  fresh.sort((a, b) => a.revision - b.revision || (a.id < b.id ? -1 : 1))
  for (const fact of fresh) {
    room.seenRevision = Math.max(room.seenRevision, fact.revision)
    room.nature.apply(fact, tasks.get(fact.taskId ?? ''))
    if (fact.kind === 'harvest') tallyHarvest(room, fact.subjectId)
  }
  if (fresh.some(({ kind }) => kind === 'spawning')) await meetClutches(world, room)
  if (fresh.some(({ kind }) => kind === 'hatch')) await meetBatches(world, room)
  if (fresh.some(({ kind }) => kind === 'transfer')) await meetGroups(world, room)
}

// An inoculum is 50-150 per mL: what is thinner than that has to be started again. ICAR e-course on rotifers.
const floorPerMl = 50

function tallyHarvest({ nature, tally }: LiveRoom, cultureId: string): void {
  const culture = nature.rotifers.get(cultureId)
  if (!culture) return
  tally.harvestDays += 1
  if (culture.perMl < floorPerMl) tally.underFloor += 1
}

async function meetClutches(world: Service, room: LiveRoom): Promise<void> {
  const nowMs = Date.parse(world.clock.now())
  for (const clutch of await world.ok(room.owner, 'listClutches', { params: { roomId: room.roomId } })) {
    const eggs = room.nature.breeders.unseen(clutch.pairId, nowMs)
    if (eggs && !room.nature.breeders.byClutch(clutch.id)) eggs.clutchId = clutch.id
  }
}

async function meetBatches(world: Service, room: LiveRoom): Promise<void> {
  const params = { roomId: room.roomId }
  const nowMs = Date.parse(world.clock.now())
  const tanks = await world.ok(room.owner, 'listTanks', { params })
  const links = await world.ok(room.owner, 'listFeedLinks', { params })
  for (const batch of await world.ok(room.owner, 'listLarvalBatches', { params })) {
    if (batch.endedAt !== null) continue
    const laid = batch.clutchIds.flatMap((id) => room.nature.breeders.byClutch(id) ?? [])
    const isOut = (night: Eggs['nights'][number]) => night.atMs <= nowMs && !night.isTaken
    const hatching = laid.filter((eggs) => eggs.nights.some(isOut))
    const nights = hatching.flatMap((eggs) => eggs.nights.filter(isOut))
    const larvae = nights.reduce((sum, night) => sum + night.larvae, 0)
    for (const night of nights) night.isTaken = true
    const known = room.nature.batches.get(batch.id)
    if (known) {
      known.join(larvae)
      for (const eggs of hatching) room.nature.leaveUnhatched(eggs, known.water)
      continue
    }
    const tank = tanks.find(({ id }) => id === batch.tankId)
    const water = room.nature.waters.get(batch.tankId) ?? (tank && fillTank(room, tank))
    if (!tank || !water) throw new Error(`${batch.name} swims in no tank`)
    // A tank is filled anew for them.
    if (tank.kind === 'larval' && !room.nature.hasLarvae(water)) water.change(water.volumeL)
    const lit = lightOver(tank)
    const hatchedMs = nights[0]?.atMs ?? Date.parse(`${batch.hatchedOn}T20:00:00.000Z`)
    room.nature.addBatch(batch.id, { fish: laid[0]?.fish ?? clownfish, water, hatchedMs, number: larvae, lit })
    for (const eggs of hatching) room.nature.leaveUnhatched(eggs, water)
    room.names.set(batch.id, batch.name)
    room.volumes.set(batch.id, water.volumeL)
    const eatsRotifers = (laid[0]?.fish ?? clownfish).artemiaFromDay > 0
    if (eatsRotifers && !links.some(({ batchId }) => batchId === batch.id)) await linkByHand(world, room, batch)
  }
}

/** Nobody has said which culture feeds them: whoever stands there takes the densest. */
async function linkByHand(world: Service, room: LiveRoom, batch: { id: string; hatchedOn: string }): Promise<void> {
  const params = { roomId: room.roomId }
  const cultures = await world.ok(room.owner, 'listCultures', { params })
  const [best] = cultures
    .filter(({ kind, isBackup, endedAt }) => kind === 'rotifer' && !isBackup && endedAt === null)
    .sort((a, b) => (b.densityNow?.perMl ?? 0) - (a.densityNow?.perMl ?? 0))
  if (!best) return
  const body = { batchId: batch.id, cultureId: best.id, fromOn: batch.hatchedOn }
  await world.ok(room.owner, 'createFeedLink', { params, body })
  room.tally.linksByHand += 1
}

/** Those that were moved have left their tank; its keeper closes the batch. */
async function meetGroups(world: Service, room: LiveRoom): Promise<void> {
  const params = { roomId: room.roomId }
  const batches = await world.ok(room.owner, 'listLarvalBatches', { params })
  for (const group of await world.ok(room.owner, 'listJuvenileGroups', { params })) {
    const larvae = room.nature.batches.get(group.fromBatchId ?? '')
    if (!larvae || room.nature.groups.has(group.id)) continue
    const water = room.nature.waters.get(group.tankId)
    if (!water) throw new Error(`${group.name} swims in no tank`)
    room.names.set(group.id, group.name)
    room.nature.addGroup(group.id, { water, number: larvae.number })
    room.tally.raised += Math.round(larvae.number)
    room.nature.batches.delete(group.fromBatchId ?? '')
    const batch = batches.find(({ id }) => id === group.fromBatchId)
    if (!batch || batch.endedAt !== null) continue
    const body = { reason: 'All moved to grow-out.', version: batch.version }
    const closed = await world.call(room.owner, 'endLarvalBatch', { params: { ...params, batchId: batch.id }, body })
    if (closed.problem) room.tally.refusals.push(`ending a moved batch: ${closed.problem.detail}`)
  }
}
