import type { Role, Station, UnitSystem, Verb } from '@fryward/shared'

/** Screen words for every closed list of the contract; `satisfies` makes a new word here a type error until it is said. */
export const roleLabels = {
  owner: 'Owner',
  caretaker: 'Caretaker',
  stand_in: 'Stand-in',
  viewer: 'Viewer',
} as const satisfies Record<Role, string>

export const roleSentences = {
  owner: 'Does everything, and decides who else may.',
  caretaker: 'Does the rounds, changes vessels and rules.',
  stand_in: 'Does the rounds and records what is seen; changes no rules.',
  viewer: 'Reads along.',
} as const satisfies Record<Role, string>

export const stationLabels = {
  microalgae: 'Microalgae',
  live_food: 'Rotifers and live food',
  larvae: 'Larvae',
  juveniles: 'Juveniles',
  broodstock: 'Broodstock',
  quarantine: 'Quarantine',
  room: 'The room',
} as const satisfies Record<Station, string>

/** What the button of a finished task says: the act, done. */
export const verbDoneLabels = {
  feed: 'Fed',
  count: 'Counted',
  harvest: 'Harvested',
  refill: 'Refilled',
  brush: 'Brushed',
  clean: 'Cleaned',
  look: 'Looked',
  top_up: 'Topped up',
  mix: 'Mixed',
  test: 'Tested',
  change_water: 'Water changed',
  siphon: 'Siphoned',
  start: 'Started',
  restart: 'Restarted',
  enrich: 'Enriched',
  move: 'Moved',
  pull: 'Pulled',
  shake: 'Shaken',
  discard: 'Discarded',
  check: 'Checked',
  decide: 'Decided',
} as const satisfies Record<Verb, string>

export const unitSystemLabels = {
  metric: 'Metric: litres and °C',
  us: 'US: gallons and °F',
} as const satisfies Record<UnitSystem, string>
