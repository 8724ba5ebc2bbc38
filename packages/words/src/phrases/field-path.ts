/** Units that the contract's names end in; a person reads them beside the box. */
const unitAtEnd = /(PerMl|PerL|MgPerL|Ml|Um|L|G|C)$/

/** A field of a request as a person would call it: "data.volumeL" is the volume, "rounds.1.at" the at of the second. */
export function sayFieldPath(path: string): string {
  const [last = path, before = ''] = path.split('.').reverse()
  const place = /^\d+$/.test(last) ? `${sayName(before)} ${Number(last) + 1}` : sayName(last)
  return /^\d+$/.test(before) && !/^\d+$/.test(last) ? `${place} of number ${Number(before) + 1}` : place
}

/** "startDensityPerMl" is the start density. */
function sayName(name: string): string {
  const bare = name.replace(unitAtEnd, '') || name
  return bare.replaceAll(/([a-z])([A-Z])/g, (_match, a: string, b: string) => `${a} ${b.toLowerCase()}`)
}
