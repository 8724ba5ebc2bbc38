import {
  type BatchLived,
  batchName,
  type Creation,
  dayMonth,
  type FactDraft,
  findSpecies,
  livedInPast,
} from '@fryward/husbandry'
import type { BodyInputOf, Instant } from '@fryward/shared'
import { SnapshotBuilder } from '../../packages/husbandry/src/testing/snapshot-builder.ts'
import type { KeptCulture } from '../../packages/room/src/food/crashes-of.ts'

export type Setup = BodyInputOf<'createRoom'>
type Moment = { at: Instant; taskId: string | null }

/** A room's rows and facts without a database: what was set up, and what sign-offs brought into being. */
export class BookAlone extends SnapshotBuilder {
  /** Counts writes, as a room's revision does. */
  revision = 1
  readonly ended = new Set<string>()
  /** What became of the larvae of batches that have ended. */
  readonly lived: BatchLived[] = []
  readonly revisions = new Map<string, number>()

  constructor({ tanks = [], cultures = [], concentrate, name, timeZone, ...room }: Setup, at: Instant) {
    const { lightsOnAt, lightsOffAt, rounds, salinity, temperatureC } = room
    super({ name, timeZone, lightsOnAt, lightsOffAt, salinity, temperatureC, ...(rounds ? { rounds } : {}) })
    if (concentrate) this.concentrate({ name: concentrate.name, cellsPerMl: concentrate.cellsPerMl })
    for (const tank of tanks) this.tank({ lightHours: null, ...tank })
    for (const { startDensityPerMl, ...culture } of cultures) {
      const isFed = culture.kind === 'rotifer' || culture.kind === 'copepod'
      const made = this.culture({ strain: null, startedAt: at, ...culture, ...(isFed ? {} : { concentrateId: null }) })
      if (startDensityPerMl !== undefined)
        this.write(
          { kind: 'inoculation', subjectId: made.id, data: { densityPerMl: startDensityPerMl } },
          { at, taskId: null },
        )
    }
  }

  write(fact: FactDraft, moment: Moment): void {
    this.revisions.set(this.append(fact, moment).id, this.revision)
  }

  /** As the room's use cases do it (`apply-creation.ts`). */
  create(creation: Creation, moment: Moment): void {
    if (creation.kind === 'clutch') this.#clutch(creation, moment)
    if (creation.kind === 'larval_batch') this.#batch(creation, moment)
    if (creation.kind === 'juvenile_group') this.#group(creation, moment)
    if (creation.kind === 'culture') this.#culture(creation, moment)
  }

  link(batchId: string, cultureId: string, fromOn: string): void {
    this.snapshot.feedLinks.push({ id: this.nextId(), batchId, cultureId, fromOn, untilOn: null })
  }

  /** Rotifers, of which none is ever given up here. */
  keptCultures(): KeptCulture[] {
    const rotifers = this.snapshot.cultures.filter(({ kind }) => kind === 'rotifer')
    return rotifers.map(({ startedAt }) => ({ startedAt, endedAt: null, endCause: null }))
  }

  end(id: string): void {
    const { room, batches, facts } = this.snapshot
    this.lived.push(
      ...livedInPast({ timeZone: room.timeZone, batches: batches.filter((batch) => batch.id === id), facts }),
    )
    this.ended.add(id)
    this.snapshot.feedLinks = this.snapshot.feedLinks.filter(({ batchId }) => batchId !== id)
  }

  #clutch({ pairId, spawnedAt, eggs, intent = 'undecided' }: Made<'clutch'>, { taskId }: Moment): void {
    const pair = this.snapshot.pairs.find(({ id }) => id === pairId)!
    const id = this.nextId()
    const name = free(`${pair.name}, ${dayMonth(spawnedAt.slice(0, 10))}`, this.snapshot.clutches)
    const { species, tankId } = pair
    const care = findSpecies(species)?.care.value ?? 'nest'
    this.snapshot.clutches.push({ id, name, pairId, species, tankId, spawnedAt, care, intent })
    this.write({ kind: 'spawning', subjectId: id, data: eggs === undefined ? {} : { eggs } }, { at: spawnedAt, taskId })
  }

  #batch({ tank, species, clutchIds, hatchedOn, larvae, cultureIds }: Made<'larval_batch'>, moment: Moment): void {
    const { tanks, batches } = this.snapshot
    const tankId =
      'id' in tank ? tank.id : this.tank({ lightHours: null, name: free('Larval tank', tanks), ...tank }).id
    const id = this.nextId()
    batches.push({ id, name: free(batchName({ species, hatchedOn }), batches), species, tankId, clutchIds, hatchedOn })
    for (const [index, subjectId] of (clutchIds.length > 0 ? clutchIds : [id]).entries()) {
      const number = index === 0 && larvae !== undefined ? { larvae } : {}
      this.write({ kind: 'hatch', subjectId, data: { hatchedOn, batchId: id, ...number } }, moment)
    }
    for (const cultureId of cultureIds) this.link(id, cultureId, hatchedOn)
  }

  #group({ tankId, fromBatchId, settledOn, number, lengthMm, deformed }: Made<'juvenile_group'>, moment: Moment): void {
    const { groups, batches } = this.snapshot
    const { species, hatchedOn } = batches.find(({ id }) => id === fromBatchId)!
    const id = this.nextId()
    const name = free(`Juveniles, ${dayMonth(settledOn)}`, groups)
    groups.push({ id, name, species, tankId, fromBatchId, settledOn, hatchedOn })
    const seen = { ...(lengthMm === undefined ? {} : { lengthMm }), ...(deformed === undefined ? {} : { deformed }) }
    this.write({ kind: 'transfer', subjectId: fromBatchId, data: { number, toSubjectId: id, ...seen } }, moment)
  }

  #culture({ kind: _kind, drawnL, startDensityPerMl, ...vessel }: Made<'culture'>, moment: Moment): void {
    const name = free('New rotifers', this.snapshot.cultures)
    const { id } = this.culture({ ...vessel, name, startedAt: moment.at })
    const from = vessel.parentCultureId === null ? {} : { fromCultureId: vessel.parentCultureId }
    this.write({ kind: 'inoculation', subjectId: id, data: { densityPerMl: startDensityPerMl, ...from } }, moment)
    if (vessel.parentCultureId === null || drawnL <= 0) return
    const parts = [{ to: 'culture' as const, subjectId: id, volumeL: drawnL }]
    this.write({ kind: 'harvest', subjectId: vessel.parentCultureId, data: { volumeL: drawnL, parts } }, moment)
  }
}

type Made<K extends Creation['kind']> = Extract<Creation, { kind: K }>

/** A name that is taken gets the next letter. */
function free(base: string, taken: readonly { name: string }[]): string {
  const names = ['', ...'bcdefghijklmnopqrstuvwxyz'].map((letter) => (letter ? `${base} ${letter}` : base))
  return names.find((name) => !taken.some((each) => each.name === name)) ?? base
}
