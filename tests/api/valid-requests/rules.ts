import { inRoom, type Requests, type Writing } from './writing.ts'

const ruleSetting = async (writing: Writing) => {
  const { world, full } = writing
  const last = await world.database.prisma.ruleChange.findFirst({
    where: { roomId: full.roomId, ruleId: 'pair-feed' },
    orderBy: { version: 'desc' },
  })
  return {
    params: inRoom(writing, { ruleId: 'pair-feed' }),
    body: { isOn: true, parameters: {}, version: last?.version ?? 0 },
  }
}

export const ruleRequests = {
  listRules: (writing) => ({ params: inRoom(writing) }),
  previewRule: ruleSetting,
  changeRule: ruleSetting,
} satisfies Requests
