/** The WebAssembly build of PostgreSQL behind a port, for machines without a server. It has a single session; here the
 *  connections share it in turns: one keeps it until its transaction is over, and its prepared statements bear its number.
 *  Messages as in postgresql.org/docs/current/protocol-message-formats.html. */
import { createServer, type Server, type Socket } from 'node:net'
import type { PGlite } from '@electric-sql/pglite'

export type WasmPort = { readonly port: number; readonly close: () => Promise<void> }

type Turns = { free: Promise<void> }

/** Numbers are not used again: the session outlives a port that is closed and opened. */
let connections = 0

/** Serves `db` on a loopback port, 0 for any free one. */
export async function servePglite(db: PGlite, port: number): Promise<WasmPort> {
  const turns: Turns = { free: Promise.resolve() }
  const open = new Set<Socket>()
  const server: Server = createServer((socket) => {
    open.add(socket)
    socket.on('close', () => open.delete(socket))
    serve(db, socket, ++connections, turns)
  })
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen(port, '127.0.0.1', resolve)
  })
  const address = server.address()
  return {
    port: typeof address === 'object' && address ? address.port : port,
    close: async () => {
      const closed = new Promise((resolve) => server.close(resolve))
      for (const socket of open) socket.destroy()
      await closed
      await turns.free
    },
  }
}

const SSL_REQUEST = 80_877_103
const message = (type: string, body: Buffer): Buffer => {
  const length = Buffer.alloc(4)
  length.writeInt32BE(body.length + 4)
  return Buffer.concat([Buffer.from(type), length, body])
}
const GREETING = Buffer.concat([
  message('R', Buffer.alloc(4)), // AuthenticationOk
  ...['client_encoding\0UTF8\0', 'server_version\x0017.0\0'].map((s) => message('S', Buffer.from(s))),
  message('K', Buffer.alloc(8)), // BackendKeyData
  message('Z', Buffer.from('I')), // ReadyForQuery
])

function serve(db: PGlite, socket: Socket, number: number, turns: Turns): void {
  let waiting: Buffer = Buffer.alloc(0)
  let greeted = false
  let batch: Buffer[] = []
  let work = Promise.resolve()
  /** Ends this connection's turn; null while it is not its turn. */
  let endTurn: (() => void) | null = null

  const take = async () => {
    if (endTurn) return
    const before = turns.free
    let end = () => {}
    turns.free = new Promise((resolve) => {
      end = resolve
    })
    await before
    endTurn = end
  }
  const run = async (messages: readonly Buffer[]) => {
    await take()
    let status = 'I'
    for (const one of [Buffer.concat(messages)]) {
      const reply = Buffer.from(await db.execProtocolRaw(one))
      if (socket.writable) socket.write(new Uint8Array(reply))
      status = statusIn(reply) ?? status
    }
    if (status === 'I') leave()
  }
  const leave = () => {
    endTurn?.()
    endTurn = null
  }
  socket.on('error', () => {})
  socket.on('close', () => {
    work = work
      .then(async () => {
        if (endTurn) await db.exec('ROLLBACK')
      })
      .catch(() => {})
      .finally(leave)
  })
  socket.on('data', (chunk: Buffer) => {
    waiting = Buffer.concat([waiting, chunk])
    for (;;) {
      const start = greeted ? 1 : 0
      if (waiting.length < start + 4) return
      const length = start + waiting.readInt32BE(start)
      if (waiting.length < length) return
      const one = Buffer.from(waiting.subarray(0, length))
      waiting = waiting.subarray(length)
      if (!greeted) {
        const ssl = one.readInt32BE(4) === SSL_REQUEST
        socket.write(new Uint8Array(ssl ? Buffer.from('N') : GREETING))
        greeted = !ssl
        continue
      }
      const type = String.fromCharCode(one[0]!)
      if (type === 'X') {
        socket.end()
        return
      }
      batch.push(named(one, type, number))
      if (type !== 'S' && type !== 'Q') continue
      const messages = batch
      batch = []
      work = work
        .then(() => run(messages))
        .catch(() => {
          socket.destroy()
        })
    }
  })
}

/** The same message with the name of its prepared statement made this connection's own. */
function named(one: Buffer, type: string, number: number): Buffer {
  const body = one.subarray(5)
  const own = (at: number) => {
    if (body[at] === 0) return one
    return message(type, Buffer.concat([body.subarray(0, at), Buffer.from(`c${number}_`), body.subarray(at)]))
  }
  if (type === 'P') return own(0)
  if (type === 'B') return own(body.indexOf(0) + 1) // the portal's name comes first
  if ((type === 'D' || type === 'C') && body[0] === 'S'.charCodeAt(0)) return own(1)
  return one
}

/** The transaction status of the last ReadyForQuery of a reply. */
function statusIn(reply: Buffer): string | null {
  let status = null
  for (let at = 0; at + 5 <= reply.length; at += 1 + reply.readInt32BE(at + 1))
    if (reply[at] === 'Z'.charCodeAt(0)) status = String.fromCharCode(reply[at + 5]!)
  return status
}
