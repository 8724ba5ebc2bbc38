export type WrittenRoom = { origin: string; cookie: string; id: string }
export type Writers = { acknowledged: Set<number>; refusals: string[]; stop(): Promise<void> }

export function openRoom(origin: string, code: string): Promise<WrittenRoom>
export function startWriters(room: WrittenRoom, options?: { writers?: number; restMs?: number }): Writers
export function reckon(
  writers: Pick<Writers, 'acknowledged'>,
  place: { connectionString: string; room: WrittenRoom },
): Promise<{ lost: number; doubled: number }>
