/** Makes a channel's memory out of a snapshot and the entries after it, and remembers the last memories it made, so
 *  that a busy channel reads only what is new. */
import type { Entry } from '../../src/message.ts'
import type { Rules } from './store.ts'

/** A memory as of entry `seq` of the channel row `id`; a forgotten channel comes back under another id. */
export type Point<Memory> = {
  readonly id: number
  readonly seq: number
  readonly memory: Memory
  readonly skipped: number
  /** The entry number of the snapshot that lies in the store, 0 for none. */
  readonly snapshotSeq: number
}

/** A snapshot as stored. */
export type Snapshot = { readonly seq: number; readonly skipped: number; readonly memory: string }

const REMEMBERED_CHANNELS = 500
/** A snapshot is written with the append that comes this many entries after the last one. */
const SNAPSHOT_EVERY = 128

export class Folding<Memory> {
  readonly rules: Rules<Memory>
  readonly version: number
  readonly #points = new Map<string, Point<Memory>>()

  constructor(rules: Rules<Memory>) {
    this.rules = rules
    this.version = rules.foldVersion ?? 1
  }

  lastKnown(channel: string): Memory {
    return this.#points.get(channel)?.memory ?? this.rules.emptyMemory
  }

  /** The remembered point of a channel, if it is of this channel row. */
  point(channel: string, id: number): Point<Memory> | null {
    const point = this.#points.get(channel)
    return point?.id === id ? point : null
  }

  /** What was remembered last, of whichever row. */
  anyPoint(channel: string): Point<Memory> | null {
    return this.#points.get(channel) ?? null
  }

  /** What is remembered and not in doubt. */
  current(channel: string): Point<Memory> | null {
    const point = this.#points.get(channel)
    return point && point.id > 0 ? point : null
  }

  /** Whether what is remembered is in doubt. */
  doubtful(channel: string): boolean {
    return (this.#points.get(channel)?.id ?? 0) < 0
  }

  empty(id: number): Point<Memory> {
    return { id, seq: 0, memory: this.rules.emptyMemory, skipped: 0, snapshotSeq: 0 }
  }

  fromSnapshot(id: number, snapshot: Snapshot | null): Point<Memory> {
    if (snapshot === null) return this.empty(id)
    const memory = JSON.parse(snapshot.memory) as Memory
    return { id, seq: snapshot.seq, memory, skipped: snapshot.skipped, snapshotSeq: snapshot.seq }
  }

  /** Folds on from a point, in order. The point itself stays as it is. */
  advance(channel: string, from: Point<Memory>, entries: readonly { seq: number; entry: Entry }[]): Point<Memory> {
    let { memory, seq, skipped } = from
    for (const next of entries) {
      seq = next.seq
      const folded = this.#foldOne(channel, memory, next.entry)
      if (folded === null) skipped++
      else memory = folded.memory
    }
    return { ...from, memory, seq, skipped }
  }

  remember(channel: string, point: Point<Memory>): void {
    this.#points.delete(channel)
    this.#points.set(channel, point)
    if (this.#points.size <= REMEMBERED_CHANNELS) return
    const oldest = this.#points.keys().next()
    if (!oldest.done) this.#points.delete(oldest.value)
  }

  /** The store may lie in another past (a mended file, a server come back): nothing remembered is built upon, but it is
   *  still the last that was known. */
  doubt(): void {
    for (const [channel, point] of this.#points) this.#points.set(channel, { ...point, id: -1 })
  }

  drop(channel: string): void {
    this.#points.delete(channel)
  }

  /** The snapshot to write with an append that brings the channel to `point`, or null while the last one is near. */
  due(point: Point<Memory>): Snapshot | null {
    if (point.seq - point.snapshotSeq < SNAPSHOT_EVERY) return null
    return { seq: point.seq, skipped: point.skipped, memory: JSON.stringify(point.memory) }
  }

  #foldOne(channel: string, memory: Memory, entry: Entry): { memory: Memory } | null {
    try {
      if (this.rules.understands?.(entry) ?? true) return { memory: this.rules.fold(memory, entry) }
    } catch {
      // A body the fold cannot stand must not take the channel down with it; it is reported like an unknown one.
    }
    this.rules.onSkipped?.(channel, entry)
    return null
  }
}
