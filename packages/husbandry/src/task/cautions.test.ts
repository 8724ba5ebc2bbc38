import { expect, test } from 'vitest'
import * as cautions from './cautions.ts'

const { generalInformation, ...lists } = cautions

test('whatever is warned of is said in whole sentences, and last that local rules and a veterinarian go before', () => {
  expect(generalInformation).toMatch(/local rules.*veterinarian/)
  for (const list of Object.values(lists)) {
    expect(list.length).toBeGreaterThan(1)
    for (const caution of list) expect(caution).toMatch(/^[A-Z].{20,}\.$/)
    expect(list.at(-1)).toBe(generalInformation)
  }
})

test('each names the harm and what keeps it away', () => {
  const said = (list: string[]) => list.join(' ')
  for (const list of [cautions.electricityCautions, cautions.hatchNightCautions])
    expect(said(list)).toMatch(/residual-current.*drip loops/)
  expect(said(cautions.fishWaterCautions)).toMatch(/gloves.*Mycobacterium marinum.*doctor/)
  // Chlorine gas comes of hypochlorite and acid, chloramines of it and ammonia (general chemical safety).
  for (const list of [cautions.decapsulationCautions, cautions.disinfectionCautions])
    expect(said(list)).toMatch(/oggles.*never meets acid or ammonia.*no chlorine/)
  // FAO Fish. Tech. Pap. 361, 4.2.3: the bath of hypochlorite and caustic soda is kept under 40 C, then rinsed and freed of chlorine.
  expect(said(cautions.decapsulationCautions)).toMatch(
    /never water onto caustic soda.*heats itself: have ice ready.*thiosulphate/,
  )
  expect(said(cautions.medicineCautions)).toMatch(/veterinarian has prescribed/)
  for (const list of [cautions.larvaeToPartWithCautions, cautions.releaseCautions])
    expect(said(list)).toMatch(/Never release/)
  expect(said(cautions.larvaeToPartWithCautions)).toMatch(/humanely/)
})
