// Of this page alone, which goes once the server has said yes.
let isLeaving = false

/** Whether whoever is here is signing out: then a session that is over is no news, and nobody is led back here. */
export const isBeingLeft = (): boolean => isLeaving

/** Signs out by what is given; where that is refused, whoever is here stays. */
export async function leaveBy<T>(signOut: () => Promise<T>): Promise<T> {
  isLeaving = true
  try {
    return await signOut()
  } catch (error) {
    isLeaving = false
    throw error
  }
}
