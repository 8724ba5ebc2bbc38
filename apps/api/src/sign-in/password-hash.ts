/** The sign-in library's own hash. A module that needs nothing else: the demo room takes it without the server. */
export { hashPassword } from 'better-auth/crypto'
