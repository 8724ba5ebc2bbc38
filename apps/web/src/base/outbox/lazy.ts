// What comes after the page, in one script.
export { readDrafts } from './drafts.ts'
export { leaveCommands, putCommand } from './put-command.ts'
export { outbox } from './this-outbox.ts'
