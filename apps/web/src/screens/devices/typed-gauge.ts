import type { Gauge, GaugeQuantity, Id, Unit } from '@fryward/shared'
import { changeFactor, toTyped, typedNumber, type UnitVoice } from '@fryward/words'

export type TypedGauge = {
  quantity: GaugeQuantity
  subjectId: Id
} & Record<'key' | 'low' | 'high' | 'forMinutes' | 'silentAfterMinutes' | 'maxPerHour' | 'stuckAfterHours', string>

/** What holds where nothing is typed. */
export const usualOf = (gauge: Gauge | undefined) => ({
  forMinutes: gauge?.forMinutes ?? 10,
  silentAfterMinutes: gauge?.silentAfterMinutes ?? 30,
})
type Usual = ReturnType<typeof usualOf>

/** A gauge as its form begins: its limits in the room's units, or those that a new one begins with. */
export function toTypedGauge(
  gauge: Gauge | undefined,
  { roomId, voice }: { roomId: Id; voice: UnitVoice },
): TypedGauge {
  const usual = usualOf(gauge)
  const unit = gauge?.unit ?? null
  return {
    key: '',
    quantity: gauge?.quantity ?? 'temperature',
    subjectId: roomId,
    low: toTyped(gauge?.low, unit, voice),
    high: toTyped(gauge?.high, unit, voice),
    forMinutes: toTyped(usual.forMinutes, null, voice),
    silentAfterMinutes: toTyped(usual.silentAfterMinutes, null, voice),
    maxPerHour: toTyped(gauge?.maxPerHour && gauge.maxPerHour * changeFactor(gauge.unit, voice), null, voice),
    stuckAfterHours: toTyped(gauge ? gauge.stuckAfterHours : 24, null, voice),
  }
}

/** The limits that were typed; none where nothing was. */
export function typedLimits(typed: TypedGauge, { unit, usual, voice }: { unit: Unit; usual: Usual; voice: UnitVoice }) {
  const maxPerHour = typedNumber(typed.maxPerHour, null, voice)
  return {
    low: typedNumber(typed.low, unit, voice) ?? null,
    high: typedNumber(typed.high, unit, voice) ?? null,
    forMinutes: typedNumber(typed.forMinutes, null, voice) ?? usual.forMinutes,
    silentAfterMinutes: typedNumber(typed.silentAfterMinutes, null, voice) ?? usual.silentAfterMinutes,
    maxPerHour: maxPerHour === undefined ? null : maxPerHour / changeFactor(unit, voice),
    stuckAfterHours: typedNumber(typed.stuckAfterHours, null, voice) ?? null,
  }
}
