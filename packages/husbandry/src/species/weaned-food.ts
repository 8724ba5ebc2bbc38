import type { Food } from '@fryward/shared'
import { findSpecies } from './catalogue.ts'
import { type WeanedFood, weanedFoods } from './schema.ts'

/** What fish of a species live on once they are weaned: dry food, where nobody says otherwise. */
export const weanedFoodOf = (species: string): WeanedFood => findSpecies(species)?.feeding.weanedTo.value ?? 'dry'

/** Whether a feed is no live food, whichever of the two the fish are weaned to: one may be given for the other. */
export const isWeanedFood = (food: Food): food is WeanedFood => weanedFoods.some((one) => one === food)
