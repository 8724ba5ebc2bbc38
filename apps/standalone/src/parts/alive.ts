// Words, not objects with a schema: a part has them before it has loaded anything.

/** What the supervisor asks a part. */
export const areYouAlive = 'are you alive?'
/** What a part answers. */
export const alive = 'alive'
