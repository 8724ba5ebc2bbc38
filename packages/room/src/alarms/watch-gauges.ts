import { judge, readWatched } from '@fryward/readings'
import type { AlarmKind, Id } from '@fryward/shared'
import type { Prisma } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import type { Context } from '../context.ts'
import { type Work, writeInRoom } from '../frame/write-in-room.ts'
import { unbelieved } from '../readings/unbelieved.ts'
import { awakeSince } from '../server/list-absences.ts'

const withStanding = { alarms: { where: { clearedAt: null } } } as const
type GaugeRow = Prisma.GaugeGetPayload<{ include: typeof withStanding }>
type Step =
  | { do: 'raise'; gauge: GaugeRow; kind: AlarmKind; value: number | null }
  | { do: 'clear'; gauge: GaugeRow; alarmId: Id }

/**
 * Looks at every gauge that somebody set limits for, or that may fall silent; raises an alarm where one is in trouble and
 * no such one stands, and clears those that are over. Any number of processes may look: the database takes one standing alarm a
 * gauge.
 * @returns how many alarms were raised or cleared.
 */
export async function watchGauges(ctx: Context): Promise<number> {
  const gauges = await ctx.database.prisma.gauge.findMany({
    where: { endedAt: null, device: { revokedAt: null } },
    include: withStanding,
  })
  if (gauges.length === 0) return 0
  const now = Date.parse(ctx.now)
  const awake = await awakeSince(ctx)
  const watched = await readWatched(
    ctx.database.pool,
    gauges.map(({ createdAt, implausibleAt, ...gauge }) => ({
      ...gauge,
      implausibleAt: implausibleAt?.getTime() ?? null,
      // Of a time in which this server was off nobody knows who was silent.
      heardFrom: Math.max(createdAt.getTime(), awake ?? 0),
    })),
    now,
  )
  const steps = gauges.flatMap((gauge): Step[] => {
    const known = watched.get(gauge.channel)
    const verdict = known ? judge(gauge, known, now) : 'undecided'
    const [standing] = gauge.alarms
    if (verdict === 'undecided') return []
    const over: Step[] = standing ? [{ do: 'clear', gauge, alarmId: standing.id }] : []
    if (verdict === 'keeps') return over
    // Another trouble of the same gauge is another alarm: who has a silence in hand does not know of the heat.
    return standing?.kind === verdict.kind ? [] : [...over, { do: 'raise', gauge, ...verdict }]
  })
  for (const roomId of new Set(steps.map(({ gauge }) => gauge.roomId)))
    await takeSteps(
      ctx,
      roomId,
      steps.filter(({ gauge }) => gauge.roomId === roomId),
    )
  return steps.length
}

async function takeSteps(ctx: Context, roomId: Id, steps: Step[]): Promise<void> {
  await writeInRoom({ ctx, roomId, permission: 'record', changesDay: false }, async (work) => {
    for (const step of steps) {
      const changed = step.do === 'raise' ? await raise(work, step) : await clear(work, step)
      // Who looked at the same time has done it already, and said so.
      const action = changed === 0 ? 'alarm.look' : `alarm.${step.do}`
      work.audit({ action, subjectId: step.gauge.subjectId, detail: { gaugeId: step.gauge.id } })
    }
  })
}

async function raise(
  { tx, ctx, roomId }: Work,
  { gauge, kind, value }: Extract<Step, { do: 'raise' }>,
): Promise<number> {
  const alarm = { roomId, id: uuidv7(), gaugeId: gauge.id, kind, value, raisedAt: ctx.now }
  return (await tx.alarm.createMany({ data: [alarm], skipDuplicates: true })).count
}

async function clear({ tx, ctx, roomId }: Work, { gauge, alarmId }: Extract<Step, { do: 'clear' }>): Promise<number> {
  const standing = { roomId, id: alarmId, clearedAt: null }
  const { count } = await tx.alarm.updateMany({ where: standing, data: { clearedAt: ctx.now } })
  // What it read until now, nobody will ever believe.
  if (count > 0 && gauge.alarms.some(({ kind }) => unbelieved.some((one) => one === kind)))
    await tx.gauge.update({ where: { roomId_id: { roomId, id: gauge.id } }, data: { notedUntil: ctx.now } })
  return count
}
