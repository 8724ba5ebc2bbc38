// A room of 60 vessels that is lived in for a year: seeded, with eggs, hatches and settled fish by the calendar, and most
// of what its lists ask for signed off. Built with the rules' own test builders.
import { addDays, addMinutes, findRule } from '@fryward/husbandry'
import { seededRandom } from '@fryward/live-feed'
import { SnapshotBuilder, signOff } from '../../packages/husbandry/dist/testing/snapshot-builder.js'

const signedShare = 0.85
// As the loader reads them: two months of everything, and the facts that a life stands on whole.
const windowDays = 60
const kept = ['spawning', 'hatch', 'inoculation']
const daysBetweenClutches = 28
const nightsToHatch = 8
const daysInNursery = 24
const daysInGrowOut = 60
const rotiferCultures = 12
const capacityPerMl = 700
const growthPerDay = 0.3

export class FullYear {
  #random = seededRandom(20_260_105)
  #density = new Map()
  #laid = []
  #waiting = []

  constructor(firstDay) {
    this.room = new SnapshotBuilder()
    this.firstDay = firstDay
    this.#setUp()
  }

  get vessels() {
    return this.room.snapshot.tanks.length + this.room.snapshot.cultures.length
  }

  #setUp() {
    const { room } = this
    const startedAt = `${this.firstDay}T05:00:00.000Z`
    room.concentrate({ name: 'the bottle', openedOn: this.firstDay })
    for (let i = 0; i < rotiferCultures; i += 1) {
      const culture = room.culture({ startedAt, isBackup: i >= 9, hasFilter: i < 3 })
      room.fact('inoculation', culture.id, startedAt, { densityPerMl: 63 })
      this.#density.set(culture.id, 63)
    }
    for (let i = 0; i < 4; i += 1)
      room.culture({ startedAt, name: `A${i + 1}`, kind: 'microalgae', strain: null, volumeL: 10 })
    for (let i = 0; i < 4; i += 1)
      room.culture({ startedAt, name: `H${i + 1}`, kind: 'artemia_hatch', strain: null, volumeL: 2, salinity: 30 })
    for (let i = 0; i < 10; i += 1)
      room.pair({ species: i % 2 ? 'amphiprion-percula' : 'amphiprion-ocellaris', formedOn: this.firstDay })
    this.nurseries = Array.from({ length: 15 }, (_, i) => room.tank({ name: `Nursery ${i + 1}` }))
    this.growOuts = Array.from({ length: 10 }, (_, i) =>
      room.tank({ name: `Grow-out ${i + 1}`, kind: 'grow_out', volumeL: 150 }),
    )
    for (let i = 0; i < 3; i += 1) room.tank({ name: `Quarantine ${i + 1}`, kind: 'quarantine', volumeL: 40 })
    for (let i = 0; i < 2; i += 1) room.tank({ name: `Barrel ${i + 1}`, kind: 'storage', volumeL: 200 })
  }

  /** What the calendar brings before the morning round: eggs, larvae, settled fish; and what has left. */
  begin(date, day) {
    const { snapshot } = this.room
    for (const [i, pair] of snapshot.pairs.entries())
      if ((day + i * 3) % daysBetweenClutches === 0)
        this.#laid.push({ date, clutch: this.room.clutch(pair, { spawnedAt: `${date}T09:00:00.000Z`, eggs: 300 }) })
    for (const { clutch } of this.#laid.filter((one) => one.date === addDays(date, -nightsToHatch)))
      this.#hatch(clutch, addDays(date, -1))
    for (const batch of snapshot.batches.filter(({ hatchedOn }) => hatchedOn === addDays(date, -daysInNursery)))
      this.#settle(batch, date)
    this.#leaveBehind(date)
    for (const [id, density] of this.#density)
      this.#density.set(id, density * Math.exp(growthPerDay * (1 - density / capacityPerMl)))
  }

  #hatch(clutch, hatchedOn) {
    const { room } = this
    const taken = new Set(room.snapshot.batches.map(({ tankId }) => tankId))
    const tank = this.nurseries.find(({ id }) => !taken.has(id))
    if (!tank) return
    const batch = room.batch({ hatchedOn, tankId: tank.id, clutchIds: [clutch.id], larvae: 180 })
    room.fact('hatch', clutch.id, `${hatchedOn}T20:30:00.000Z`, { hatchedOn, batchId: batch.id })
    room.feedLink(batch, room.snapshot.cultures[room.snapshot.batches.length % 9])
  }

  #settle(batch, date) {
    const { room } = this
    const taken = new Set(room.snapshot.groups.map(({ tankId }) => tankId))
    const tank = this.growOuts.find(({ id }) => !taken.has(id))
    room.snapshot.batches = room.snapshot.batches.filter(({ id }) => id !== batch.id)
    room.snapshot.feedLinks = room.snapshot.feedLinks.filter(({ batchId }) => batchId !== batch.id)
    if (tank) room.group({ settledOn: date, tankId: tank.id, fromBatchId: batch.id, number: 90 })
  }

  #leaveBehind(date) {
    const { snapshot } = this.room
    snapshot.groups = snapshot.groups.filter(({ settledOn }) => settledOn > addDays(date, -daysInGrowOut))
    snapshot.clutches = snapshot.clutches.filter(({ spawnedAt }) => spawnedAt > addDays(date, -90))
    const since = addDays(date, -windowDays)
    const alive = new Set(
      ['tanks', 'cultures', 'pairs', 'clutches', 'batches', 'groups'].flatMap((list) =>
        snapshot[list].map(({ id }) => id),
      ),
    )
    snapshot.facts = snapshot.facts.filter(
      (fact) => fact.at >= since || (kept.includes(fact.kind) && alive.has(fact.subjectId)),
    )
  }

  /** Signs most of a day's drafts off, with what was counted and the usual for the rest. */
  sign(drafts) {
    for (const draft of drafts) {
      if (this.#random.uniform() > signedShare) continue
      const values = Object.fromEntries(
        draft.content.fields
          .filter(({ isRequired }) => isRequired)
          .map((field) => [field.name, this.#typed(field, draft)]),
      )
      const at = addMinutes(draft.dueAt, Math.round(this.#random.uniform() * 50) + 1)
      const { facts } = signOff(findRule(draft.ruleId), draft, values, at)
      this.#waiting.push(...facts.map((fact) => ({ fact, at })))
    }
    this.#waiting.sort((a, b) => (a.at < b.at ? -1 : 1))
    for (const { fact, at } of this.#waiting.splice(0)) {
      this.room.append(fact, { at })
      this.#thin(fact)
    }
  }

  #thin({ kind, subjectId, data }) {
    const culture = this.room.snapshot.cultures.find(({ id }) => id === subjectId)
    const density = this.#density.get(subjectId)
    if (!culture || density === undefined) return
    if (kind === 'harvest') this.#density.set(subjectId, density * Math.max(0.05, 1 - data.volumeL / culture.volumeL))
    if (kind === 'care' && data.act === 'restart_culture') this.#density.set(subjectId, 63)
  }

  #typed(field, draft) {
    if (field.type === 'count') {
      const density = this.#density.get(draft.subjectId) ?? 6
      const one = () => Math.max(0, Math.round(density * field.volumeMl * (1 + 0.1 * this.#random.normal())))
      return { animals: Array.from({ length: field.replicates }, one), volumeMl: field.volumeMl, dilution: 1 }
    }
    if (field.type === 'number') return field.usual ?? field.likelyMinimum
    if (field.type === 'choice') return field.choices[0].value
    if (field.type === 'choices') return [field.choices[0].value]
    if (field.type === 'yes_no') return false
    if (field.type === 'text') return 'seen'
    return field.suggested.map(({ to, subjectId, volumeL }) => ({ to, subjectId, volumeL }))
  }
}
