import { rules } from '@fryward/husbandry'

const places = new Map(rules.map(({ id }, index) => [id, index]))
const placeOf = (ruleId: string) => places.get(ruleId) ?? rules.length

type Listed = { dueAt: Date; ruleId: string; id: string }

/**
 * A list's tasks as a round does them at one vessel, whenever each came onto the list: a harvest that a count has called for
 * stands before the feed that was there in the morning.
 */
export const inWalkingOrder = (one: Listed, other: Listed): number =>
  one.dueAt.getTime() - other.dueAt.getTime() ||
  placeOf(one.ruleId) - placeOf(other.ruleId) ||
  (one.id < other.id ? -1 : 1)
