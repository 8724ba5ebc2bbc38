/** What is taken from each culture for each eater on each day, and what the plan counts on being left, in animals. */
export type Taking = {
  taken: (culture: number, eater: number, day: number) => number
  left: (culture: number, day: number) => number
}
