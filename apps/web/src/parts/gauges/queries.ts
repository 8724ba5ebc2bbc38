import type { BodyInputOf, Id, Instant } from '@fryward/shared'
import { keepPreviousData, queryOptions, useMutation } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { roomKey, type Typed, useRefreshRoom, useRoomCommand } from '@/parts/rooms/queries.ts'

// A reading makes no event of the room: what a page shows of them is asked again.
const everyMs = 20_000

export const devicesOptions = (roomId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'devices'],
    queryFn: ({ signal }) => call('listDevices', { params: { roomId }, signal }),
    refetchInterval: everyMs,
  })

export const brokerOptions = (roomId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'broker'],
    queryFn: ({ signal }) => call('getBroker', { params: { roomId }, signal }),
    refetchInterval: everyMs,
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

export const marksOptions = (roomId: Id, asked: { subjectId: Id; from: Instant; to: Instant }) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'marks', asked],
    queryFn: ({ signal }) => {
      const { subjectId, ...query } = asked
      return call('listMarks', { params: { roomId, subjectId }, query, signal })
    },
    placeholderData: keepPreviousData,
  })

// A token to keep now, and a door to shut now: neither waits on the device.
export function useCreateDevice(roomId: Id) {
  const refresh = useRefreshRoom(roomId)
  return useMutation({
    mutationFn: (body: BodyInputOf<'createDevice'>) => call('createDevice', { params: { roomId }, body }),
    onSettled: () => void refresh(),
  })
}

// A password, and who may be heard: neither waits on the device.
export function useChangeBroker(roomId: Id) {
  const refresh = useRefreshRoom(roomId)
  return useMutation({
    mutationFn: (body: BodyInputOf<'changeBroker'>) => call('changeBroker', { params: { roomId }, body }),
    onSettled: () => void refresh(),
  })
}

export function useChangeDevice(roomId: Id) {
  const refresh = useRefreshRoom(roomId)
  return useMutation({
    mutationFn: ({ deviceId, ...body }: BodyInputOf<'changeDevice'> & { deviceId: Id }) =>
      call('changeDevice', { params: { roomId, deviceId }, body }),
    onSettled: () => void refresh(),
  })
}

export function useRevokeDevice(roomId: Id) {
  const refresh = useRefreshRoom(roomId)
  return useMutation({
    mutationFn: (deviceId: Id) => call('revokeDevice', { params: { roomId, deviceId }, body: {} }),
    onSettled: () => void refresh(),
  })
}

export const useCreateGauge = (roomId: Id, deviceId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'createGauge', (body) => ({ params: { roomId, deviceId }, body, ...typed }))

export const useChangeGauge = (roomId: Id, gaugeId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'changeGauge', (body) => ({ params: { roomId, gaugeId }, body, ...typed }))

export const useEndGauge = (roomId: Id) =>
  useRoomCommand(roomId, 'endGauge', (gaugeId: Id) => ({ params: { roomId, gaugeId }, body: {} }))

/** Back into use, within a day. */
export const useRestoreGauge = (roomId: Id) =>
  useRoomCommand(roomId, 'restoreGauge', (gaugeId: Id) => ({ params: { roomId, gaugeId }, body: {} }))

/** Lets a device that was taken out in again, within a day. */
export function useRestoreDevice(roomId: Id) {
  const refresh = useRefreshRoom(roomId)
  return useMutation({
    mutationFn: (deviceId: Id) => call('restoreDevice', { params: { roomId, deviceId }, body: {} }),
    onSettled: () => void refresh(),
  })
}

export const useAcknowledgeAlarm = (roomId: Id) =>
  useRoomCommand(roomId, 'acknowledgeAlarm', (alarmId: Id) => ({ params: { roomId, alarmId }, body: {} }))

// Who is woken must not look decided while it is not: neither waits on the device.
export function useQuietAlarm(roomId: Id) {
  const refresh = useRefreshRoom(roomId)
  return useMutation({
    mutationFn: ({ alarmId, minutes }: { alarmId: Id; minutes: number }) =>
      call('quietAlarm', { params: { roomId, alarmId }, body: { minutes } }),
    onSettled: () => void refresh(),
  })
}

export function useHandAlarm(roomId: Id) {
  const refresh = useRefreshRoom(roomId)
  return useMutation({
    mutationFn: ({ alarmId, userId }: { alarmId: Id; userId: string }) =>
      call('handAlarm', { params: { roomId, alarmId }, body: { userId } }),
    onSettled: () => void refresh(),
  })
}

type OfGauge = { roomId: Id; gaugeId: Id }

/** What would become of each line of a file of readings; nothing is kept. */
export const usePreviewReadings = (params: OfGauge) =>
  useMutation({ mutationFn: (text: string) => call('previewReadings', { params, body: { text } }) })

export function useImportReadings(params: OfGauge) {
  const refresh = useRefreshRoom(params.roomId)
  return useMutation({
    mutationFn: (text: string) => call('importReadings', { params, body: { text } }),
    onSettled: () => void refresh(),
  })
}

export function useUndoReadings(params: OfGauge) {
  const refresh = useRefreshRoom(params.roomId)
  return useMutation({
    mutationFn: (importId: Id) => call('undoReadings', { params: { ...params, importId }, body: {} }),
    onSettled: () => void refresh(),
  })
}
