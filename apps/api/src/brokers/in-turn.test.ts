import { expect, test } from 'vitest'
import { inTurn } from './in-turn.ts'

function later() {
  let end = { resolve: () => {}, reject: (_error: unknown) => {} }
  const promise = new Promise<void>((resolve, reject) => {
    end = { resolve, reject }
  })
  return { promise, ...end }
}
const aTurn = () => new Promise((resolve) => setImmediate(resolve))

test('works end in the order in which they began, however long each takes', async () => {
  const ended: string[] = []
  const turns = inTurn({ most: 5, onError: () => ended.push('failed') })
  const [slow, quick] = [later(), later()]
  await turns.add(slow.promise, () => ended.push('slow'))
  await turns.add(quick.promise, () => ended.push('quick'))
  quick.resolve()
  await aTurn()
  expect(ended).toEqual([])
  slow.resolve()
  await aTurn()
  expect(ended).toEqual(['slow', 'quick'])
})

test('nothing after one that failed is ended, and the failure is told once', async () => {
  const [ended, failures]: unknown[][] = [[], []]
  const turns = inTurn({ most: 5, onError: (error) => failures!.push(error) })
  const works = [later(), later(), later()]
  for (const [index, { promise }] of works.entries()) await turns.add(promise, () => ended!.push(index))
  works[2]?.resolve()
  works[1]?.reject('no database')
  works[0]?.reject('no database either')
  await aTurn()
  expect(ended).toEqual([])
  expect(failures).toEqual(['no database'])
})

test('whoever adds one too many waits for the first to end', async () => {
  const turns = inTurn({ most: 2, onError: () => undefined })
  const [first, second] = [later(), later()]
  await turns.add(first.promise, () => undefined)
  let mayGoOn = false
  const added = turns
    .add(second.promise, () => undefined)
    .then(() => {
      mayGoOn = true
    })
  await aTurn()
  expect(mayGoOn).toBe(false)
  first.resolve()
  await added
  expect(mayGoOn).toBe(true)
})
