import type { Device, Id } from '@fryward/shared'
import { gaugeQuantityLabels } from '@fryward/words'

const wordsIn = (text: string) =>
  text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean)

const wordsOf = ({ name, gauges }: Device) =>
  wordsIn(
    [name, ...gauges.flatMap(({ key, subject, quantity }) => [key, subject.name, gaugeQuantityLabels[quantity]])].join(
      ' ',
    ),
  )

/** Devices that hold a word beginning like each typed one, in their names, their gauges' or the vessels' that these hang in. */
export function findDevices(devices: Device[], typed: string): Device[] {
  const words = wordsIn(typed)
  return devices.filter((device) => {
    const held = wordsOf(device)
    return words.every((word) => held.some((one) => one.startsWith(word)))
  })
}

/** Whether an id is the device's own or one of its gauges'. */
export const isOf = (device: Device, id: Id): boolean =>
  device.id === id || device.gauges.some((gauge) => gauge.id === id)
