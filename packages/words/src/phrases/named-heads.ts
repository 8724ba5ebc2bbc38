import type { Because } from '@fryward/shared'

/** Labels that say themselves what is counted: "200 larvae by the book", never "200 animals larvae by the book". */
const names = /^(larvae|rotifers|nauplii|fish|Artemia)\b/

/** True where the words behind a number of animals name them. */
export const namesItsHeads = ({ label, quantity }: Pick<Because, 'label' | 'quantity'>): boolean =>
  quantity?.unit === 'animals' && names.test(label)
