import { DeviceSchema, GaugeSchema } from '../device.ts'
import { FactSchema } from '../facts/fact.ts'
import { IdSchema } from '../primitives.ts'
import { ReopenedThingSchema, ReopenSchema } from '../reopening.ts'
import { EmptySchema, inRoom, routesTagged } from './route.ts'

const { write } = routesTagged('reopening')

/** What was ended or struck out by mistake, within a day. */
export const reopeningRoutes = {
  reopenThing: write('POST', '/rooms/:roomId/things/:subjectId/reopen', {
    summary: 'Take back the end of a tank, culture, pair, batch or group',
    permission: 'manage',
    params: { ...inRoom, subjectId: IdSchema },
    body: ReopenSchema,
    response: ReopenedThingSchema,
    status: 200,
  }),
  restoreFact: write('POST', '/rooms/:roomId/facts/:factId/restore', {
    summary: 'Enter what was struck out again, as it was',
    permission: 'record',
    params: { ...inRoom, factId: IdSchema },
    body: EmptySchema,
    response: FactSchema,
  }),
  restoreGauge: write('POST', '/rooms/:roomId/gauges/:gaugeId/restore', {
    summary: 'Put a gauge back into use',
    permission: 'manage',
    params: { ...inRoom, gaugeId: IdSchema },
    body: EmptySchema,
    response: GaugeSchema,
    status: 200,
  }),
  restoreDevice: write('POST', '/rooms/:roomId/devices/:deviceId/restore', {
    summary: 'Let a device in again, with the token that it has',
    permission: 'own',
    params: { ...inRoom, deviceId: IdSchema },
    body: EmptySchema,
    response: DeviceSchema,
    status: 200,
  }),
}
