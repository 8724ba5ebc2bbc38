import type {
  CareAct,
  CareKind,
  ClutchIntent,
  ClutchState,
  ComparedBy,
  CountTarget,
  CultureKind,
  EggStage,
  FactKind,
  Food,
  HarvestDestination,
  LeftOutReason,
  Outcome,
  Role,
  RotiferStrain,
  Season,
  Sign,
  Station,
  SubjectKind,
  SurvivalStageName,
  TankKind,
  UnitSystem,
  Verb,
} from '@fryward/shared'

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

export const tankKindLabels = {
  broodstock: 'Broodstock',
  larval: 'Larval',
  grow_out: 'Grow-out',
  quarantine: 'Quarantine',
  storage: 'Stored water',
} as const satisfies Record<TankKind, string>

export const cultureKindLabels = {
  rotifer: 'Rotifers',
  copepod: 'Copepods',
  microalgae: 'Microalgae',
  artemia_hatch: 'Artemia hatch',
} as const satisfies Record<CultureKind, string>

export const strainLabels = {
  L: 'L, large',
  S: 'S, small',
  SS: 'SS, super small',
} as const satisfies Record<RotiferStrain, string>

export const careLabels = {
  nest: 'in a nest',
  mouth: 'in a mouth',
  pouch: 'in a pouch',
} as const satisfies Record<CareKind, string>

export const intentLabels = {
  undecided: 'Not decided yet',
  raise_all: 'Raise all',
  raise_part: 'Raise a part',
  leave_with_parents: 'Leave with the parents',
} as const satisfies Record<ClutchIntent, string>

export const clutchStateLabels = {
  incubating: 'Eggs in the nest',
  hatched: 'Hatched',
  lost: 'Lost',
  moved: 'Moved',
  void: 'Recorded by mistake',
} as const satisfies Record<ClutchState, string>

export const subjectLabels = {
  room: 'Room',
  tank: 'Tank',
  culture: 'Culture',
  pair: 'Pair',
  clutch: 'Clutch',
  larval_batch: 'Larval batch',
  juvenile_group: 'Juvenile group',
} as const satisfies Record<SubjectKind, string>

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

export const factKindLabels = {
  count: 'Count',
  harvest: 'Harvest',
  feeding: 'Feeding',
  inoculation: 'Animals put in',
  water_change: 'Water change',
  water_test: 'Water test',
  loss: 'Loss',
  transfer: 'Move',
  observation: 'Seen',
  care: 'Care',
  spawning: 'Eggs laid',
  hatch: 'Hatch',
  treatment: 'Treatment',
  outcome: 'Left the group',
  decision: 'Decision',
} as const satisfies Record<FactKind, string>

export const countTargetLabels = {
  culture: 'The culture',
  copepod_nauplii: 'Copepod nauplii',
  prey_rotifers: 'Rotifers in the water',
  prey_artemia: 'Artemia in the water',
  larvae: 'Larvae',
  eggs: 'Eggs',
  juveniles: 'Juveniles',
  algal_cells: 'Algal cells',
} as const satisfies Record<CountTarget, string>

/** Where fish went that are no longer in the room's care; none of them is a death. */
export const outcomeLabels = {
  placed: 'placed',
  kept: 'kept for breeding',
  culled: 'culled',
} as const satisfies Record<Outcome, string>

export const destinationLabels = {
  larval_batch: 'A larval batch',
  culture: 'Another culture',
  other_fish: 'Other fish',
  chilled_reserve: 'Chilled reserve',
  drain: 'The drain',
} as const satisfies Record<HarvestDestination, string>

export const foodLabels = {
  concentrate: 'Microalgae concentrate',
  live_microalgae: 'Live microalgae',
  rotifers: 'Rotifers',
  copepods: 'Copepods',
  artemia: 'Artemia',
  dry: 'Dry food',
  frozen: 'Frozen food',
  fresh: 'Fresh food',
} as const satisfies Record<Food, string>

export const signLabels = {
  swimming_well: 'Swimming well',
  swimming_slow: 'Swimming slowly',
  sinking: 'Sinking',
  clumping: 'Clumping',
  foam: 'Foam',
  bad_smell: 'Bad smell',
  ciliates: 'Ciliates',
  water_green: 'Water green',
  water_tinted: 'Water tinted',
  water_clear: 'Water clear',
  eggs_seen: 'Eggs seen',
  no_eggs: 'No eggs',
  fighting: 'Fighting',
  not_eating: 'Not eating',
  gasping: 'Gasping',
  spots_or_wounds: 'Spots or wounds',
  settled: 'Most barred and settled',
  all_well: 'All well',
} as const satisfies Record<Sign, string>

export const eggStageLabels = {
  orange: 'Orange',
  dark: 'Dark',
  eyed: 'Eyed',
  silver: 'Silver eyes',
} as const satisfies Record<EggStage, string>

export const careActLabels = {
  brush_walls: 'Walls brushed',
  clean_filter: 'Filter cleaned',
  siphon_bottom: 'Bottom siphoned',
  mix_water: 'Water mixed',
  shake_bottle: 'Bottle shaken',
  pull_nest: 'Nest pulled',
  darken: 'Darkened',
  disinfect_tools: 'Tools disinfected',
  look_over_equipment: 'Equipment looked over',
  test_battery_air: 'Battery air tested',
  move_nest_back: 'Nest moved back',
  restart_culture: 'Culture restarted',
  discard: 'Discarded',
  check_backup: 'Backup checked',
  discard_reserve: 'Chilled reserve discarded',
  start_artemia: 'Artemia cysts started',
  enrich_artemia: 'Artemia enriched',
  check_light: 'Light checked',
  ready_hatch_tank: 'Hatch tank made ready',
  remove_dead_eggs: 'Dead eggs taken out',
} as const satisfies Record<CareAct, string>

export const unitSystemLabels = {
  metric: 'Metric: litres and °C',
  us: 'US: gallons and °F',
} as const satisfies Record<UnitSystem, string>

/** What the young of a clutch come through; `settled` are counted as they are moved to grow-out. */
export const survivalStageLabels = {
  laid: 'Eggs laid',
  hatched: 'Hatched',
  first_feed: 'First food',
  day_5: 'Day 5',
  metamorphosis: 'Metamorphosis',
  settled: 'Settled',
  placed: 'Placed or kept',
} as const satisfies Record<SurvivalStageName, string>

export const comparedByLabels = {
  pair: 'Pair',
  culture: 'Culture they ate from',
  tank: 'Tank',
  species: 'Species',
  season: 'Season',
} as const satisfies Record<ComparedBy, string>

export const seasonLabels = {
  dec_feb: 'December to February',
  mar_may: 'March to May',
  jun_aug: 'June to August',
  sep_nov: 'September to November',
} as const satisfies Record<Season, string>

export const leftOutLabels = {
  not_hatched: 'not hatched, or not raised',
  not_counted: 'not counted again since the hatch',
  several: 'in more than one group at once',
  not_known: 'in a group that is not known',
  too_many_groups: 'in groups smaller than the twelve largest',
} as const satisfies Record<LeftOutReason, string>
