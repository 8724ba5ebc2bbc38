import { describe, expect, test } from 'vitest'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { batchBook, batchNumbers } from './batch-state.ts'
import { type BookEntry, bookNumber, mostThatMayLeave } from './book.ts'
import { clutchBook, clutchIntent, clutchState } from './clutch-state.ts'
import { groupBook, groupNumbers } from './group-state.ts'

const at = (hour: number) => `2026-03-10T${String(hour).padStart(2, '0')}:00:00.000Z`
const entry = (hour: number, kind: BookEntry['kind'], number: number): BookEntry => ({ at: at(hour), kind, number })

describe('a book', () => {
  test('adds what came and takes away what left, in order of time and not of writing', () => {
    const entries = [entry(9, 'out', 30), entry(8, 'in', 20)]
    expect(bookNumber({ opening: 100, entries })).toBe(90)
    expect(bookNumber({ opening: 10, entries })).toBe(0)
  })

  test('never goes below nothing, and what comes after is there whole', () => {
    expect(bookNumber({ opening: 10, entries: [entry(8, 'out', 15), entry(9, 'in', 7)] })).toBe(7)
  })

  test('begins anew with a count, which tells what was there after everything else of its instant', () => {
    const entries = [entry(8, 'out', 40), entry(9, 'count', 80), entry(9, 'out', 5), entry(10, 'out', 1)]
    expect(bookNumber({ opening: 100, entries })).toBe(79)
  })

  test('says nothing while nobody has said a number', () => {
    const entries = [entry(8, 'out', 40), entry(9, 'in', 3)]
    expect(bookNumber({ opening: null, entries })).toBeNull()
    expect(mostThatMayLeave({ opening: null, entries }, at(9))).toBeNull()
  })
})

describe('what may leave', () => {
  test('earlier than the last entry is what none of the later ones needs', () => {
    const book = { opening: 100, entries: [entry(10, 'out', 70), entry(12, 'in', 50)] }
    expect(mostThatMayLeave(book, at(9))).toBe(30)
    expect(mostThatMayLeave(book, at(11))).toBe(30)
    expect(mostThatMayLeave(book, at(12))).toBe(80)
  })

  test('before a count is held against the time before it alone', () => {
    const book = { opening: 100, entries: [entry(10, 'count', 20)] }
    expect(mostThatMayLeave(book, at(9))).toBe(100)
    expect(mostThatMayLeave(book, at(10))).toBe(100)
    expect(mostThatMayLeave(book, at(11))).toBe(20)
  })
})

describe('the books of a room', () => {
  test('a batch that takes in larvae of another holds both, and the other holds the fewer', () => {
    const room = new SnapshotBuilder()
    const [one, other] = [100, 40].map((larvae) => room.batch({ hatchedOn: '2026-03-09', larvae }))
    room.fact('transfer', other!.id, at(9), { number: 15, toSubjectId: one!.id })
    expect(batchNumbers(room.build(), one!)).toMatchObject({ hatched: 100, now: 115 })
    expect(batchNumbers(room.build(), other!)).toMatchObject({ moved: 15, now: 25 })
  })

  test('a sampled count of larvae is no head count and leaves the book as it is', () => {
    const room = new SnapshotBuilder()
    const batch = room.batch({ hatchedOn: '2026-03-09', larvae: 100 })
    room.fact('count', batch.id, at(9), { of: 'larvae', animals: [3, 4], volumeMl: 100 })
    expect(bookNumber(batchBook(room.build(), batch.id))).toBe(100)
  })

  test('a group may have lost fish before the move that it began with was written down, not before it was counted', () => {
    const room = new SnapshotBuilder()
    const batch = room.batch({ hatchedOn: '2026-02-01', larvae: 100 })
    const moved = room.group({ settledOn: '2026-03-09' })
    room.fact('transfer', batch.id, at(10), { number: 30, toSubjectId: moved.id })
    room.fact('loss', moved.id, at(8), { number: 2, of: 'juveniles' })
    expect(groupNumbers(room.build(), moved)).toMatchObject({ arrived: 30, lost: 2, now: 28 })
    expect(mostThatMayLeave(groupBook(room.build(), moved.id), at(8))).toBe(28)
    const bought = room.group({ settledOn: '2026-03-10', number: 12 })
    room.fact('transfer', batch.id, at(11), { number: 5, toSubjectId: bought.id })
    expect(groupNumbers(room.build(), bought).now).toBe(17)
  })

  test('a clutch is lost when its last egg is, by the count since', () => {
    const room = new SnapshotBuilder()
    const clutch = room.clutch(room.pair(), { spawnedAt: at(1), eggs: 100 })
    room.fact('loss', clutch.id, at(2), { number: 60, of: 'eggs' })
    room.fact('count', clutch.id, at(3), { of: 'eggs', animals: [50] })
    expect(clutchState(room.build(), clutch)).toBe('incubating')
    expect(mostThatMayLeave(clutchBook(room.build(), clutch.id), at(4))).toBe(50)
    room.fact('loss', clutch.id, at(5), { number: 50, of: 'eggs' })
    expect(clutchState(room.build(), clutch)).toBe('lost')
  })

  test('what is meant with a clutch is what was decided last and still stands', () => {
    const room = new SnapshotBuilder()
    const clutch = room.clutch(room.pair(), { spawnedAt: at(1), intent: 'undecided' })
    expect(clutchIntent(room.build(), clutch)).toBe('undecided')
    room.fact('decision', clutch.id, at(4), { intent: 'raise_part' })
    room.fact('decision', clutch.id, at(3), { intent: 'raise_all' })
    expect(clutchIntent(room.build(), clutch)).toBe('raise_part')
    room.snapshot.facts = room.snapshot.facts.filter((fact) => fact.at !== at(4))
    expect(clutchIntent(room.build(), clutch)).toBe('raise_all')
  })
})
