import type { Because } from '@fryward/shared'
import { settingLink } from '../rule/why.ts'
import { feeds } from './measures.ts'

/** By how many feeds a day's ration is divided: as the rule says, or fewer where the room has fewer rounds. */
export function feedsADayLink(given: { feeds: number; wanted: number; parameter: Because }): Because {
  if (given.feeds === given.wanted) return given.parameter
  return settingLink(null, 'rounds of the room', {
    label: 'that the rounds allow',
    quantity: feeds(given.feeds),
    joins: given.parameter.joins,
  })
}
