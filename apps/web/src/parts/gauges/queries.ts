import type { BodyInputOf, Id, Instant } from '@fryward/shared'
import { keepPreviousData, queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { roomKey, useRoomWrite } from '@/parts/rooms/queries.ts'

// A reading makes no event of the room: what a page shows of them is asked again.
const everyMs = 20_000

export const devicesOptions = (roomId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'devices'],
    queryFn: ({ signal }) => call('listDevices', { params: { roomId }, signal }),
    refetchInterval: everyMs,
  })

export const alarmsOptions = (roomId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'alarms'],
    queryFn: ({ signal }) => call('listAlarms', { params: { roomId }, signal }),
  })

export const seriesOptions = (roomId: Id, asked: { gaugeId: Id; from: Instant; to: Instant }) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'series', asked],
    queryFn: ({ signal }) => {
      const { gaugeId, ...query } = asked
      return call('getSeries', { params: { roomId, gaugeId }, query: { ...query, points: 300 }, signal })
    },
    placeholderData: keepPreviousData,
  })

export const useCreateDevice = (roomId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'createDevice'>) => call('createDevice', { params: { roomId }, body }))

export const useRevokeDevice = (roomId: Id) =>
  useRoomWrite(roomId, (deviceId: Id) => call('revokeDevice', { params: { roomId, deviceId }, body: {} }))

export const useCreateGauge = (roomId: Id, deviceId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'createGauge'>) =>
    call('createGauge', { params: { roomId, deviceId }, body }),
  )

export const useChangeGauge = (roomId: Id, gaugeId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'changeGauge'>) => call('changeGauge', { params: { roomId, gaugeId }, body }))

export const useEndGauge = (roomId: Id) =>
  useRoomWrite(roomId, (gaugeId: Id) => call('endGauge', { params: { roomId, gaugeId }, body: {} }))

export const useAcknowledgeAlarm = (roomId: Id) =>
  useRoomWrite(roomId, (alarmId: Id) => call('acknowledgeAlarm', { params: { roomId, alarmId }, body: {} }))
