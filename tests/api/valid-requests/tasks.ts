import { inRoom, type Requests, recorder, type Writing } from './writing.ts'

async function taskOf({ world, full }: Writing, ruleId: string): Promise<{ id: string; state: string }> {
  return world.database.prisma.task.findFirstOrThrow({
    // A day to come is for reading, and what the list has taken back is nobody's any more.
    where: {
      ...{ roomId: full.roomId, ruleId, onDate: { lte: new Date(world.clock.now().slice(0, 10)) } },
      state: { in: ['open', 'done', 'skipped'] },
    },
    orderBy: [{ dueAt: 'desc' }, { id: 'asc' }],
  })
}

/** A task of the rule that nobody has closed; what somebody closed is taken back first. */
async function openTask(writing: Writing, ruleId: string): Promise<{ taskId: string }> {
  const { world, full } = writing
  const { id: taskId, state } = await taskOf(writing, ruleId)
  if (state !== 'open') await world.ok(full.owner, 'undoTask', { params: { roomId: full.roomId, taskId }, body: {} })
  return { taskId }
}

/** A task that who asks has just signed off. */
async function doneTask(writing: Writing): Promise<{ taskId: string }> {
  const { taskId } = await openTask(writing, 'room-equipment')
  const params = { roomId: writing.full.roomId, taskId }
  await writing.world.ok(await recorder(writing), 'signOffTask', { params, body: {} })
  return { taskId }
}

export const taskRequests = {
  takeDuty: (writing) => ({ params: inRoom(writing, { date: '2027-03-11' }), body: { userId: writing.as.userId } }),
  getDay: (writing) => ({ params: inRoom(writing, { date: 'today' }) }),
  getTask: async (writing) => ({ params: inRoom(writing, { taskId: (await taskOf(writing, 'room-equipment')).id }) }),
  getTaskWhy: async (writing) => ({
    params: inRoom(writing, { taskId: (await taskOf(writing, 'room-equipment')).id }),
  }),
  signOffTask: async (writing) => ({
    params: inRoom(writing, await openTask(writing, 'room-equipment')),
    body: { values: {} },
  }),
  skipTask: async (writing) => ({
    params: inRoom(writing, await openTask(writing, 'pair-feed')),
    body: { reason: 'the fish are resting' },
  }),
  undoTask: async (writing) => ({ params: inRoom(writing, await doneTask(writing)), body: {} }),
} satisfies Requests
