import type { WeanedFood } from '../species/schema.ts'

/** What fish are weaned to, as a title and a step name it. */
export const foodName = (food: WeanedFood): string => `${food} food`
