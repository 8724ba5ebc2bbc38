import { PedigreeSchema } from '@fryward/shared'
import { screen, within } from '@testing-library/react'
import { describe, expect, it } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { newId } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { PedigreePage } from './PedigreePage.tsx'
import { layOut } from './tree-layout.ts'

const species = 'amphiprion-ocellaris'
const pair = (name: string) => ({ id: newId(), kind: 'pair' as const, name })
const [founders, others, young] = [pair('Copper pair'), pair('Juniper pair'), pair('Copper young')]
const clutch = { id: newId(), kind: 'clutch' as const, name: 'Copper, 1 March' }
const fish = (of: typeof founders, sex: 'female' | 'male', parents: typeof founders | null) => ({
  ...{ pair: of, sex, species, isLiving: true, parents, fromClutch: parents && clutch, sameAs: null },
  ...{ generation: parents ? 1 : 0, inbreeding: 0 },
})
const pedigree = PedigreeSchema.parse({
  fish: [founders, others, young].flatMap((of) =>
    (['female', 'male'] as const).map((sex) => fish(of, sex, of === young ? founders : null)),
  ),
  pairs: [founders, others, young].map((of) => ({
    ...{ pair: of, species, isLiving: true, formedOn: null },
    generation: of === young ? 1 : 0,
    offspringInbreeding: of === young ? 0.25 : 0,
  })),
  bySpecies: [{ species, founders: 4, males: 3, females: 3, effectiveSize: 6, inbreedingPerGeneration: 1 / 12 }],
})

describe('the family tree', () => {
  it('stands founders side by side above, and young below their parents with a line from each', () => {
    const { nodes, links } = layOut(pedigree, species)
    const [a, b, child] = nodes
    expect(a?.y).toBe(b?.y)
    expect(b!.x).toBeGreaterThan(a!.x)
    expect(child!.y).toBeGreaterThan(a!.y)
    expect(links.map(({ from, to, sex }) => [from.name, to.name, sex])).toEqual([
      ['Copper pair', 'Copper young', 'female'],
      ['Copper pair', 'Copper young', 'male'],
    ])
    expect(layOut(pedigree, 'amphiprion-percula')).toMatchObject({ nodes: [], links: [] })
  })
})

describe('the pedigree page', () => {
  it('tells descent in words, and tries two fish as a pair before they are one', async () => {
    const asked: unknown[] = []
    answerApi({
      ...{ getPedigree: () => pedigree, listSpecies: () => [], listClutches: () => [] },
      getPairToBe: (request) => {
        asked.push(request)
        return { offspringInbreeding: 0.25, relationship: 0.5, hasUnknownParent: asked.length === 1 }
      },
    })
    const { user } = renderInRoom(<PedigreePage />)
    await screen.findByText(/^A fish whose parents are not known/)
    await user.selectOptions(screen.getByRole('combobox', { name: 'Female' }), 'the one of Copper young')
    await screen.findByText('Young of these two: 25% inbred, as of brother and sister, or parent and child.')
    expect(asked).toHaveLength(2)
    const item = screen.getByRole('link', { name: 'Copper young' }).closest('li')!
    expect(item.textContent).toBe(
      'Copper younggeneration 1female: from Copper, 1 Marchmale: from Copper, 1 Marchyoung: 25% inbred, as of brother and sister, or parent and child',
    )
    expect(within(item).getAllByRole('link', { name: 'Copper, 1 March' })[0]?.getAttribute('href')).toMatch(
      new RegExp(`/clutches/${clutch.id}$`),
    )
  })
})
