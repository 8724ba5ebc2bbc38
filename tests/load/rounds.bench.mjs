// A year of a room of 60 vessels, its list drafted anew every morning by the pure engine. The reference is reading the
// same snapshot from JSON once a day, which is what a server pays before it can work anything out.
import { performance } from 'node:perf_hooks'
import { addDays, draftDay, rules } from '@fryward/husbandry'
import { FullYear } from './full-year.mjs'
import { timeUnderLock } from './under-lock.mjs'

const firstDay = '2026-01-05'
const days = 365
// The window of facts is full from the sixtieth day on; before that a day has less to read.
const early = [75, 165]
const late = [275, 365]

export async function run() {
  const year = new FullYear(firstDay)
  const seen = []
  for (let day = 0; day < days; day += 1) {
    const date = addDays(firstDay, day)
    year.begin(date, day)
    const text = JSON.stringify(year.room.build())
    const [snapshot, readMs] = timed(() => JSON.parse(text))
    const [{ drafts }, draftMs] = timed(() => draftDay({ snapshot, date, rules }))
    seen.push({ readMs, draftMs, tasks: drafts.length, facts: snapshot.facts.length, bytes: text.length })
    year.sign(drafts)
  }
  report(seen, year.vessels)
  await timeUnderLock({ snapshot: year.room.build(), date: addDays(firstDay, days - 1) })
}

function timed(work) {
  const from = performance.now()
  const result = work()
  return [result, performance.now() - from]
}

const sum = (days, what) => days.reduce((total, day) => total + day[what], 0)
const mean = (days, what) => sum(days, what) / days.length
const median = (days, what) => [...days].map((day) => day[what]).sort((a, b) => a - b)[Math.floor(days.length / 2)]

function report(seen, vessels) {
  const [before, after] = [seen.slice(...early), seen.slice(...late)]
  const full = seen.slice(early[0])
  console.log(
    `${vessels} vessels, ${days} days: ${mean(full, 'tasks').toFixed(0)} tasks a day (at most ${Math.max(...seen.map(({ tasks }) => tasks))})`,
  )
  console.log(
    `a snapshot          ${mean(full, 'facts').toFixed(0)} facts, ${(mean(full, 'bytes') / 1e6).toFixed(1)} MB`,
  )
  console.log(
    `drafting a day      ${median(before, 'draftMs').toFixed(1)} ms early, ${median(after, 'draftMs').toFixed(1)} ms late`,
  )
  const perFact = (days) => median(days, 'draftMs') / mean(days, 'facts')
  console.log(
    `late to early       ${(median(after, 'draftMs') / median(before, 'draftMs')).toFixed(2)} (1 is flat), a fact ${(perFact(after) / perFact(before)).toFixed(2)}`,
  )
  console.log(
    `the year            ${(sum(seen, 'draftMs') / 1000).toFixed(1)} s, reading the snapshots ${(sum(seen, 'readMs') / 1000).toFixed(1)} s: ratio ${(sum(seen, 'draftMs') / sum(seen, 'readMs')).toFixed(2)}`,
  )
}
