import type * as words from '@fryward/shared'
import type * as rows from './generated/enums.ts'

// The lists of words in `shared` and the database enums say the same; a difference stops the compiler here.
type Same<A, B> = [A] extends [B] ? ([B] extends [A] ? true : never) : never
export const vocabularyMatches: {
  Role: Same<words.Role, rows.Role>
  UnitSystem: Same<words.UnitSystem, rows.UnitSystem>
  SubjectKind: Same<words.SubjectKind, rows.SubjectKind>
  TankKind: Same<words.TankKind, rows.TankKind>
  CultureKind: Same<words.CultureKind, rows.CultureKind>
  RotiferStrain: Same<words.RotiferStrain, rows.RotiferStrain>
  CultureEndCause: Same<words.CultureEndCause, rows.CultureEndCause>
  PairSex: Same<words.PairSex, rows.PairSex>
  ClutchIntent: Same<words.ClutchIntent, rows.ClutchIntent>
  TaskState: Same<words.TaskState, rows.TaskState>
  FactKind: Same<words.FactKind, rows.FactKind>
  GaugeQuantity: Same<words.GaugeQuantity, rows.GaugeQuantity>
  AlarmKind: Same<words.AlarmKind, rows.AlarmKind>
  MessageOccasion: Same<words.MessageOccasion, rows.MessageOccasion>
  MessageWay: Same<words.MessageWay, rows.MessageWay>
  MessageState: Same<words.MessageState, rows.MessageState>
} = {
  Role: true,
  UnitSystem: true,
  SubjectKind: true,
  TankKind: true,
  CultureKind: true,
  RotiferStrain: true,
  CultureEndCause: true,
  PairSex: true,
  ClutchIntent: true,
  TaskState: true,
  FactKind: true,
  GaugeQuantity: true,
  AlarmKind: true,
  MessageOccasion: true,
  MessageWay: true,
  MessageState: true,
}
