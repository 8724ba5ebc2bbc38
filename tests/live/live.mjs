/**
 * `npm run live -- --seed 1 --days 60 --rooms 3 [--crash 60] [--alone] [--tell]`: simulated keepers do exactly what each day's list says, through the API
 * under a moved clock, in rooms whose water and animals follow a model of their own. A line a day and room, and a summary; with
 * --alone by the rules without server and database, ten times as fast; with --tell every task too; with --crash 60 each
 * culture of rotifers begins to die once in so many days, on average.
 */
import { parseArgs } from 'node:util'
import { ensureInstalled } from '../../apps/standalone/build/project.mjs'
import { ensureClient, ensurePrograms } from '../../apps/standalone/build/steps.mjs'
import { runTool } from '../support/steps.mjs'

const number = (name, standard) => ({ [name]: { type: 'string', default: standard } })
const options = {
  ...number('seed', '1'),
  ...number('days', '60'),
  ...number('rooms', '2'),
  crash: { type: 'string' },
  tell: { type: 'boolean' },
  alone: { type: 'boolean' },
}
const { tell, alone, crash, ...always } = parseArgs({ options }).values
const numbers = { ...always, ...(crash === undefined ? {} : { crash }) }
if (tell) process.env.LIVE_TELL = '1'
if (alone) process.env.LIVE_ALONE = '1'
for (const [name, value] of Object.entries(numbers)) {
  if (!/^[1-9]\d*$/.test(value)) {
    console.error(`--${name} is ${value}; give a whole number from 1`)
    process.exit(2)
  }
  process.env[`LIVE_${name.toUpperCase()}`] = value
}
await ensureInstalled()
await ensureClient()
await ensurePrograms()
const list = ['run', 'tests/live/live.test.ts', '--project', 'server', '--disable-console-intercept']
process.exit((await runTool('vitest/vitest.mjs', list)) ? 0 : 1)
