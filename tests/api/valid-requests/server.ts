import { knocked } from './account.ts'
import type { Requests } from './writing.ts'

export const serverRequests = {
  getAlive: () => ({}),
  getHealth: () => ({}),
  getServer: () => ({}),
  claimServer: ({ serial }) => ({
    body: {
      code: 'AAAA-BBBB-CCCC',
      name: 'Claimant',
      email: `claim-${serial}@example.test`,
      password: 'long enough 1',
    },
  }),
  downloadBackup: () => ({}),
  getServerState: () => ({}),
  listSignIns: knocked,
} satisfies Requests
