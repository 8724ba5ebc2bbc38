import { expect, test } from 'vitest'
import { rulesPage } from '../testing/rules-page.ts'
import { rules } from './index.ts'

test('RULES.md lists every rule as it is: what sets it off, how much, and the source of each number', async () => {
  const page = rulesPage(rules)
  for (const { id } of rules) expect(page).toContain(`\`${id}\``)
  expect(page).not.toMatch(/[{}]|undefined/)
  await expect(page).toMatchFileSnapshot('../../RULES.md')
})
