/** The name of the event that a stream ends with when its session is over; it carries nothing. */
export const signedOutEvent = 'signed_out'
