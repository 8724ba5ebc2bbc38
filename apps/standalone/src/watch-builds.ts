import { watch } from 'node:fs'
import { join } from 'node:path'
import type { Part } from './parts/part.ts'
import { messageOf } from './start-problem.ts'

export type WatchBuilds = { root: string; parts: { api: Part; scheduler: Part }; log: (sentence: string) => void }

const QUIET_MS = 300 // the compiler writes many files in a burst

/** For `npm run dev`: restarts the API and the scheduler when the compiler has written new files. Returns what ends it. */
export function watchBuilds({ root, parts, log }: WatchBuilds): () => void {
  let timer: NodeJS.Timeout | undefined
  const restart = async () => {
    log('The code changed; starting the API and the scheduler again.')
    try {
      await Promise.all([parts.api.restart(), parts.scheduler.restart()])
    } catch (thrown) {
      log(messageOf(thrown))
    }
  }
  const folders = ['shared/dist', 'packages', 'apps/api/dist', 'apps/scheduler/dist']
  const watchers = folders.map((folder) =>
    watch(join(root, folder), { recursive: true }, (_event, file) => {
      const isBuilt = file !== null && /\.js$/.test(file) && (folder !== 'packages' || file.includes('dist'))
      if (!isBuilt) return
      clearTimeout(timer)
      timer = setTimeout(restart, QUIET_MS)
    }),
  )
  return () => {
    clearTimeout(timer)
    for (const watcher of watchers) watcher.close()
  }
}
