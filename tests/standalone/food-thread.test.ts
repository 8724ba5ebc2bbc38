import { spawnSync } from 'node:child_process'
import { describe, expect, it } from 'vitest'
import { ensurePrograms } from '../../apps/standalone/build/steps.mjs'
import { root } from '../support/project-root.ts'

/** A program of its own, as a server is one: a room of one culture and one batch, its food worked out in the thread. */
const program = `
  import { SnapshotBuilder } from './packages/husbandry/dist/testing/snapshot-builder.js'
  import { steadyCulture } from './packages/husbandry/dist/testing/steady-culture.js'
  import { foodThread, thinkHere } from '@fryward/room'
  const room = new SnapshotBuilder()
  const culture = steadyCulture(room, { date: '2026-03-10' })
  room.feedLink(room.batch({ hatchedOn: '2026-03-08', larvae: 200 }), culture)
  const horizon = { today: '2026-03-10', days: 14, futures: 20 }
  const job = { snapshot: room.build(), asked: { horizon, record: { crashes: 0, cultureDays: 0, lived: [] } } }
  const thread = foodThread()
  const bad = { ...job, asked: { ...job.asked, horizon: { ...horizon, days: 99 } } }
  const refused = await thread.answer(bad).catch((error) => error.message)
  const [there, here] = await Promise.all([thread.answer(job), thinkHere.answer(job)])
  const crash = await thread.whatIf(job, [{ kind: 'culture_crashes', cultureId: culture.id }])
  const turnedAway = (error) => error.code
  const many = Array.from({ length: 21 }, () => thread.whatIf(job, []).catch(turnedAway))
  const [last] = await Promise.all([many.at(-1), thread.close()])
  const closed = [...new Set(await Promise.all([many[0], thread.answer(job).catch(turnedAway)]))]
  const isSame = JSON.stringify(there) === JSON.stringify(here)
  console.log(JSON.stringify({ refused, isSame, last, closed, days: there.outlook.days.length, worry: crash.after.worry }))
`

describe('the thread that works out food', () => {
  it('answers as one would here, says what it refuses, and holds no program up that is done', async () => {
    await ensurePrograms(() => {})
    const run = spawnSync(process.execPath, ['--input-type=module', '-e', program], { cwd: root, encoding: 'utf8' })
    expect(run.stderr).toBe('')
    const told = JSON.parse(run.stdout)
    expect(told).toMatchObject({ isSame: true, days: 14, worry: { date: '2026-03-11', chanceShort: 1 } })
    expect(told.refused).toMatch(/days is 99/)
    // One more than may wait is turned away; those under way when it is closed are told so, and whoever comes later.
    expect(told).toMatchObject({ last: 'busy', closed: ['unavailable'] })
  })
})
