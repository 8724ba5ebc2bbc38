import loadHighs from 'highs'
import type { Program } from './program.ts'

type Solution = { Status: string; ObjectiveValue: number; Columns: Record<string, { Primal?: number | null }> }
type Highs = { solve: (program: string, options: object) => Solution }

// One thread and a fixed seed, and no limit in time: the same question has the same answer on any machine.
const limits = { threads: 1, random_seed: 1, output_flag: false } as const

/** As near as a solver comes: of an average day's food, and of what is missing. */
export const nothing = 1e-6

let loaded: Promise<Highs> | null = null

export type Solved = { cost: number; amountOf: (name: string) => number }

/** The cheapest answer to a program, which must have one. */
export async function solve(program: Program): Promise<Solved> {
  if (program.rows.length === 0) return { cost: 0, amountOf: () => 0 }
  loaded ??= (loadHighs as unknown as () => Promise<Highs>)()
  const highs = await loaded
  try {
    const { Status, ObjectiveValue, Columns } = highs.solve(asText(program), limits)
    if (Status !== 'Optimal') throw new Error(`The solver ended as "${Status}"`)
    return { cost: ObjectiveValue, amountOf: (name) => Math.max(0, Columns[name]?.Primal ?? 0) }
  } catch (error) {
    // A solver that has stumbled may do so at every later program: the next one gets a new one.
    loaded = null
    throw error
  }
}

/** The program in the words that solvers read (CPLEX LP format). */
function asText({ variables, rows }: Program): string {
  const costs = variables.filter(({ cost }) => cost !== 0).map(({ name, cost }) => [name, cost] as const)
  return [
    ...['Minimize', ` cost: ${sum(costs)}`, 'Subject To'],
    ...rows.map(({ terms, way, bound }, index) => ` c${index}: ${sum(terms)} ${way} ${bound}`),
    'Bounds',
    ...variables.map(({ name, from, to }) => ` ${from} <= ${name} <= ${to}`),
    'End',
  ].join('\n')
}

const sum = (terms: readonly (readonly [name: string, factor: number])[]): string =>
  terms.map(([name, factor]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`).join(' ')
