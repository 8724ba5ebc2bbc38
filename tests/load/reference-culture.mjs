/**
 * The culture model written the plainest way, to time and check the package against: the equations in fifty small
 * Euler steps a day, derivatives by differences, matrices multiplied out.
 */

const STEPS_PER_DAY = 50

const transpose = (a) => a[0].map((_, j) => a.map((row) => row[j]))
const multiply = (a, b) => a.map((row) => b[0].map((_, j) => row.reduce((sum, value, k) => sum + value * b[k][j], 0)))
const add = (a, b) => a.map((row, i) => row.map((value, j) => value + b[i][j]))
const scale = (a, factor) => a.map((row) => row.map((value) => value * factor))
const diagonal = (values) => values.map((value, i) => values.map((_, j) => (i === j ? value : 0)))

function slope(state, rates, drift) {
  const [logDensity, spell] = state
  const growth = rates.growthPerDay * (1 - Math.exp(logDensity) / rates.capacityPerMl)
  return [growth + drift + spell, -rates.reversionPerDay * spell]
}

function moved(state, rates, drift, small) {
  const [dx, du] = slope(state, rates, drift)
  return [state[0] + dx * small, state[1] + du * small]
}

/** One day of the extended Kalman filter's prediction. */
function predictDay(state, covariance, rates, drift) {
  const small = 1 / STEPS_PER_DAY
  const h = 1e-6
  const noise = diagonal([rates.dailySd ** 2 * small, 2 * rates.reversionPerDay * rates.spellSdPerDay ** 2 * small])
  for (let step = 0; step < STEPS_PER_DAY; step += 1) {
    const here = moved(state, rates, drift, small)
    const byDensity = moved([state[0] + h, state[1]], rates, drift, small)
    const bySpell = moved([state[0], state[1] + h], rates, drift, small)
    const jacobian = [
      [(byDensity[0] - here[0]) / h, (bySpell[0] - here[0]) / h],
      [(byDensity[1] - here[1]) / h, (bySpell[1] - here[1]) / h],
    ]
    covariance = add(multiply(multiply(jacobian, covariance), transpose(jacobian)), noise)
    state = here
  }
  return { state, covariance }
}

/** Daily history: [{densityPerMl, animalsCounted, harvested}], one a day. */
export function filterPlainly(rows, rates) {
  const variance = (row) => 1 / row.animalsCounted + rates.handlingSd ** 2
  let state = [Math.log(rows[0].densityPerMl), 0]
  let covariance = diagonal([variance(rows[0]), rates.spellSdPerDay ** 2])
  const design = [[1, 0]]
  for (let day = 1; day < rows.length; day += 1) {
    state[0] += Math.log(1 - rows[day - 1].harvested)
    const predicted = predictDay(state, covariance, rates, 0)
    const total = multiply(multiply(design, predicted.covariance), transpose(design))[0][0] + variance(rows[day])
    const gain = scale(multiply(predicted.covariance, transpose(design)), 1 / total)
    const surprise = Math.log(rows[day].densityPerMl) - predicted.state[0]
    state = [predicted.state[0] + gain[0][0] * surprise, predicted.state[1] + gain[1][0] * surprise]
    covariance = multiply(add(diagonal([1, 1]), scale(multiply(gain, design), -1)), predicted.covariance)
  }
  state[0] += Math.log(1 - rows.at(-1).harvested)
  return { state, covariance }
}

/** Median density per day ahead, from futures followed in small steps. */
export function forecastPlainly({ state, covariance, rates, harvestFractionPerDay, days, futures, normal }) {
  const small = 1 / STEPS_PER_DAY
  const sdDensity = Math.sqrt(covariance[0][0])
  const onDensity = covariance[0][1] / sdDensity
  const sdSpell = Math.sqrt(covariance[1][1] - onDensity ** 2)
  const spellNoise = rates.spellSdPerDay * Math.sqrt(2 * rates.reversionPerDay * small)
  const courses = Array.from({ length: futures }, () => {
    const first = normal()
    let future = [state[0] + sdDensity * first, state[1] + onDensity * first + sdSpell * normal()]
    return Array.from({ length: days }, () => {
      for (let step = 0; step < STEPS_PER_DAY; step += 1) {
        future = moved(future, rates, 0, small)
        future[0] += rates.dailySd * Math.sqrt(small) * normal()
        future[1] += spellNoise * normal()
      }
      const density = Math.exp(future[0])
      future[0] += Math.log(1 - harvestFractionPerDay)
      return density
    })
  })
  return Array.from({ length: days }, (_, k) => {
    const sorted = courses.map((course) => course[k]).sort((a, b) => a - b)
    return sorted[Math.floor(futures / 2)]
  })
}
