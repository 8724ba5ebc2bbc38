/** Every zone this browser knows, with the room's own even if it is not among them. */
export function timeZones(own: string): string[] {
  const known = Intl.supportedValuesOf('timeZone')
  return known.includes(own) ? known : [own, ...known]
}

export const deviceTimeZone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone
