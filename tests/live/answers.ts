import type { Task, TaskField } from '@fryward/shared'
import { jarMl } from './artemia.ts'
import type { Nature } from './nature.ts'
import { readOffCard } from './water.ts'

const dayMs = 86_400_000
const handling = 0.1
const seenScatter = 0.12

type Asked = { field: TaskField; task: Task; nature: Nature; atMs: number }

/** What a keeper who looks and counts types into a task: every required field, and what else is seen at a glance. */
export function answersTo(task: Task, nature: Nature, atMs: number): Record<string, unknown> {
  const values: Record<string, unknown> = {}
  for (const field of task.fields) {
    const value = answer({ field, task, nature, atMs })
    if (value !== undefined) values[field.name] = value
  }
  return values
}

function answer(asked: Asked): unknown {
  const { field } = asked
  const seen = seenByName[field.name]?.(asked)
  if (seen !== undefined) return field.type === 'number' ? withinLimits(field, Number(seen)) : offered(field, seen)
  if (field.type === 'count') return counted(asked, field)
  if (!field.isRequired) return undefined
  if (field.type === 'yes_no') return false
  if (field.type === 'choice') return field.choices[0]?.value
  if (field.type === 'choices') return []
  if (field.type === 'text') return 'seen'
  if (field.type === 'number')
    return withinLimits(field, field.usual ?? (field.likelyMinimum + field.likelyMaximum) / 2)
  return undefined
}

/** A choice that this field does not offer is not made. */
function offered(field: TaskField, value: unknown): unknown {
  if (field.type !== 'choice') return value
  return field.choices.some((choice) => choice.value === value) ? value : undefined
}

function withinLimits(field: TaskField & { type: 'number' }, value: number): number {
  const stepped = Math.round(value / field.step) * field.step
  return Number(Math.min(field.maximum, Math.max(field.minimum, stepped)).toFixed(6))
}

function counted({ task, nature, atMs }: Asked, field: TaskField & { type: 'count' }): unknown {
  const perMl = field.name === 'unhatched' ? null : densityOf(task, { nature, atMs, of: field.name })
  if (perMl === null)
    return field.isRequired ? { animals: Array(field.replicates).fill(0), volumeMl: field.volumeMl } : undefined
  const isThick = perMl * field.volumeMl > 300
  const volumeMl = isThick ? field.volumeMl / 10 : field.volumeMl
  const mean = perMl * volumeMl * nature.chance.factor(handling)
  const animals = Array.from({ length: field.replicates }, () =>
    nature.chance.poisson(mean * nature.chance.factor(0.05)),
  )
  const culture = nature.rotifers.get(task.subject.id)
  if (!field.withEggs || !culture) return { animals, volumeMl }
  const females = 60
  return { animals, volumeMl, females, eggs: nature.chance.poisson(females * culture.eggRatio) }
}

/** What swims where a task has somebody count; null where this nature knows nothing. */
function densityOf(task: Task, { nature, atMs, of }: { nature: Nature; atMs: number; of: string }): number | null {
  const { id } = task.subject
  const copepods = nature.copepods.get(id)
  if (copepods) return of === 'nauplii' ? copepods.nauplii : copepods.grown
  const algae = nature.algae.get(id)
  if (algae) return algae.cellsPerMl
  const batch = nature.batches.get(id)
  if (batch) return /artemia/.test(task.ruleId) ? batch.artemiaPerMl : batch.rotifersPerMl
  const cone = nature.cones.get(id)
  // 1.6 g of cysts in 80 mL, thinned twentyfold: FAO Fish. Tech. Pap. 361, sect. 4.2.
  if (cone && task.ruleId === 'artemia-lot-test') return (1.6 * cone.perGram) / 80
  if (cone) return cone.nauplii(atMs) / jarMl
  return nature.rotifers.get(id)?.perMl ?? null
}

const about = (nature: Nature, number: number) => Math.max(1, Math.round(number * nature.chance.factor(seenScatter)))
const nightsOut = ({ task, nature, atMs }: Omit<Asked, 'field'>) =>
  (nature.breeders.byClutch(task.subject.id)?.nights ?? []).filter((night) => night.atMs <= atMs)

/** What the eyes answer, by the name of the field. */
const seenByName: Record<string, (asked: Asked) => unknown> = {
  eggs: ({ field, task, nature, atMs }) =>
    field.type === 'yes_no' ? nature.breeders.unseen(task.subject.id, atMs) !== undefined : undefined,
  laid: ({ task, nature, atMs }) => {
    const found = nature.breeders.unseen(task.subject.id, atMs)
    // What was laid longer ago than that is said as early as the form allows.
    return found && (Math.floor(found.laidMs / dayMs) === Math.floor(atMs / dayMs) ? 'today' : 'yesterday')
  },
  number: ({ task, nature, atMs }) => {
    const found = nature.breeders.unseen(task.subject.id, atMs)
    const living = nature.batches.get(task.subject.id)?.number ?? nature.groups.get(task.subject.id)?.number
    return found ? about(nature, found.eggs) : living === undefined ? undefined : Math.round(living)
  },
  hatched: (asked) => {
    const eggs = asked.nature.breeders.byClutch(asked.task.subject.id)
    const out = nightsOut(asked).length
    return eggs && (out === 0 ? 'none' : out < eggs.nights.length ? 'part' : 'all')
  },
  brood: (asked) => (nightsOut(asked).length > 0 ? 'out' : 'carrying'),
  hatching: (asked) => (nightsOut(asked).length > 0 ? 'most' : 'none'),
  larvae: (asked) => {
    const larvae = nightsOut(asked).reduce((sum, night) => sum + (night.isTaken ? 0 : night.larvae), 0)
    return larvae > 0 ? about(asked.nature, larvae) : asked.field.isRequired ? 0 : undefined
  },
  eggStage: ({ task, nature, atMs }) => {
    const eggs = nature.breeders.byClutch(task.subject.id)
    const hatchMs = eggs?.nights[0]?.atMs
    if (!eggs || hatchMs === undefined) return undefined
    if (nightsOut({ task, nature, atMs }).length > 0) return 'out'
    const share = (atMs - eggs.laidMs) / (hatchMs - eggs.laidMs)
    return share < 0.3 ? 'orange' : share < 0.55 ? 'dark' : share < 0.85 ? 'eyed' : 'silver'
  },
  intent: () => 'raise_all',
  // This nature has no vessels but those that it began with.
  answer: ({ task }) => (task.ruleId === 'rotifer-backup-wanted' ? 'later' : undefined),
  seen: ({ task, nature }) => ((nature.batches.get(task.subject.id)?.hungryHours ?? 0) > 3 ? 'hungry' : 'well'),
  settled: ({ task, nature, atMs }) => {
    const batch = nature.batches.get(task.subject.id)
    if (!batch) return undefined
    const past = batch.ageDays(atMs) - batch.settledDay
    return past < 0 ? 'none' : past < 3 ? 'some' : 'most'
  },
  taken: ({ task, nature, atMs }) => {
    const share = nature.batches.get(task.subject.id)?.dryShare(atMs)
    return share === undefined ? undefined : share < 0.2 ? 'none' : share < 0.8 ? 'some' : 'all'
  },
  // Half of the dead are gone before anybody siphons.
  dead: ({ task, nature }) => Math.round((nature.batches.get(task.subject.id)?.dead ?? 0) / 2),
  leftPerMl: ({ task, nature }) => nature.batches.get(task.subject.id)?.artemiaPerMl,
  totalAmmoniaNMgPerL: ({ task, nature }) => {
    const water = nature.waterOf(task.subject.id)
    return water && readOffCard(water.ammoniaMgPerL * nature.chance.factor(seenScatter))
  },
  nitriteNMgPerL: ({ task, nature }) => {
    const water = nature.waterOf(task.subject.id)
    return water && readOffCard(water.nitriteMgPerL * nature.chance.factor(seenScatter))
  },
  pH: ({ task, nature }) => nature.waterOf(task.subject.id)?.pH,
  keptMl: () => jarMl,
  out: ({ task, nature, atMs }) => (nature.cones.get(task.subject.id)?.nauplii(atMs) === 0 ? 'none' : undefined),
  // Somebody nearby has rotifers to give on the day that they are asked for.
  animals: ({ task }) => (task.ruleId === 'rotifer-empty' ? task.amount?.value : undefined),
  water: ({ task, nature }) => nature.copepods.get(task.subject.id)?.look ?? 'water_tinted',
  colour: ({ task, nature }) => nature.algae.get(task.subject.id)?.look,
  signs: ({ task, nature }) => (nature.rotifers.get(task.subject.id)?.isSick ? ['swimming_slow'] : undefined),
}
