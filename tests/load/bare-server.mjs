// The reference: Fastify and pg, one indexed query of eleven rows, nothing else.
import fastify from 'fastify'
import pg from 'pg'

const pool = new pg.Pool({ connectionString: process.env.DATABASE_URL, max: 10 })
const app = fastify()
app.get('/rows', async () => {
  const found = await pool.query({
    name: 'rows',
    text: 'SELECT id, key, state, due_at FROM task WHERE room_id = $1 AND on_date = current_date LIMIT 11',
    values: [process.env.ROOM_ID],
  })
  return found.rows
})
const url = await app.listen({ host: '127.0.0.1', port: 0 })
process.send?.({ ready: true, url })
