import { expect, test } from 'vitest'
import { actorName, actorUserId } from './context.ts'
import { invalid, noSuchRoom, notFound } from './errors.ts'
import { toFact } from './facts/fact-view.ts'
import { toFeedLink } from './feed-links/feed-link-view.ts'
import { toInvitation } from './people/invitation-view.ts'
import { toStandingFact } from './state/standing-fact.ts'

const names = new Map([
  ['ana', 'Ana'],
  ['ben', 'Ben'],
])
const at = (day: number) => new Date(Date.UTC(2026, 2, day, 7))

test('a fact says who wrote it and who struck it out, though they have left, and the clock under its own name', () => {
  const data = { of: 'larvae', number: 3 }
  const row = {
    ...{ id: 'f', kind: 'loss' as const, subjectId: 's', at: at(1), receivedAt: at(2), recordedBy: 'ana', data },
    ...{ revision: 7, struckAt: null, struckBy: null, struckReason: null },
    ...{ subject: { kind: 'larval_batch' as const }, signOff: null },
  }
  const told = {
    ...{ id: 'f', kind: 'loss', subjectId: 's', subjectKind: 'larval_batch', revision: 7, data },
    ...{ at: '2026-03-01T07:00:00.000Z', receivedAt: '2026-03-02T07:00:00.000Z', recordedByName: 'Ana', taskId: null },
  }
  expect(toFact(row, names)).toEqual({ ...told, struckAt: null, struckByName: null, struckReason: null })
  const struck = { struckAt: at(3), struckBy: 'gone', struckReason: 'of another batch' }
  expect(toFact({ ...row, ...struck, recordedBy: null, signOff: { taskId: 't' } }, names)).toEqual({
    ...{ ...told, recordedByName: 'Fryward', taskId: 't', struckAt: '2026-03-03T07:00:00.000Z' },
    ...{ struckByName: 'somebody who has left', struckReason: 'of another batch' },
  })
  const standing = (recordedBy: string | null, people: Record<string, string> = { ana: 'Ana' }) =>
    toStandingFact(['f', 'loss', 's', at(1).getTime(), recordedBy, 't', data], people)
  expect(standing('ana')).toEqual({
    ...{
      id: 'f',
      kind: 'loss',
      subjectId: 's',
      at: '2026-03-01T07:00:00.000Z',
      recordedByName: 'Ana',
      taskId: 't',
      data,
    },
  })
  expect([standing(null), standing('gone')].map(({ recordedByName }) => recordedByName)).toEqual([
    ...['Fryward', 'somebody who has left'],
  ])
})

test('an invitation says who made it, who took it and when, and of what did not happen nothing', () => {
  const row = {
    ...{ id: 'i', roomId: 'r', role: 'viewer' as const, tokenHash: 'hash', createdBy: 'ana', createdAt: at(1) },
    ...{ expiresAt: at(8), acceptedAt: null, acceptedBy: null, revokedAt: null },
  }
  const told = {
    ...{
      id: 'i',
      role: 'viewer',
      createdByName: 'Ana',
      createdAt: at(1).toISOString(),
      expiresAt: at(8).toISOString(),
    },
    ...{ acceptedAt: null, acceptedByName: null, revokedAt: null },
  }
  // Its token is nobody's to read.
  expect(toInvitation(row as never, names)).toEqual(told)
  const taken = { acceptedAt: at(2), acceptedBy: 'ben', revokedAt: at(3) }
  expect(toInvitation({ ...row, ...taken } as never, names)).toEqual({
    ...{ ...told, acceptedAt: at(2).toISOString(), acceptedByName: 'Ben', revokedAt: at(3).toISOString() },
  })
})

test('a feed link is from one date to another, or to none yet', () => {
  const link = { id: 'l', batchId: 'b', cultureId: 'c', version: 2 }
  const row = { ...link, roomId: 'r', fromOn: new Date('2026-03-01'), untilOn: null }
  expect(toFeedLink(row as never)).toEqual({ ...link, fromOn: '2026-03-01', untilOn: null })
  expect(toFeedLink({ ...row, untilOn: new Date('2026-03-09') } as never).untilOn).toBe('2026-03-09')
})

test('whoever acts has a name, and only a person an account', () => {
  const person = { kind: 'person', userId: 'ana', name: 'Ana' } as const
  const device = { kind: 'device', roomId: 'r', deviceId: 'd', name: 'Probe' } as const
  const clock = { kind: 'system', job: 'sweep' } as const
  expect([person, device, clock].map(actorName)).toEqual(['Ana', 'Probe', 'Fryward'])
  expect([person, device, clock].map(actorUserId)).toEqual(['ana', null, null])
})

test('what is refused says in a sentence what to do, under its code', () => {
  expect(notFound('tank')).toMatchObject({
    ...{ name: 'RoomError', code: 'not_found', fields: undefined, current: undefined },
    message: 'There is no such tank here, or you are not in its room.',
  })
  // Neither whether the room is there nor whose it is.
  expect(noSuchRoom()).toMatchObject({
    code: 'not_found',
    message: expect.stringMatching(/not in this room, or it is not/),
  })
  expect(invalid('name', 'It is taken.', 'R1')).toMatchObject({
    ...{ code: 'invalid_input', message: 'It is taken.' },
    fields: [{ path: 'name', message: 'It is taken.', received: 'R1' }],
  })
})
