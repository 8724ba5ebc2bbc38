/**
 * Henderson's tabular method as it stands in the textbooks: the whole lower triangle of relationships, each from the
 * rows of the two parents. Single precision keeps 10,000 animals at 200 MB; relationships are sums of halves.
 */
export function inbreedingByTable(sires, dams) {
  const size = sires.length
  const rows = Array.from({ length: size }, (_, i) => new Float32Array(i + 1))
  const between = (i, j) => (i >= j ? rows[i][j] : rows[j][i])
  for (let i = 0; i < size; i += 1) {
    const sire = sires[i]
    const dam = dams[i]
    for (let j = 0; j < i; j += 1) {
      rows[i][j] = ((sire < 0 ? 0 : between(j, sire)) + (dam < 0 ? 0 : between(j, dam))) / 2
    }
    rows[i][i] = 1 + (sire < 0 || dam < 0 ? 0 : between(sire, dam) / 2)
  }
  return rows.map((row, i) => row[i] - 1)
}
