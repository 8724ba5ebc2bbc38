import { tick } from '@fryward/scheduler'
import type { Room } from '@fryward/shared'
import { openRoom, type Person, type World } from '../support/world.ts'

const quiet = { warn: () => undefined, info: () => undefined }

/** Days that are opened, done, struck out and argued about, so that every kind of row is there. */
export async function liveThroughFourDays(world: World): Promise<{ owner: Person; room: Room }> {
  const { clock, database, ok, person } = world
  const { owner, room } = await openRoom(world)
  const params = { roomId: room.id }
  await person('The stand-in', { roomId: room.id, role: 'stand_in' })
  const tanks = await ok(owner, 'listTanks', { params })
  const pair = await ok(owner, 'createPair', {
    params,
    body: { name: 'Pair one', species: 'amphiprion-ocellaris', tankId: tanks[0]!.id },
  })
  await ok(owner, 'createClutch', { params, body: { pairId: pair.id, spawnedAt: clock.now(), eggs: 300 } })
  await ok(owner, 'writeNote', {
    params,
    body: { text: 'Umlauts ä, a tab\t, a backslash \\ and a new\nline.', isWorry: true },
  })
  for (let day = 0; day < 4; day += 1) {
    await tick({ database, now: clock.now, log: quiet })
    const list = await ok(owner, 'getDay', { params: { ...params, date: 'today' } })
    for (const task of list.tasks.filter(
      (each) => each.state === 'open' && each.fields.every((field) => !field.isRequired),
    ))
      await ok(owner, 'signOffTask', {
        params: { ...params, taskId: task.id },
        body: { confirmed: ['early'] },
        key: `day-${day}-${task.id}`,
      })
    clock.advanceMinutes(1440)
  }
  await database.prisma.user.update({ where: { id: owner.userId }, data: { twoFactorEnabled: true } })
  await database.prisma.twoFactor.create({
    data: { id: 'a', userId: owner.userId, secret: 'a secret', backupCodes: 'x' },
  })
  await ok(owner, 'changeBroker', {
    params,
    body: { url: 'mqtt://broker.example', username: 'room', password: 'sea-salt', authority: null },
  })
  const { facts } = await ok(owner, 'listFacts', { params })
  await ok(owner, 'strikeFact', {
    params: { ...params, factId: facts[0]!.id },
    body: { reason: 'entered on the wrong vessel' },
  })
  return { owner, room }
}
