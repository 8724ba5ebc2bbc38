import type { CountData, Food, Instant, Outcome, PlainDate } from '@fryward/shared'
import type { Meals, ReviewRoom, Stay } from '../review/review-room.ts'
import type { SnapshotBatch, SnapshotClutch, SnapshotGroup } from '../snapshot/room-snapshot.ts'
import { SnapshotBuilder } from './snapshot-builder.ts'

const dayMs = 86_400_000
const on = (date: PlainDate, days: number, time = '10:00'): Instant =>
  new Date(Date.parse(`${date}T${time}:00.000Z`) + days * dayMs).toISOString()

/** A room in UTC of which only broods matter; days are counted from 1 March 2026. */
export class BroodRoom {
  readonly builder: SnapshotBuilder
  readonly meals: Meals[] = []
  readonly ended = new Map<string, Instant>()
  readonly stays: Stay[] = []

  constructor(builder = new SnapshotBuilder()) {
    this.builder = builder
  }

  /** The instant of a day since 1 March; half-past ten unless a time is named. */
  at = (day: number, time = '10:30'): Instant => on('2026-03-01', day, time)
  dateOf = (day: number): PlainDate => this.at(day).slice(0, 10)

  clutch(day: number, eggs?: number, given: Partial<SnapshotClutch> = {}): SnapshotClutch {
    const pair = this.builder.pair({ species: given.species ?? 'amphiprion-ocellaris' })
    return this.builder.clutch(pair, { spawnedAt: this.at(day), ...(eggs === undefined ? {} : { eggs }), ...given })
  }

  /** Larvae found on the morning of a day, of the night before; the number stands with the first clutch. */
  batch(day: number, clutches: SnapshotClutch[], larvae?: number): SnapshotBatch {
    const hatchedOn = this.dateOf(day - 1)
    const batch: SnapshotBatch = {
      id: this.builder.nextId(),
      name: `Batch ${this.builder.snapshot.batches.length + 1}`,
      species: clutches[0]?.species ?? 'amphiprion-ocellaris',
      tankId: this.builder.tank().id,
      clutchIds: clutches.map(({ id }) => id),
      hatchedOn,
    }
    this.builder.snapshot.batches.push(batch)
    const from = clutches.length > 0 ? clutches.map(({ id }) => id) : [batch.id]
    for (const [index, id] of from.entries())
      this.builder.fact('hatch', id, this.at(day, '08:00'), {
        hatchedOn,
        batchId: batch.id,
        ...(index === 0 && larvae !== undefined ? { larvae } : {}),
      })
    return batch
  }

  /** A group that nobody has moved to yet. */
  group(day: number, from: SnapshotBatch | null): SnapshotGroup {
    return this.builder.group({ settledOn: this.dateOf(day), fromBatchId: from?.id ?? null })
  }

  move(day: number, from: { id: string }, to: { id: string }, number: number): void {
    this.builder.fact('transfer', from.id, this.at(day, '11:00'), { number, toSubjectId: to.id })
  }

  lose(day: number, from: { id: string }, number: number, cause?: string): void {
    const data = { number, of: 'larvae' as const, ...(cause === undefined ? {} : { cause }) }
    this.builder.fact('loss', from.id, this.at(day, '09:00'), data)
  }

  count(day: number, what: { id: string }, of: CountData['of'], ...animals: number[]): void {
    this.builder.fact('count', what.id, this.at(day, '12:00'), { of, animals })
  }

  leave(day: number, from: { id: string }, outcome: Outcome, number: number): void {
    this.builder.fact('outcome', from.id, this.at(day, '15:00'), { outcome, number })
  }

  seeSettled(day: number, batch: { id: string }): void {
    this.builder.fact('observation', batch.id, this.at(day), { signs: ['settled'] })
  }

  eat(batch: { id: string }, food: Food, cultureId: string | null, days: { from: number; to: number }): void {
    const [firstAt, lastAt] = [this.at(days.from, '09:00'), this.at(days.to, '19:00')]
    this.meals.push({ batchId: batch.id, food, cultureId, firstAt, lastAt, times: 3 * (days.to - days.from + 1) })
  }

  /** Written down as in another tank from a day on; gives that tank. */
  house(day: number, what: { id: string }, tankId = this.builder.tank().id): string {
    this.stays.push({ subjectId: what.id, tankId, since: this.at(day, '07:00') })
    return tankId
  }

  end(day: number, what: { id: string }): void {
    this.ended.set(what.id, this.at(day, '20:00'))
  }

  review(today: number): ReviewRoom {
    const { clutches, batches, groups, facts } = this.builder.build()
    const withEnd = <T extends { id: string }>(thing: T) => ({ ...thing, endedAt: this.ended.get(thing.id) ?? null })
    return {
      timeZone: 'UTC',
      today: this.dateOf(today),
      clutches,
      batches: batches.map(withEnd),
      groups: groups.map(withEnd),
      facts,
      meals: this.meals,
      stays: this.stays,
    }
  }
}
