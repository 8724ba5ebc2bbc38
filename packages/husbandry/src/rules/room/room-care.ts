import { roomBatteryAirDefinition } from '../../definitions/room/room-battery-air.ts'
import { roomEquipmentDefinition } from '../../definitions/room/room-equipment.ts'
import { roomToolsDefinition } from '../../definitions/room/room-tools.ts'
import { disinfectionCautions, electricityCautions } from '../../task/cautions.ts'
import { noteField } from '../../task/fields.ts'
import { phrase } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { periodicCare } from '../parts/periodic-care.ts'

const holdsAnything = (snapshot: { tanks: unknown[]; cultures: unknown[] }) =>
  snapshot.tanks.length > 0 || snapshot.cultures.length > 0

export const roomEquipment = periodicCare(roomEquipmentDefinition, {
  verb: 'check',
  act: 'look_over_equipment',
  round: 'first',
  applies: ({ snapshot }) =>
    holdsAnything(snapshot)
      ? {
          title: titled('look_over', { thing: 'air, heaters, pumps and plugs' }),
          steps: [
            phrase('Every vessel bubbles, every heater is warm or off as it should be, nothing drips on a plug.'),
            phrase('Read every thermometer; a degree off is written down and told.'),
            phrase('Listen: a pump that sounds different is about to stop.'),
          ],
          cautions: electricityCautions,
          fields: [noteField()],
          daysWithout: Number.POSITIVE_INFINITY,
        }
      : null,
})

export const roomBatteryAir = periodicCare(roomBatteryAirDefinition, {
  verb: 'test',
  act: 'test_battery_air',
  round: 'middle',
  applies: ({ snapshot }) =>
    holdsAnything(snapshot)
      ? {
          title: titled('test', { thing: 'the battery air' }),
          steps: [
            phrase('Unplug it: it must start by itself within seconds and run for a quarter of an hour.'),
            phrase('Charge or change the battery, plug it in again, and look that it stops.'),
          ],
          cautions: electricityCautions,
          fields: [noteField()],
          daysWithout: Number.POSITIVE_INFINITY,
        }
      : null,
})

export const roomTools = periodicCare(roomToolsDefinition, {
  verb: 'clean',
  act: 'disinfect_tools',
  round: 'last',
  applies: ({ snapshot }) =>
    holdsAnything(snapshot)
      ? {
          title: titled('disinfect', { thing: 'nets, sieves, hoses and beakers' }),
          steps: [
            phrase('Rinse the dirt off first; then the bath for as long as its label says.'),
            phrase('Rinse, neutralise, rinse, and hang to dry, each at its own station.'),
          ],
          cautions: disinfectionCautions,
          daysWithout: Number.POSITIVE_INFINITY,
        }
      : null,
})
