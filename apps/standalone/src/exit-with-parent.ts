// Preloaded into every part. When the process that started it dies, even by kill -9, the channel between them closes: the
// part then ends too, so that the next start finds the port and the database free.
const GRACE_MS = 3000

function end(): void {
  setTimeout(() => process.exit(1), GRACE_MS).unref()
  process.kill(process.pid, 'SIGTERM')
}

process.on('disconnect', end)
// Listening must not keep a part alive whose own work is done (the demo room's builder ends by itself).
process.channel?.unref()
if (process.send !== undefined && !process.connected) end()
