/** A PostgreSQL of our own on a free loopback port: the machine's real server where there is one (run as the user
 *  `postgres` when we are root, which it refuses to run as), else the WebAssembly build behind the same driver. */
import { type ChildProcess, execFileSync, spawn } from 'node:child_process'
import { chmodSync, chownSync, globSync, mkdtempSync, rmSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import type { PGlite as PGliteInstance } from '@electric-sql/pglite'
import pg from 'pg'
import { servePglite, type WasmPort } from './wasm-postgres.ts'

export type TestPostgres = {
  /** Whether it is the real server. */
  readonly real: boolean
  /** The address of a new, empty database. */
  readonly fresh: () => Promise<string>
  /** Takes the server away, as a crash or a restart of the machine would. */
  readonly stop: () => Promise<void>
  /** Brings it back on the same port, with what it held. */
  readonly start: () => Promise<void>
  readonly end: () => Promise<void>
}

export function startPostgres(options: { readonly durable?: boolean } = {}): Promise<TestPostgres> {
  const bin = process.env['KNEEPAD_TEST_PGLITE'] ? undefined : newestServer()
  return bin ? realServer(bin, options.durable ?? false) : wasmServer()
}

/** Debian keeps each version in a folder of its own. */
const newestServer = (): string | undefined =>
  globSync('/usr/lib/postgresql/*/bin/postgres')
    .map((file) => path.dirname(file))
    .toSorted((a, b) => Number(a.split('/')[4]) - Number(b.split('/')[4]))
    .at(-1)

async function realServer(bin: string, durable: boolean): Promise<TestPostgres> {
  const dir = mkdtempSync(path.join(tmpdir(), 'kneepad-pg-'))
  const who: { uid?: number; gid?: number } = process.getuid?.() === 0 ? idsOf('postgres') : {}
  chmodSync(dir, 0o700)
  if (who.uid !== undefined && who.gid !== undefined) chownSync(dir, who.uid, who.gid)
  const data = path.join(dir, 'data')
  const initdb = ['-D', data, '-U', 'kneepad', '-A', 'trust', '-E', 'UTF8', '--locale=C.UTF-8', '--no-sync']
  execFileSync(path.join(bin, 'initdb'), initdb, { ...who, cwd: dir, stdio: 'pipe' })
  const port = await freePort()
  const settings = [`port=${port}`, 'listen_addresses=127.0.0.1', `unix_socket_directories=${dir}`]
  settings.push(`fsync=${durable ? 'on' : 'off'}`, 'max_connections=100')
  const flags = ['-D', data, ...settings.flatMap((s) => ['-c', s])]
  const url = (database: string) => `postgres://kneepad@127.0.0.1:${port}/${database}`
  let server: ChildProcess | null = null
  let databases = 0
  /** SIGQUIT is an immediate shutdown, which leaves the recovery to the next start. */
  const stop = async (signal: 'SIGINT' | 'SIGQUIT') => {
    const running = server
    server = null
    if (!running || running.exitCode !== null) return
    const gone = new Promise((resolve) => running.once('exit', resolve))
    running.kill(signal)
    await gone
  }
  const start = async () => {
    let log = ''
    const starting = spawn(path.join(bin, 'postgres'), flags, { ...who, cwd: dir, stdio: ['ignore', 'ignore', 'pipe'] })
    starting.stderr?.on('data', (text) => {
      log = (log + text).slice(-4000)
    })
    server = starting
    for (let tries = 0; tries < 300; tries++) {
      if (starting.exitCode !== null) break
      if (await answers(url('postgres'))) return
      await pause(50)
    }
    throw new Error(`the PostgreSQL server did not start: ${log}`)
  }
  const killed = () => server?.kill('SIGQUIT')
  process.once('exit', killed)
  await start()
  return {
    real: true,
    fresh: async () => {
      const name = `t${++databases}`
      await query(url('postgres'), `CREATE DATABASE ${name}`)
      return url(name)
    },
    stop: () => stop('SIGQUIT'),
    start,
    end: async () => {
      process.off('exit', killed)
      await stop('SIGQUIT')
      rmSync(dir, { recursive: true, force: true })
    },
  }
}

/** Each database is a WebAssembly instance behind a port of its own. */
async function wasmServer(): Promise<TestPostgres> {
  const { PGlite } = await import('@electric-sql/pglite')
  // Laying a database takes seconds, copying an empty one less than one.
  const empty = PGlite.create().then(async (db) => {
    const dump = await db.dumpDataDir('none')
    await db.close()
    return dump
  })
  const databases: { db: PGliteInstance; port: number; served: WasmPort | null }[] = []
  const stop = async () => {
    for (const one of databases) {
      await one.served?.close()
      one.served = null
    }
  }
  return {
    real: false,
    fresh: async () => {
      const db = await PGlite.create({ loadDataDir: await empty })
      const served = await servePglite(db, 0)
      databases.push({ db, port: served.port, served })
      return `postgres://postgres@127.0.0.1:${served.port}/postgres`
    },
    stop,
    start: async () => {
      for (const one of databases) one.served ??= await servePglite(one.db, one.port)
    },
    end: async () => {
      await stop()
      for (const one of databases) await one.db.close()
    },
  }
}

/** The numeric ids of a user of this machine. */
function idsOf(user: string): { uid: number; gid: number } {
  const id = (flag: string) => Number(execFileSync('id', [flag, user], { encoding: 'utf8' }))
  return { uid: id('-u'), gid: id('-g') }
}

async function query(url: string, sql: string): Promise<void> {
  const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 2000 })
  client.on('error', () => {})
  try {
    await client.connect()
    await client.query(sql)
  } finally {
    await client.end().catch(() => {})
  }
}

const answers = (url: string): Promise<boolean> =>
  query(url, 'SELECT 1').then(
    () => true,
    () => false,
  )

const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const server = createServer()
    server.once('error', reject)
    server.listen(0, '127.0.0.1', () => {
      const address = server.address()
      server.close(() => resolve(typeof address === 'object' && address ? address.port : 0))
    })
  })
