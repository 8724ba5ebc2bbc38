/** From one line of a scale to the next: 1, 2 or 5 times a power of ten, so that about four lines fit under `top`. */
export function roundStep(top: number): number {
  const raw = top / 4
  const power = 10 ** Math.floor(Math.log10(raw))
  return ([1, 2, 5, 10].find((factor) => factor * power >= raw) ?? 10) * power
}
