/** Something the person at the keyboard can put right: printed as its one sentence, without a stack. */
export class StartProblem extends Error {
  override readonly name = 'StartProblem'
}

/** The text of anything thrown. */
export function messageOf(thrown: unknown): string {
  return thrown instanceof Error ? thrown.message : String(thrown)
}

/** The system's error code (`EACCES`, `EADDRINUSE`, …) of anything thrown, or undefined. */
export function codeOf(thrown: unknown): string | undefined {
  return thrown instanceof Error && 'code' in thrown && typeof thrown.code === 'string' ? thrown.code : undefined
}
