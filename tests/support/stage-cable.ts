import { createServer, connect as openSocket, type Socket } from 'node:net'

/** A network cable between a browser and the server, to be pulled out and put back. */
export type Cable = { origin: string; pull: () => void; plugIn: () => void; close: () => Promise<void> }

/**
 * A TCP proxy whose sockets are destroyed when it is pulled: the browser's own offline switch would not cut streams that
 * are open already.
 */
export async function layCable(port: number): Promise<Cable> {
  const sockets = new Set<Socket>()
  let isPulled = false
  const keep = (socket: Socket) => {
    sockets.add(socket)
    socket.on('close', () => sockets.delete(socket))
    // A cut connection is what this is for.
    socket.on('error', () => socket.destroy())
  }
  const server = createServer((near) => {
    keep(near)
    if (isPulled) return near.destroy()
    const far = openSocket({ port, host: '127.0.0.1' })
    keep(far)
    near.pipe(far).pipe(near)
    near.on('close', () => far.destroy())
    far.on('close', () => near.destroy())
  })
  const destroyAll = () => {
    for (const socket of sockets) socket.destroy()
  }
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const address = server.address()
  if (address === null || typeof address === 'string') throw new Error('The proxy has no port')
  return {
    origin: `http://127.0.0.1:${address.port}`,
    pull: () => {
      isPulled = true
      destroyAll()
    },
    plugIn: () => {
      isPulled = false
    },
    close: () => {
      destroyAll()
      return new Promise((resolve) => server.close(() => resolve()))
    },
  }
}
