/** What became of one of several sign-offs: booked; left open for its new amount; no longer open. */
export type Outcome = 'done' | 'changed' | 'gone'

/** `undefined` is one that failed. */
type Said = { outcomes: (Outcome | undefined)[]; all: number; stop: string; problem: string | undefined }

/** "4 as planned: Larvae"; else how many of them, and what is with the rest. */
export function sayOutcomes({ outcomes, all, stop, problem }: Said): string {
  const count = (what: Outcome) => outcomes.filter((one) => one === what).length
  const done = count('done')
  const changed = count('changed')
  const gone = count('gone')
  const sentences = [
    `${done === all ? done : `${done} of ${all}`} as planned: ${stop}`,
    changed > 0 && `${changed} ${changed === 1 ? 'has a new amount' : 'have new amounts'}, look again`,
    gone > 0 && `${gone} ${gone === 1 ? 'was' : 'were'} no longer open`,
    problem,
  ]
  return sentences.filter(Boolean).join('. ')
}
