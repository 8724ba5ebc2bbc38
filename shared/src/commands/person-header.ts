/** Says for whom a request is meant, so that it is refused when somebody else has signed in on the device meanwhile. */
export const personHeader = 'fryward-person'
