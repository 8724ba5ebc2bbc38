import type { FeedLink } from '@fryward/shared'
import { fromDateColumn, type Prisma } from '@fryward/store'

export const toFeedLink = (row: Prisma.FeedLinkGetPayload<object>): FeedLink => ({
  id: row.id,
  batchId: row.batchId,
  cultureId: row.cultureId,
  fromOn: fromDateColumn(row.fromOn),
  untilOn: row.untilOn ? fromDateColumn(row.untilOn) : null,
  version: row.version,
})
