/** Every closed list of words, declared once. Zod enums, database enums and screen labels are checked against these. */

export const roles = ['owner', 'caretaker', 'stand_in', 'viewer'] as const
export type Role = (typeof roles)[number]

export const unitSystems = ['metric', 'us'] as const
export type UnitSystem = (typeof unitSystems)[number]

/** What a fact or a task can be about. */
export const subjectKinds = ['room', 'tank', 'culture', 'pair', 'clutch', 'larval_batch', 'juvenile_group'] as const
export type SubjectKind = (typeof subjectKinds)[number]

export const tankKinds = ['broodstock', 'larval', 'grow_out', 'quarantine', 'storage'] as const
export type TankKind = (typeof tankKinds)[number]

export const cultureKinds = ['rotifer', 'copepod', 'microalgae', 'artemia_hatch'] as const
export type CultureKind = (typeof cultureKinds)[number]

/** What a gauge measures. */
export const gaugeQuantities = ['temperature', 'salinity', 'ph', 'oxygen', 'redox', 'level'] as const
export type GaugeQuantity = (typeof gaugeQuantities)[number]

/** `too_fast`: it changes faster than it may; `implausible` and `stuck`: its gauge is not believed. */
export const alarmKinds = ['too_low', 'too_high', 'silent', 'too_fast', 'implausible', 'stuck'] as const
export type AlarmKind = (typeof alarmKinds)[number]

/** Why somebody is told: an alarm stands, it is over, or they asked to try. */
export const messageOccasions = ['raised', 'over', 'trial'] as const
export type MessageOccasion = (typeof messageOccasions)[number]

export const messageWays = ['push', 'mail', 'webhook'] as const
export type MessageWay = (typeof messageWays)[number]

/** `unknown`: it went out and nobody said whether it arrived; `withdrawn`: not sent, since it was no longer so. */
export const messageStates = ['waiting', 'claimed', 'sent', 'failed', 'unknown', 'withdrawn'] as const
export type MessageState = (typeof messageStates)[number]

/** Rotifer strain by size: L (large), S (small), SS (super small). */
export const rotiferStrains = ['L', 'S', 'SS'] as const
export type RotiferStrain = (typeof rotiferStrains)[number]

/** Why a culture ended: its animals died, something else took it over, it was given up in good order, or carried elsewhere. */
export const cultureEndCauses = ['crashed', 'contaminated', 'retired', 'moved'] as const
export type CultureEndCause = (typeof cultureEndCauses)[number]

/** Where eggs are until they hatch: tended on a surface, carried by a parent, or floating free (pelagic). */
export const careKinds = ['nest', 'mouth', 'pouch', 'pelagic'] as const
export type CareKind = (typeof careKinds)[number]
/** Whether a parent carries its eggs and lets young go, rather than leaving eggs that hatch by themselves. */
export const isBrooder = (care: CareKind): boolean => care === 'mouth' || care === 'pouch'

/** What a room may lack for eggs that float: as long as it does, they are not looked for. */
export const eggLookLacks = ['larval_tank', 'grow_out', 'nauplii'] as const
export type EggLookLack = (typeof eggLookLacks)[number]

/** The two fish of a pair. */
export const pairSexes = ['female', 'male'] as const
export type PairSex = (typeof pairSexes)[number]

/** What the keeper means to do with a clutch. */
export const clutchIntents = ['undecided', 'raise_all', 'raise_part', 'leave_with_parents'] as const
export type ClutchIntent = (typeof clutchIntents)[number]

export const clutchStates = ['incubating', 'hatched', 'lost', 'moved', 'void'] as const
export type ClutchState = (typeof clutchStates)[number]

/** What the young of a clutch come through, in order. */
export const survivalStages = ['laid', 'hatched', 'first_feed', 'day_5', 'metamorphosis', 'settled', 'placed'] as const
export type SurvivalStageName = (typeof survivalStages)[number]

/**
 * What is known of a stage: `reached` by as many as stand beside it, `so_far` while some are on their way, `not_yet`,
 * `not_followed` where they were left with their parents, moved away or mixed with others, `unknown` where nobody wrote it.
 */
export const survivalStageStatuses = ['reached', 'so_far', 'not_yet', 'not_followed', 'unknown'] as const
export type SurvivalStageStatus = (typeof survivalStageStatuses)[number]

/** By what clutches are put into groups to be compared. */
/** `green_water` and `artemia_day` are read from the feeds of the first days, as `protocol` is. */
export const comparedBy = [
  'pair',
  'culture',
  'tank',
  'protocol',
  'green_water',
  'artemia_day',
  'species',
  'season',
] as const
export type ComparedBy = (typeof comparedBy)[number]

/** Quarters of the year that keep the cold and the warm months together, by their months. */
export const seasons = ['dec_feb', 'mar_may', 'jun_aug', 'sep_nov'] as const
export type Season = (typeof seasons)[number]

/** What may be concluded of groups; `differ` alone says that they do. */
export const comparisonConclusions = [
  'one_group',
  'no_deaths',
  'too_few_clutches',
  'differ',
  'differ_by_animals_only',
  'no_difference_shown',
] as const
export type ComparisonConclusion = (typeof comparisonConclusions)[number]

/** Why a clutch is in none of the compared groups. */
export const leftOutReasons = ['not_hatched', 'not_counted', 'several', 'not_known', 'too_many_groups'] as const
export type LeftOutReason = (typeof leftOutReasons)[number]

/** Walking order of a round: cleanest water first, so that nothing is carried from the sick to the delicate. */
export const stations = ['microalgae', 'live_food', 'larvae', 'juveniles', 'broodstock', 'quarantine', 'room'] as const
export type Station = (typeof stations)[number]

/** Where on the walk a tank stands: with the animals that live in it. */
export const stationOfTank = {
  larval: 'larvae',
  grow_out: 'juveniles',
  broodstock: 'broodstock',
  quarantine: 'quarantine',
  storage: 'room',
} as const satisfies Record<TankKind, Station>

export const taskStates = ['open', 'done', 'skipped', 'missed', 'withdrawn'] as const
export type TaskState = (typeof taskStates)[number]

/** The one thing a caretaker does in a task. */
export const verbs = [
  'feed',
  'count',
  'harvest',
  'refill',
  'brush',
  'clean',
  'look',
  'top_up',
  'mix',
  'test',
  'change_water',
  'siphon',
  'start',
  'restart',
  'enrich',
  'move',
  'pull',
  'shake',
  'discard',
  'check',
  'decide',
] as const
export type Verb = (typeof verbs)[number]

export const factKinds = [
  'count',
  'harvest',
  'feeding',
  'inoculation',
  'water_change',
  'water_test',
  'loss',
  'transfer',
  'observation',
  'care',
  'spawning',
  'hatch',
  'treatment',
  'outcome',
  'decision',
  'water_reading',
  'cure',
] as const
export type FactKind = (typeof factKinds)[number]

/** Where animals went that are no longer in the room's care; none of them is a death. */
export const outcomes = ['placed', 'kept', 'culled'] as const
export type Outcome = (typeof outcomes)[number]

/** What a task asks somebody to know when they see it; an owner marks a photo of the room's own as what it looks like. */
export const photoLooks = [
  'eggs_orange',
  'eggs_dark',
  'eggs_eyed',
  'eggs_silver',
  'full_bellies',
  'hungry_larvae',
  'settled_larvae',
  'deformed_larvae',
] as const
export type PhotoLook = (typeof photoLooks)[number]

export const lossTargets = ['eggs', 'larvae', 'juveniles', 'adults', 'culture'] as const

/**
 * What was counted; fixes the unit that the count means (per mL, or heads). Of copepods `culture` are the grown and
 * half-grown, which the sieve holds; their nauplii, which are harvested, are counted apart.
 */
export const countTargets = [
  'culture',
  'copepod_nauplii',
  'prey_rotifers',
  'prey_artemia',
  'larvae',
  'eggs',
  'juveniles',
  'algal_cells',
] as const
export type CountTarget = (typeof countTargets)[number]

export const harvestDestinations = ['larval_batch', 'culture', 'other_fish', 'chilled_reserve', 'drain'] as const
export type HarvestDestination = (typeof harvestDestinations)[number]

/** What larvae eat first, by their species. */
export const firstFoods = ['ciliate', 'rotifer', 'copepod', 'artemia'] as const

export const foods = [
  'concentrate',
  'live_microalgae',
  'rotifers',
  'copepods',
  'artemia',
  'dry',
  'frozen',
  'fresh',
] as const
export type Food = (typeof foods)[number]

/** What larvae are fed in their first days: foods, with the algae that green their water as one. */
export const protocolParts = ['rotifers', 'copepods', 'artemia', 'dry', 'frozen', 'fresh', 'green_water'] as const
export type ProtocolPart = (typeof protocolParts)[number]

/** Same-day signs in a culture or a tank that lead trouble. */
export const signs = [
  'swimming_well',
  'swimming_slow',
  'sinking',
  'clumping',
  'foam',
  'bad_smell',
  'ciliates',
  'water_green',
  'water_tinted',
  'water_clear',
  'eggs_seen',
  'no_eggs',
  'larvae_out',
  'fighting',
  'not_eating',
  'gasping',
  'spots_or_wounds',
  'settled',
  'all_well',
] as const
export type Sign = (typeof signs)[number]

/** Egg colour by eye, from laying to the last night. */
export const eggStages = ['orange', 'dark', 'eyed', 'silver'] as const
export type EggStage = (typeof eggStages)[number]

export const careActs = [
  'brush_walls',
  'clean_filter',
  'siphon_bottom',
  'mix_water',
  'shake_bottle',
  'pull_nest',
  'darken',
  'disinfect_tools',
  'look_over_equipment',
  'test_battery_air',
  'move_nest_back',
  'restart_culture',
  'discard',
  'check_backup',
  'discard_reserve',
  'start_artemia',
  'enrich_artemia',
  'enrich_rotifers',
  'test_cysts',
  'decapsulate',
  'check_light',
  'ready_hatch_tank',
  'remove_dead_eggs',
  'fish_arrived',
  'fish_acclimatised',
  'quarantine_goes_on',
  'quarantine_empty',
  'looked_to_place',
  'order_rotifers',
] as const
export type CareAct = (typeof careActs)[number]

/** Units a quantity may carry on the wire; always SI-side, the screen converts. */
export const units = [
  'mL',
  'L',
  'g',
  'per_mL',
  'per_L',
  'animals',
  'eggs',
  'cells',
  'cells_per_mL',
  'cells_per_rotifer_per_day',
  'degC',
  'psu',
  'mg_per_L',
  'pH',
  'mV',
  'cm',
  'lux',
  'minutes',
  'hours',
  'days',
  'per_day',
  'share',
  'times',
  'feeds',
  'samples',
  'nights',
  'um',
  'mm',
] as const
export type Unit = (typeof units)[number]

/** What a gauge's readings are kept and answered in. */
export const unitOfGauge = {
  temperature: 'degC',
  salinity: 'psu',
  ph: 'pH',
  oxygen: 'mg_per_L',
  redox: 'mV',
  level: 'cm',
} as const satisfies Record<GaugeQuantity, Unit>
