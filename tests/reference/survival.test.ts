import {
  clopperPearsonInterval,
  type Interval,
  kaplanMeier,
  logRank,
  type Observation,
  poissonInterval,
  proportionDifferenceInterval,
  type SurvivalStep,
  survivalAt,
  wilsonInterval,
} from '@fryward/survival'
import { describe } from 'vitest'
import { type CheckRow, type Handling, numberInput, testCheckRows, textInput } from './check-rows.ts'

/** The end of an interval that a row prints. */
function end(row: CheckRow, interval: Interval): number {
  return row.output === 'lower' ? interval.lower : interval.upper
}

describe('intervals for counts', () => {
  const counted = (row: CheckRow) =>
    end(row, poissonInterval({ count: numberInput(row, 'count'), level: numberInput(row, 'level') }))

  testCheckRows('05a-count-ci', {
    poisson_exact_ci: { compute: counted },
    poisson_exact_rate_ci: { compute: (row) => counted(row) / numberInput(row, 'exposure') },
    smr_exact_ci: { compute: (row) => (counted(row) * numberInput(row, 'smr')) / numberInput(row, 'count') },
  })
})

describe('intervals for shares', () => {
  const share = (row: CheckRow) => ({
    successes: numberInput(row, 'x'),
    trials: numberInput(row, 'n'),
    level: numberInput(row, 'level'),
  })

  testCheckRows('05b-proportion-ci', {
    wilson_ci: { compute: (row) => end(row, wilsonInterval(share(row))) },
    clopper_pearson_ci: { compute: (row) => end(row, clopperPearsonInterval(share(row))) },
    newcombe_difference_ci: {
      compute: (row) =>
        end(
          row,
          proportionDifferenceInterval({
            a: { successes: numberInput(row, 'x1'), trials: numberInput(row, 'n1') },
            b: { successes: numberInput(row, 'x2'), trials: numberInput(row, 'n2') },
            level: numberInput(row, 'level'),
          }),
        ),
    },
    // A second opinion: the continuity correction widens the Wilson interval, by less than one animal in n.
    wilson_cc_ci: {
      compute: (row) => end(row, wilsonInterval(share(row))),
      tolerance: (row) => 1 / numberInput(row, 'n'),
    },
  })
})

/** "6 6+ 7" is two deaths, at 6 and 7, and one animal last seen alive at 6. */
function observations(text: string): Observation[] {
  return text.split(' ').map((word) => ({ time: Number.parseFloat(word), event: !word.endsWith('+') }))
}

function stepOf(row: CheckRow): SurvivalStep {
  const step = survivalAt(kaplanMeier(observations(textInput(row, 'data'))), numberInput(row, 't'))
  if (step === null) throw new Error(`${row.id}: no death by ${String(row.inputs.t)}`)
  return step
}

const ofStep = (pick: (step: SurvivalStep) => number): Handling => ({ compute: (row) => pick(stepOf(row)) })

function test2Groups(row: CheckRow) {
  return logRank([observations(textInput(row, 'group1')), observations(textInput(row, 'group2'))])
}

const ofTest = (pick: (result: ReturnType<typeof logRank>) => number | undefined): Handling => ({
  compute: (row) => pick(test2Groups(row)) ?? Number.NaN,
})

describe('survival curves and the log-rank test', () => {
  testCheckRows('05c-survival', {
    'kaplan_meier S': ofStep((step) => step.survival),
    'kaplan_meier n_at_risk': ofStep((step) => step.atRisk),
    'kaplan_meier se_greenwood': ofStep((step) => step.standardError),
    'kaplan_meier lower_log': ofStep((step) => step.lower),
    'kaplan_meier upper_log': ofStep((step) => step.upper),
    median_survival: { compute: (row) => kaplanMeier(observations(textInput(row, 'data'))).median ?? Number.NaN },
    'logrank chi2': ofTest((result) => result.chiSquare),
    'logrank O1': ofTest((result) => result.observed[0]),
    'logrank E1': ofTest((result) => result.expected[0]),
    'logrank O2': ofTest((result) => result.observed[1]),
    'logrank E2': ofTest((result) => result.expected[1]),
    'logrank V': ofTest((result) => result.covariance[0]?.[0]),
    'logrank p': ofTest((result) => result.pValue),
  })
})

describe('mark and recapture', () => {
  const leftOut = 'fry are too small to mark and recapture: no public function counts them that way'
  testCheckRows('05d-chapman', { chapman: { leftOut }, lincoln_petersen: { leftOut } })
})
