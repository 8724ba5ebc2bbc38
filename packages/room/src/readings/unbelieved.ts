/** A gauge in one of these troubles is not believed: no rule reads it until the trouble is over, and nothing of the time between. */
export const unbelieved = ['silent', 'implausible', 'stuck'] as const
