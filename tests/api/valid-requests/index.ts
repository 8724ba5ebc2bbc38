import type { RouteId } from '@fryward/shared'
import type { RawRequest } from '../send.ts'
import { accountRequests } from './account.ts'
import { clutchRequests } from './clutches.ts'
import { concentrateRequests } from './concentrates.ts'
import { cultureRequests } from './cultures.ts'
import { deviceRequests } from './devices.ts'
import { factRequests } from './facts.ts'
import { feedLinkRequests } from './feed-links.ts'
import { foodRequests } from './food.ts'
import { handOverRequests } from './hand-over.ts'
import { juvenileGroupRequests } from './juvenile-groups.ts'
import { larvalBatchRequests } from './larval-batches.ts'
import { messageRequests } from './messages.ts'
import { pairRequests } from './pairs.ts'
import { peopleRequests } from './people.ts'
import { photoRequests } from './photos.ts'
import { recordRequests } from './records.ts'
import { reopeningRequests } from './reopening.ts'
import { roomRequests } from './rooms.ts'
import { ruleRequests } from './rules.ts'
import { serverRequests } from './server.ts'
import { sessionRequests } from './session.ts'
import { survivalRequests } from './survival.ts'
import { tankRequests } from './tanks.ts'
import { taskRequests } from './tasks.ts'
import type { Write, Writing } from './writing.ts'

const requests: Record<RouteId, Write> = {
  ...serverRequests,
  ...sessionRequests,
  ...accountRequests,
  ...peopleRequests,
  ...roomRequests,
  ...tankRequests,
  ...concentrateRequests,
  ...cultureRequests,
  ...pairRequests,
  ...clutchRequests,
  ...larvalBatchRequests,
  ...feedLinkRequests,
  ...juvenileGroupRequests,
  ...survivalRequests,
  ...foodRequests,
  ...handOverRequests,
  ...photoRequests,
  ...factRequests,
  ...deviceRequests,
  ...recordRequests,
  ...reopeningRequests,
  ...messageRequests,
  ...taskRequests,
  ...ruleRequests,
}

/** One valid request of every route, made for the room as it is at this moment. */
export const validRequest = async (id: RouteId, writing: Writing): Promise<RawRequest> => requests[id](writing)
