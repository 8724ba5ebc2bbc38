import { inRoom, type Requests, type Writing } from './writing.ts'

export async function invitationOf({ world, full }: Writing): Promise<{ token: string; id: string }> {
  const made = await world.ok(full.owner, 'createInvitation', {
    params: { roomId: full.roomId },
    body: { role: 'viewer' },
  })
  return { id: made.id, token: made.link.split('/').at(-1) ?? '' }
}

async function newcomer({ world, full, serial }: Writing): Promise<string> {
  return (await world.person(`Newcomer ${serial}`, { roomId: full.roomId, role: 'viewer' })).userId
}

export const peopleRequests = {
  getMe: () => ({}),
  getInvitationPreview: async (writing) => ({ params: { token: (await invitationOf(writing)).token } }),
  joinByInvitation: async (writing) => ({
    params: { token: (await invitationOf(writing)).token },
    body: { name: `Joiner ${writing.serial}`, email: `join-${writing.serial}@example.test`, password: 'long enough 1' },
  }),
  acceptInvitation: async (writing) => ({ params: { token: (await invitationOf(writing)).token }, body: {} }),
  listPeople: (writing) => ({ params: inRoom(writing) }),
  changeRole: async (writing) => ({
    params: inRoom(writing, { userId: await newcomer(writing) }),
    body: { role: 'stand_in' },
  }),
  removePerson: async (writing) => ({ params: inRoom(writing, { userId: await newcomer(writing) }) }),
  listInvitations: (writing) => ({ params: inRoom(writing) }),
  createInvitation: (writing) => ({ params: inRoom(writing), body: { role: 'viewer', daysValid: 3 } }),
  revokeInvitation: async (writing) => ({
    params: inRoom(writing, { invitationId: (await invitationOf(writing)).id }),
  }),
} satisfies Requests
