// Preloaded into every part. When the process that started it dies, even by kill -9, the channel between them closes: the
// part then ends too, so that the next start finds the port and the database free. While it lives, it answers the
// question whether it does: a part that is stopped, or whose event loop never comes round, cannot.
import { alive, areYouAlive } from './alive.ts'

const GRACE_MS = 3000

function end(): void {
  setTimeout(() => process.exit(1), GRACE_MS).unref()
  process.kill(process.pid, 'SIGTERM')
}

process.on('disconnect', end)
process.on('message', (message) => {
  // A channel that closes meanwhile is told by `disconnect`.
  if (message === areYouAlive && process.connected) process.send?.(alive, () => {})
})
// Listening must not keep a part alive whose own work is done (the demo room's builder ends by itself).
process.channel?.unref()
if (process.send !== undefined && !process.connected) end()
