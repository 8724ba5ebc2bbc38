import { effectiveSize, inbreedingPerGeneration, type PedigreeEntry, relationships } from '@fryward/lineage'
import { describe } from 'vitest'
import { type CheckRow, numberInput, testCheckRows, textInput } from './check-rows.ts'

/** "3=1x2; 4=1x?" is animal 3 of sire 1 and dam 2, and 4 of sire 1 and an unknown dam. */
function readPedigree(text: string): PedigreeEntry[] {
  return text.split('; ').map((entry) => {
    const [id = '', parents = ''] = entry.split('=')
    const [sire = '?', dam = '?'] = parents.split('x')
    return { id, sireId: sire === '?' ? null : sire, damId: dam === '?' ? null : dam }
  })
}

const kinOf = (row: CheckRow) => relationships(readPedigree(textInput(row, 'pedigree')))

/** So many generations of brother by sister, from two strangers; the inbreeding of the last. */
function fullSibs(generations: number): number {
  const pedigree: PedigreeEntry[] = [{ id: 'sire 0' }, { id: 'dam 0' }]
  for (let generation = 1; generation <= generations + 1; generation += 1) {
    const parents = { sireId: `sire ${generation - 1}`, damId: `dam ${generation - 1}` }
    pedigree.push({ id: `sire ${generation}`, ...parents }, { id: `dam ${generation}`, ...parents })
  }
  return relationships(pedigree).inbreeding(`sire ${generations + 1}`)
}

/** One male with several females, all half sibs to each other, generation after generation. */
function halfSibs(generations: number): number {
  const dams = generations + 3
  const pedigree: PedigreeEntry[] = [{ id: 'sire 0' }]
  for (let dam = 0; dam < dams; dam += 1) pedigree.push({ id: `dam 0 ${dam}` })
  for (let generation = 1; generation <= generations + 1; generation += 1) {
    const child = (id: string, dam: number) =>
      pedigree.push({ id, sireId: `sire ${generation - 1}`, damId: `dam ${generation - 1} ${dam}` })
    child(`sire ${generation}`, 0)
    for (let dam = 0; dam < dams - generation; dam += 1) child(`dam ${generation} ${dam}`, dam + 1)
  }
  return relationships(pedigree).inbreeding(`sire ${generations + 1}`)
}

describe('pedigree', () => {
  testCheckRows('07-pedigree', {
    inbreeding_F: { compute: (row) => kinOf(row).inbreeding(textInput(row, 'animal')) },
    relationship_a: { compute: (row) => kinOf(row).between(textInput(row, 'i'), textInput(row, 'j')) },
    mendelian_variance_d: { compute: (row) => kinOf(row).mendelianVariance(textInput(row, 'animal')) },
    offspring_F: {
      compute: (row) =>
        kinOf(row).offspringInbreeding({ sireId: textInput(row, 'sire'), damId: textInput(row, 'dam') }),
    },
    full_sib_generations: { compute: (row) => fullSibs(numberInput(row, 'generations')) },
    half_sib_generations: { compute: (row) => halfSibs(numberInput(row, 'generations')) },
    ne_sex_ratio: {
      compute: (row) => effectiveSize({ males: numberInput(row, 'Nm'), females: numberInput(row, 'Nf') }),
    },
    delta_F: { compute: (row) => inbreedingPerGeneration({ effectiveSize: numberInput(row, 'Ne') }) },
  })
})
