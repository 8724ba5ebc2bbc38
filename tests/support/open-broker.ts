import { createServer, type Server, type Socket } from 'node:net'
import { createServer as createTlsServer } from 'node:tls'
import { Aedes, type Client } from 'aedes'
import { connectAsync, type MqttClient } from 'mqtt'

type Settings = { port?: number; tls?: { cert: string; key: string } }

/** An MQTT broker on this machine that knows one user, and what it heard back. */
export async function openBroker({ port = 0, tls }: Settings = {}) {
  const state = { password: 'sea-salt' }
  const acknowledged: number[] = []
  const comers: string[] = []
  const broker = await Aedes.createBroker({
    authenticate: (client: Client, username, password, done) => {
      comers.push(client.id)
      const knows = username === 'room' && password?.toString() === state.password
      const refusal = Object.assign(new Error('bad user name or password'), { returnCode: 4 })
      if (knows) done(null, true)
      else done(refusal, false)
    },
  })
  broker.on('ack', (packet) => {
    if (packet && 'topic' in packet) acknowledged.push(1)
  })
  const sockets = new Set<Socket>()
  const take = (socket: Socket) => {
    sockets.add(socket)
    socket.on('close', () => sockets.delete(socket))
    broker.handle(socket)
  }
  const server: Server = tls ? createTlsServer(tls, take) : createServer(take)
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve))
  const at = server.address()
  const open = typeof at === 'object' && at ? at.port : 0
  let device: Promise<MqttClient> | undefined
  return {
    ...{ state, acknowledged, comers, port: open, url: `${tls ? 'mqtts' : 'mqtt'}://localhost:${open}` },
    /** As a device of the room's owner does, at QoS 1. */
    publish: async (topic: string, payload: string | Buffer, more: { retain?: boolean } = {}) => {
      device ??= connectAsync(`${tls ? 'mqtts' : 'mqtt'}://localhost:${open}`, {
        ...{ username: 'room', password: state.password, clientId: 'device', rejectUnauthorized: false },
      })
      await (await device).publishAsync(topic, payload, { qos: 1, ...more })
    },
    /** Cuts every line but keeps what is to be delivered. */
    cut: () => {
      for (const socket of sockets) socket.destroy()
    },
    close: async () => {
      await (await device)?.endAsync(true)
      for (const socket of sockets) socket.destroy()
      await new Promise<void>((resolve) => server.close(() => resolve()))
      await new Promise<void>((resolve) => broker.close(() => resolve()))
    },
  }
}
