import { commonPractice } from '../../engine/parameters.ts'
import { disinfectionCautions, electricityCautions } from '../cautions.ts'
import { noteField } from '../fields.ts'
import { periodicCare } from '../periodic-care.ts'
import { phrase } from '../phrases.ts'

const holdsAnything = (snapshot: { tanks: unknown[]; cultures: unknown[] }) =>
  snapshot.tanks.length > 0 || snapshot.cultures.length > 0

export const roomEquipment = periodicCare({
  id: 'room-equipment',
  title: 'Look over the equipment',
  sentence: 'Look over air, heaters, pumps and plugs every {everyDays} days.',
  subject: 'room',
  station: 'room',
  verb: 'check',
  act: 'look_over_equipment',
  round: 'first',
  everyDays: { default: 1, source: commonPractice('with the first walk of the day') },
  applies: ({ snapshot }) =>
    holdsAnything(snapshot)
      ? {
          title: 'Look over air, heaters, pumps and plugs',
          steps: [
            phrase('Every vessel bubbles, every heater is warm or off as it should be, nothing drips on a plug.'),
            phrase('Read every thermometer; a degree off is worth a word.'),
            phrase('Listen: a pump that sounds different is about to stop.'),
          ],
          cautions: electricityCautions,
          fields: [noteField()],
          daysWithout: Number.POSITIVE_INFINITY,
        }
      : null,
})

export const roomBatteryAir = periodicCare({
  id: 'room-battery-air',
  title: 'Test the battery air',
  sentence: 'Test every battery air pump every {everyDays} days with the mains unplugged.',
  subject: 'room',
  station: 'room',
  verb: 'test',
  act: 'test_battery_air',
  round: 'middle',
  everyDays: { default: 30, source: commonPractice('tested monthly') },
  applies: ({ snapshot }) =>
    holdsAnything(snapshot)
      ? {
          title: 'Test the battery air',
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

export const roomTools = periodicCare({
  id: 'room-tools',
  title: 'Disinfect the tools',
  sentence:
    'Disinfect nets, sieves, hoses and beakers every {everyDays} days, and between stations whenever one must be shared.',
  subject: 'room',
  station: 'room',
  verb: 'clean',
  act: 'disinfect_tools',
  round: 'last',
  everyDays: { default: 7, source: commonPractice('each station its own tools; a weekly bath for all') },
  applies: ({ snapshot }) =>
    holdsAnything(snapshot)
      ? {
          title: 'Disinfect nets, sieves, hoses and beakers',
          steps: [
            phrase('Rinse the dirt off first; then the bath for as long as its label says.'),
            phrase('Rinse, neutralise, rinse, and hang to dry, each at its own station.'),
          ],
          cautions: disinfectionCautions,
          daysWithout: Number.POSITIVE_INFINITY,
        }
      : null,
})
