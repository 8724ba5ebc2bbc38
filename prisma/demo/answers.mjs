// What a caretaker of the demo room would write down for a task, given what is really in the water.

/** Values for a task's fields; an empty object where one tap says it all. */
export function answersFor({ task, waters, story, random, atMs }) {
  const values = {}
  for (const field of task.content.fields) {
    const value = answer({ field, task, waters, story, random, atMs })
    if (value !== undefined) values[field.name] = value
  }
  return values
}

/** What a careful person would be asked about twice, more dead than the book has among it; the demo's people looked twice. */
export const confirmedFields = (task) => [...task.content.fields.map((field) => field.name), 'beyondBook']

function answer({ field, task, waters, story, random, atMs }) {
  const told = story.answer({ field, task, atMs })
  if (told !== undefined) return told
  if (field.type === 'count' && isKnown({ task, waters })) return countOf({ field, task, waters, atMs, random })
  if (field.type === 'count' && field.isRequired) return likelyCountOf(field)
  if (field.name === 'water')
    return random.uniform() < 0.6 ? 'water_tinted' : random.uniform() < 0.7 ? 'water_clear' : 'water_green'
  if (field.type === 'choices') return undefined
  if (field.type === 'text') return undefined
  if (!field.isRequired) return undefined
  if (field.type === 'yes_no') return false
  if (field.type === 'choice') return field.choices[0].value
  if (field.type === 'number')
    // Where nothing may be found (dead fish, ammonia), nothing is, unless the story says so.
    return rounded(
      field.usual ?? (field.likelyMinimum === 0 ? 0 : (field.likelyMinimum + field.likelyMaximum) / 2),
      field.step,
    )
  return undefined
}

const isKnown = ({ task, waters }) => waters.hasBatch(task.subjectId) || waters.hasCulture(task.subjectId)

function countOf({ field, task, waters, atMs, random }) {
  const { replicates } = field
  const isPrey = task.subject.kind === 'larval_batch'
  const perMl = isPrey
    ? waters.batchAt(task.subjectId, atMs).preyPerMl
    : waters.cultureAt(task.subjectId, atMs).densityPerMl
  // A hundred or two in all are enough to count; a dense culture is looked at in a smaller volume.
  const volumeMl = !isPrey && perMl * field.volumeMl > 150 ? field.volumeMl / 5 : field.volumeMl
  const animals = Array.from({ length: replicates }, () => waters.sample(perMl * volumeMl))
  const count = { animals, volumeMl, dilution: 1 }
  if (!field.withEggs) return count
  const females = Math.min(
    60,
    Math.max(
      10,
      animals.reduce((sum, each) => sum + each, 0),
    ),
  )
  const eggs = waters.sample(females * waters.eggRatio(task.subjectId, atMs))
  return random.uniform() < 0.85 ? { ...count, females, eggs } : count
}

/** Of what these waters do not know, such as a lot of cysts: as many as are likely, diluted until they can be counted. */
function likelyCountOf({ replicates, volumeMl, unit, likelyMinimum, likelyMaximum }) {
  const inSample = ((likelyMinimum + likelyMaximum) / 2) * (unit === 'per_L' ? volumeMl / 1000 : volumeMl)
  const dilution = inSample > 150 ? 20 : 1
  const animals = Array.from({ length: replicates }, () => Math.round(inSample / dilution))
  return { animals, volumeMl, dilution }
}

const rounded = (value, step) => Number((Math.round(value / step) * step).toFixed(6))
