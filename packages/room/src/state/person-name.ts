/** A name as read beside the id of its account: null where the account is gone. */
export const nameOrLeft = (userId: string | null, name: string | null): string =>
  userId === null ? 'Fryward' : (name ?? 'somebody who has left')
