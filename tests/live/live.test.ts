import { expect, test } from 'vitest'
import { openWorld } from '../support/world.ts'
import { live } from './life.ts'
import { rulesAlone } from './rules-alone.ts'
import { served } from './service.ts'
import { summaryOf, type Tally } from './tally.ts'

// A room for ten days through everything, and for a month by the rules alone, unless `npm run live` says otherwise.
const { LIVE_SEED = '1', LIVE_DAYS, LIVE_ROOMS = '1', LIVE_CRASH, LIVE_TELL, LIVE_ALONE } = process.env
const daysToCrash = LIVE_CRASH ? Number(LIVE_CRASH) : Number.POSITIVE_INFINITY
const given = {
  daysToCrash,
  seed: Number(LIVE_SEED),
  rooms: Number(LIVE_ROOMS),
  tell: LIVE_TELL ? console.log : () => undefined,
}
// Until the first young have moved.
const usualAlone = 32
const days = (usual: number) => Number(LIVE_DAYS ?? usual)
const at = '2026-02-28T05:00:00.000Z'

// Unfiltered and fed by hand: some of that goes with every batch. More is a list that looks on.
const mostPoisoned = 0.25

/** Nothing that the list asks for is refused when it is done as it is asked, and nothing suffers by it. */
function expectWell(tally: Tally): void {
  console.log(summaryOf(tally))
  expect([...new Set(tally.refusals)]).toEqual([])
  expect(tally.hatchesMissed).toBe(0)
  expect(tally.starvedDays).toBe(0)
  expect(tally.underFloor).toBe(0)
  expect(tally.conesLost).toBe(0)
  expect(Object.values(tally.poisoned).filter((share) => share >= mostPoisoned)).toEqual([])
}

/** The same room by the rules alone: what each of its days came to, and all of them. */
let alone: Promise<{ lines: string[]; tally: Tally }> | undefined
const livedAlone = () => {
  alone ??= (async () => {
    const lines: string[] = []
    const tally = await live(rulesAlone(at), { ...given, days: days(usualAlone), print: printInto(lines) })
    return { lines, tally }
  })()
  return alone
}

const printInto = (lines: string[]) => (line: string) => {
  console.log(line)
  lines.push(line)
}

test.skipIf(LIVE_ALONE)(
  'keepers who do what the list says keep rooms over the API, as they do by the rules alone',
  async () => {
    const world = await openWorld({ at })
    const lines: string[] = []
    expectWell(await live(served(world), { ...given, days: days(10), print: printInto(lines) }))
    await world.close()
    if (!LIVE_DAYS) expect((await livedAlone()).lines.slice(0, lines.length)).toEqual(lines)
  },
  86_400_000,
)

test.skipIf(LIVE_DAYS && !LIVE_ALONE)(
  'by the rules alone they keep rooms until young have moved to grow-out',
  async () => {
    const { tally } = await livedAlone()
    expectWell(tally)
    if (days(usualAlone) >= usualAlone) expect(tally.raised).toBeGreaterThan(0)
  },
  86_400_000,
)
