import type {
  CareKind,
  ClutchIntent,
  ClutchState,
  CultureEndCause,
  CultureKind,
  RotiferStrain,
  SubjectKind,
  TankKind,
} from '@fryward/shared'

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

export const cultureEndLabels = {
  crashed: 'It crashed',
  contaminated: 'Something else took it over',
  retired: 'Given up in good order',
  moved: 'Moved elsewhere',
} as const satisfies Record<CultureEndCause, string>

export const strainLabels = {
  L: 'L, large',
  S: 'S, small',
  SS: 'SS, super small',
} as const satisfies Record<RotiferStrain, string>

export const careLabels = {
  nest: 'in a nest',
  mouth: 'in a mouth',
  pouch: 'in a pouch',
  pelagic: 'floating in open water',
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
