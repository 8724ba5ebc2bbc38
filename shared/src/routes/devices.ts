import * as z from 'zod/mini'
import { BrokerSchema, ChangeBrokerSchema } from '../broker.ts'
import {
  AlarmSchema,
  ChangeDeviceSchema,
  ChangeGaugeSchema,
  CreatedDeviceSchema,
  DeviceSchema,
  GaugeSchema,
  HandAlarmSchema,
  mostPostBytes,
  NewDeviceSchema,
  NewGaugeSchema,
  PostedReadingsSchema,
  postTypes,
  QuietAlarmSchema,
  SeriesSchema,
} from '../device.ts'
import { MarkSchema } from '../mark.ts'
import { IdSchema, InstantSchema } from '../primitives.ts'
import { CountsFileSchema, ImportedSchema, ImportPreviewSchema } from '../records.ts'
import { wholeInAddress, withDefault } from '../shapes.ts'
import { EmptySchema, inRoom, routesTagged } from './route.ts'

const { get, write, upload } = routesTagged('devices')

const ofDevice = { ...inRoom, deviceId: IdSchema }
const ofGauge = { ...inRoom, gaugeId: IdSchema }
const ofAlarm = { ...inRoom, alarmId: IdSchema }

// A hundred a second: some dozens of devices that post each second from behind one address.
const postsAMinute = 6000

export const deviceRoutes = {
  listDevices: get('/rooms/:roomId/devices', {
    summary: 'Devices, their gauges, and what each last read',
    permission: 'read',
    params: inRoom,
    response: z.array(DeviceSchema),
  }),
  createDevice: write('POST', '/rooms/:roomId/devices', {
    summary: 'Let a device in; its token is shown once',
    permission: 'own',
    params: inRoom,
    body: NewDeviceSchema,
    response: CreatedDeviceSchema,
  }),
  changeDevice: write('PATCH', '/rooms/:roomId/devices/:deviceId', {
    summary: 'Change what a device is called, or where it publishes',
    permission: 'own',
    params: ofDevice,
    body: ChangeDeviceSchema,
    response: DeviceSchema,
  }),
  getBroker: get('/rooms/:roomId/broker', {
    summary: 'The MQTT broker that devices are heard by, and how that goes',
    permission: 'read',
    params: inRoom,
    response: BrokerSchema,
  }),
  changeBroker: write('PUT', '/rooms/:roomId/broker', {
    summary: 'Hear devices by an MQTT broker, or by none',
    carriesPassword: true,
    permission: 'own',
    params: inRoom,
    body: ChangeBrokerSchema,
    response: BrokerSchema,
  }),
  revokeDevice: write('POST', '/rooms/:roomId/devices/:deviceId/revoke', {
    summary: 'Take a device out: its token opens nothing any more',
    permission: 'own',
    params: ofDevice,
    body: EmptySchema,
    response: DeviceSchema,
    status: 200,
  }),
  createGauge: write('POST', '/rooms/:roomId/devices/:deviceId/gauges', {
    summary: 'Say what a device measures, and where',
    permission: 'manage',
    params: ofDevice,
    body: NewGaugeSchema,
    response: GaugeSchema,
  }),
  changeGauge: write('PATCH', '/rooms/:roomId/gauges/:gaugeId', {
    summary: "Change a gauge's limits or put it right",
    permission: 'manage',
    params: ofGauge,
    body: ChangeGaugeSchema,
    response: GaugeSchema,
  }),
  endGauge: write('POST', '/rooms/:roomId/gauges/:gaugeId/end', {
    summary: 'Take a gauge out of use; its readings stay',
    permission: 'manage',
    params: ofGauge,
    body: EmptySchema,
    response: GaugeSchema,
    status: 200,
  }),
  previewReadings: write('POST', '/rooms/:roomId/gauges/:gaugeId/imports/preview', {
    summary: 'What would become of each line of a file of readings; nothing is kept',
    permission: 'manage',
    params: ofGauge,
    body: CountsFileSchema,
    response: ImportPreviewSchema,
    status: 200,
  }),
  importReadings: write('POST', '/rooms/:roomId/gauges/:gaugeId/imports', {
    summary: 'Keep the good lines of a file of readings',
    permission: 'manage',
    params: ofGauge,
    body: CountsFileSchema,
    response: ImportedSchema,
  }),
  undoReadings: write('POST', '/rooms/:roomId/gauges/:gaugeId/imports/:importId/undo', {
    summary: 'Take back all that an import of readings kept, within a day',
    permission: 'manage',
    params: { ...ofGauge, importId: IdSchema },
    body: EmptySchema,
    response: z.object({ struck: z.int() }),
    status: 200,
  }),
  getSeries: get('/rooms/:roomId/gauges/:gaugeId/series', {
    summary: 'A gauge over time, in as many steps as a chart has room for',
    permission: 'read',
    params: ofGauge,
    query: z.strictObject({
      from: InstantSchema,
      to: InstantSchema,
      points: withDefault(wholeInAddress(10, 2000), 400),
    }),
    response: SeriesSchema,
  }),
  listMarks: get('/rooms/:roomId/things/:subjectId/marks', {
    summary: 'What happened in a vessel, for the charts of its gauges',
    permission: 'read',
    params: { ...inRoom, subjectId: IdSchema },
    query: z.strictObject({ from: InstantSchema, to: InstantSchema }),
    response: z.array(MarkSchema),
  }),
  listAlarms: get('/rooms/:roomId/alarms', {
    summary: 'Alarms that stand, then those that are over, newest first',
    permission: 'read',
    params: inRoom,
    response: z.array(AlarmSchema),
  }),
  acknowledgeAlarm: write('POST', '/rooms/:roomId/alarms/:alarmId/acknowledge', {
    summary: 'I have it',
    permission: 'sign_off',
    params: ofAlarm,
    body: EmptySchema,
    response: AlarmSchema,
    status: 200,
  }),
  quietAlarm: write('POST', '/rooms/:roomId/alarms/:alarmId/quiet', {
    summary: 'Tell nobody again for a while',
    permission: 'sign_off',
    params: ofAlarm,
    body: QuietAlarmSchema,
    response: AlarmSchema,
    status: 200,
  }),
  handAlarm: write('POST', '/rooms/:roomId/alarms/:alarmId/hand-over', {
    summary: 'Hand an alarm to somebody else, who is told at once',
    permission: 'sign_off',
    params: ofAlarm,
    body: HandAlarmSchema,
    response: AlarmSchema,
    status: 200,
  }),
  postReadings: upload('/readings', {
    summary: 'Readings of a device: plain JSON, SenML or CSV, as they are or gzipped',
    permission: 'device',
    perMinute: postsAMinute,
    query: z.strictObject({}),
    takes: postTypes,
    mostBytes: mostPostBytes,
    response: PostedReadingsSchema,
  }),
}
