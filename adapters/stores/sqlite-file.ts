/** One SQLite file: opened at its first use, made where there is none, and opened afresh after every fault, so that a
 *  disk with room again, or a mended file, is taken up without a restart. */
import { accessSync, closeSync, constants, mkdirSync, openSync, statSync } from 'node:fs'
import path from 'node:path'
import { DatabaseSync, type StatementSync } from 'node:sqlite'
import { setTimeout as pause } from 'node:timers/promises'
import { APPLICATION_ID, STEPS } from './sqlite-schema.ts'
import { type FailureCode, type Kept, kept, notKept } from './store.ts'

/** In memory: no file, gone with the process. */
export const IN_MEMORY = ':memory:'

/** How long SQLite itself blocks on a lock [ms]; kept short, since nothing else runs in this process meanwhile. */
const BLOCKING_MS = 50
/** How long an operation goes on trying for a locked file [ms]. */
const PATIENCE_MS = 15_000

/** sqlite.org/rescode.html: primary result codes. */
const CODES: Readonly<Record<number, FailureCode>> = {
  5: 'unreachable', // BUSY
  6: 'unreachable', // LOCKED
  8: 'read-only', // READONLY
  10: 'failed', // IOERR, looked at more closely below
  11: 'corrupt', // CORRUPT
  13: 'full', // FULL
  14: 'unreachable', // CANTOPEN
  26: 'corrupt', // NOTADB
}
const SYSTEM_CODES: Readonly<Record<string, FailureCode>> = {
  ENOSPC: 'full',
  EDQUOT: 'full',
  EFBIG: 'full',
  EROFS: 'read-only',
  EACCES: 'read-only',
  EPERM: 'read-only',
}
/** SQLITE_IOERR_WRITE (10 | 3 << 8) and SQLITE_IOERR_SHMSIZE (10 | 19 << 8): the system took fewer bytes than it was given,
 *  and not for want of space on the device, which has its own code; that leaves a file-size limit. */
const NO_ROOM = [778, 4874]

const PRAGMAS = [
  'journal_mode = WAL',
  'synchronous = FULL', // an answer is on the disk before it is given
  'secure_delete = ON', // what is forgotten is overwritten
  'wal_autocheckpoint = 4000', // pages: seldom enough that few messages wait for it
]
  .map((pragma) => `PRAGMA ${pragma};`)
  .join('')

class StoreFault extends Error {
  readonly code: FailureCode
  constructor(code: FailureCode, detail: string) {
    super(detail)
    this.code = code
  }
}

export class SqliteFile {
  readonly file: string
  #db: DatabaseSync | null = null
  #inode = 0
  #statements = new Map<string, StatementSync>()

  readonly #onOpen: () => void

  /** @param onOpen  told of each opening: the file may be another one than before */
  constructor(file: string, onOpen: () => void) {
    this.#onOpen = onOpen
    this.file = file === IN_MEMORY ? file : path.resolve(file)
  }

  /** A prepared statement of the open connection. */
  q(sql: string): StatementSync {
    let statement = this.#statements.get(sql)
    if (!statement) {
      statement = this.#db!.prepare(sql)
      this.#statements.set(sql, statement)
    }
    return statement
  }

  /** Several reads that see the file at one instant. */
  read<T>(work: () => T): Promise<Kept<T>> {
    return this.#attempt('BEGIN', work)
  }

  /** A transaction, durable when it comes back; undone where `keep` says that nothing is to be kept. */
  write<T>(work: () => T, keep: (result: T) => boolean = () => true): Promise<Kept<T>> {
    return this.#attempt('BEGIN IMMEDIATE', work, keep)
  }

  /** Moves all of the write-ahead log into the file and empties it, so that deleted text lies in neither. */
  async sweep(): Promise<void> {
    try {
      this.#db?.exec('PRAGMA wal_checkpoint(TRUNCATE)')
    } catch {
      // Another connection is reading; its next checkpoint does it.
    }
  }

  close(): void {
    const db = this.#db
    this.#db = null
    this.#statements.clear()
    try {
      db?.close()
    } catch {
      // A file that cannot be closed in good order is recovered from its log at the next opening.
    }
  }

  async #attempt<T>(begin: string, work: () => T, keep: (result: T) => boolean = () => true): Promise<Kept<T>> {
    const giveUpAt = performance.now() + PATIENCE_MS
    for (let tries = 1; ; tries++) {
      try {
        this.#ready()
        return kept(this.#transaction(begin, work, keep))
      } catch (error) {
        const failure = this.#failureOf(error)
        if (failure === null) throw error
        const busy = isBusy(error)
        if (!busy) this.close()
        if (!busy || performance.now() > giveUpAt) return notKept(failure, `${this.file}: ${(error as Error).message}`)
        await pause(Math.random() * Math.min(100, 5 * tries))
      }
    }
  }

  #transaction<T>(begin: string, work: () => T, keep: (result: T) => boolean): T {
    this.q(begin).run()
    try {
      const result = work()
      this.q(keep(result) ? 'COMMIT' : 'ROLLBACK').run()
      return result
    } catch (error) {
      // Some faults (a full disk) have rolled back already.
      if (this.#db?.isTransaction) {
        try {
          this.#db.exec('ROLLBACK')
        } catch {
          this.close()
        }
      }
      throw error
    }
  }

  /** Opens the file where it is not open, or no longer the file that lies under its name. */
  #ready(): void {
    if (this.#db !== null && this.file !== IN_MEMORY) {
      if (statSync(this.file, { throwIfNoEntry: false })?.ino !== this.#inode) this.close()
    }
    if (this.#db === null) this.#open()
  }

  #open(): void {
    if (this.file !== IN_MEMORY) {
      mkdirSync(path.dirname(this.file), { recursive: true, mode: 0o700 })
      // Made by us and not by SQLite, for the permissions; SQLite gives its log the permissions of the file.
      closeSync(openSync(this.file, 'a', 0o600))
      this.#inode = statSync(this.file).ino
    }
    const db = new DatabaseSync(this.file, { timeout: BLOCKING_MS })
    this.#db = db
    try {
      db.exec(PRAGMAS)
      if (this.#version() !== STEPS.length) this.#migrate(db)
    } catch (error) {
      // Half-way open is not open: another starter may hold the lock for now.
      this.close()
      throw error
    }
    this.#onOpen()
  }

  #version(): number {
    const { user_version } = this.#db!.prepare('PRAGMA user_version').get() as { user_version: number }
    if (user_version > STEPS.length)
      throw new StoreFault('newer', `layout ${user_version}, this version knows up to ${STEPS.length}`)
    return user_version
  }

  /** Every starter comes here with the write lock held, and reads the version again under it. */
  #migrate(db: DatabaseSync): void {
    db.exec('BEGIN IMMEDIATE')
    try {
      const version = this.#version()
      const { application_id } = db.prepare('PRAGMA application_id').get() as { application_id: number }
      const tables = db.prepare('SELECT count(*) AS n FROM sqlite_schema').get() as { n: number }
      if (application_id !== APPLICATION_ID && tables.n > 0)
        throw new StoreFault('corrupt', 'an SQLite file of some other program')
      for (const step of STEPS.slice(version)) db.exec(step)
      db.exec(`PRAGMA application_id = ${APPLICATION_ID}; PRAGMA user_version = ${STEPS.length}; COMMIT`)
    } catch (error) {
      if (db.isTransaction) db.exec('ROLLBACK')
      throw error
    }
  }

  /** Null for an error that is a bug of ours. */
  #failureOf(error: unknown): FailureCode | null {
    if (error instanceof StoreFault) return error.code
    if (error instanceof SyntaxError) return 'corrupt' // what lies in a row is not the JSON that was written
    const { code, errcode } = error as { code?: string; errcode?: number }
    if (code === 'ERR_SQLITE_ERROR' && errcode !== undefined) {
      if (NO_ROOM.includes(errcode)) return 'full'
      const found = CODES[errcode & 0xff] ?? 'failed'
      return found === 'unreachable' && !isBusy(error) ? (this.#unwritable() ?? found) : found
    }
    // Errors of the file system carry their number; other errors with a code are ours.
    if (typeof (error as { errno?: number }).errno === 'number') return SYSTEM_CODES[code ?? ''] ?? 'unreachable'
    return null
  }

  /** SQLite "cannot open" a file whose log it cannot write beside it; the system knows why. */
  #unwritable(): FailureCode | null {
    try {
      accessSync(path.dirname(this.file), constants.W_OK)
      accessSync(this.file, constants.W_OK)
      return null
    } catch (error) {
      return SYSTEM_CODES[(error as { code?: string }).code ?? ''] ?? null
    }
  }
}

function isBusy(error: unknown): boolean {
  const { code, errcode } = error as { code?: string; errcode?: number }
  return code === 'ERR_SQLITE_ERROR' && errcode !== undefined && [5, 6].includes(errcode & 0xff)
}
