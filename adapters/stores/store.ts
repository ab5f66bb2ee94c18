/** What every store can do, whichever database lies under it. A store keeps facts and knows nothing of their meaning:
 *  the fold that makes a channel's memory out of its entries is handed in. */
import type { Entry } from '../../src/message.ts'

/** Why a store could not do it. All but `newer` can pass by themselves: the next call tries afresh. */
export type FailureCode =
  /** No room: the disk, a quota or a file-size limit. */
  | 'full'
  | 'read-only'
  /** The file or a page of it is not what was written. It is left as it lies, for someone to look at. */
  | 'corrupt'
  /** No connection, no folder, no file, or locked by another for too long. */
  | 'unreachable'
  /** Written by a newer version of this program, whose layout this one must not touch. */
  | 'newer'
  | 'failed'

export type Failure = { readonly code: FailureCode; readonly detail: string }

/** What can fail for a reason outside the program comes back as a value; only a bug throws. */
export type Kept<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly failure: Failure }

export const kept = <T>(value: T): Kept<T> => ({ ok: true, value })
export const notKept = (code: FailureCode, detail: string): { readonly ok: false; readonly failure: Failure } => ({
  ok: false,
  failure: { code, detail },
})

/** How entries become a memory. `fold` is pure and never changes the memory it is given: memories are shared. */
export type Rules<Memory> = {
  readonly fold: (memory: Memory, entry: Entry) => Memory
  readonly emptyMemory: Memory
  /** Raised when the fold makes something else of the same entries: snapshots of other versions are not used. */
  readonly foldVersion?: number
  /** False for an entry a newer version wrote: kept, left out of the fold, and reported. */
  readonly understands?: (entry: Entry) => boolean
  /** Told of each entry left out: one not understood, or one the fold threw at. */
  readonly onSkipped?: (channel: string, entry: Entry) => void
}

/** JSON all the way down: what `JSON.stringify` gives back unchanged. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json | undefined }

export type Loaded<Memory> = {
  readonly memory: Memory
  /** The number of the channel's last entry, 0 for none; hand it to `append` as `after`. */
  readonly last: number
  /** Entries left out of the fold, see `Rules.understands`. */
  readonly skipped: number
  /** The reply recorded for the message asked about: it was answered before. Null where it was not. */
  readonly answered: { readonly reply: Json } | null
}

/** A reminder to send once. `id` is the caller's and unique in its channel; the same id again moves it (a snooze). */
export type Reminder = {
  readonly id: string
  /** Instant [ms since 1970]. */
  readonly dueMs: number
  readonly body: Json
}

/** One answered message: all of it is kept, or none. */
export type Answered = {
  readonly messageId: string
  /** ISO 8601 with offset. */
  readonly at: string
  readonly entries: readonly Entry[]
  readonly reply: Json
  /** `last` of the memory the reply was worked out from. With it, entries that came in between are noticed. */
  readonly after?: number
  readonly reminders?: readonly Reminder[]
  /** Ids of reminders not to send after all. */
  readonly cancels?: readonly string[]
}

export type Appended =
  | { readonly state: 'kept'; readonly last: number }
  /** Answered before: nothing was added. The recorded reply, null once it has been tidied away. */
  | { readonly state: 'already'; readonly reply: Json }
  /** Someone else added entries after `after`: nothing was added. Recall or load again, and answer again. */
  | { readonly state: 'moved'; readonly last: number }

export type Numbered = { readonly seq: number; readonly entry: Entry }
export type InChannel = { readonly channel: string; readonly entry: Entry }

/** A reminder taken by one instance, which alone may send it until `heldUntilMs`. */
export type Claimed = Reminder & {
  readonly channel: string
  /** How often it was taken, this time included: above 1 it may have been sent by an instance that died over it. */
  readonly attempt: number
}

/** A recorded reply, for moving a channel to another store. */
export type Recorded = { readonly messageId: string; readonly at: string; readonly reply: Json }

/** What one channel holds, in pieces of bounded size. */
export type Moved = {
  readonly entries?: readonly Entry[]
  readonly answered?: readonly Recorded[]
  readonly reminders?: readonly Reminder[]
}

export interface Store<Memory> {
  /** A channel's memory now; with `messageId` also whether that message was answered before.
   *  Its cost does not grow with the log: a snapshot and the few entries after it. */
  load(channel: string, messageId?: string): Promise<Kept<Loaded<Memory>>>
  /** A channel's memory as this process last saw it, without asking the store; null where it saw none. It may be out of
   *  date: an `append` with its `last` as `after` finds that out, and sees to it that the next recall is not. */
  recall(channel: string): Loaded<Memory> | null
  /** The last memory this process saw of a channel, for an answer while the store is out of reach. */
  lastKnown(channel: string): Memory
  /** Keeps one answered message. When it returns `kept`, the message survives a crash of the machine. */
  append(channel: string, answered: Answered): Promise<Kept<Appended>>

  /** A page of a channel's log, oldest first, after entry number `after` (0 for the start). */
  entries(channel: string, after: number, limit: number): Promise<Kept<readonly Numbered[]>>
  /** Entries of some kinds from all channels of one workspace, and of no other, newest last. Quick for the kinds that an
   *  index of both layouts is of: use and undo, in this order. */
  learned(workspace: string, kinds: readonly string[], limit: number): Promise<Kept<readonly InChannel[]>>
  /** Deletes all there is about a channel. False where there was nothing. */
  forget(channel: string): Promise<Kept<boolean>>

  /** Keeps a value under a short key (what a button stands for) until an instant [ms since 1970]. */
  put(channel: string, key: string, value: Json, untilMs: number): Promise<Kept<null>>
  /** The value, or null where there is none or its time is over. */
  get(channel: string, key: string, nowMs: number): Promise<Kept<Json>>

  remind(channel: string, reminder: Reminder): Promise<Kept<null>>
  /** False where it was sent, cancelled, or never there. */
  cancelReminder(channel: string, id: string): Promise<Kept<boolean>>
  snoozeReminder(channel: string, id: string, dueMs: number): Promise<Kept<boolean>>
  /** Those still to be sent, soonest first. */
  reminders(channel: string): Promise<Kept<readonly Reminder[]>>
  /** Takes due reminders for one instance, each for nobody else until `heldUntilMs`. */
  claimDue(holder: string, nowMs: number, heldUntilMs: number, limit: number): Promise<Kept<readonly Claimed[]>>
  /** Holds one longer; false where it is no longer this holder's. */
  holdReminder(holder: string, channel: string, id: string, heldUntilMs: number): Promise<Kept<boolean>>
  /** Done with it: sent (or nobody there to send it to). */
  finishReminder(holder: string, channel: string, id: string): Promise<Kept<boolean>>
  /** Could not be sent: anyone may take it from `nextMs` on. */
  releaseReminder(holder: string, channel: string, id: string, nextMs: number): Promise<Kept<boolean>>
  /** When the next reminder can be taken [ms since 1970], null for none. */
  nextReminder(): Promise<Kept<number | null>>

  /** Channel keys in order, after `after` ('' for the start). */
  channels(after: string, limit: number): Promise<Kept<readonly string[]>>
  /** Recorded replies in order of message id, after `after`. */
  recorded(channel: string, after: string, limit: number): Promise<Kept<readonly Recorded[]>>
  /** Adds what another store held; what is already here is left alone. Returns how much was new. */
  restore(channel: string, moved: Moved): Promise<Kept<number>>

  /** Drops what is over: values past their time, replies answered before `repliesBeforeMs` (the ids stay, so that a
   *  redelivery still adds nothing), reminders sent or cancelled that were due before then. Entries are the job and stay.
   *  Goes by some hundred channels at a time, with room for messages between. */
  tidy(nowMs: number, repliesBeforeMs: number): Promise<Kept<null>>
  close(): Promise<void>
}

/** The workspace that bounds what a channel's figures are shared with: `PLATFORM:WORKSPACE` of a channel key
 *  `PLATFORM:WORKSPACE:CHANNEL`. A direct message (`PLATFORM:direct:CHANNEL`) and any other key is a workspace of its own. */
export function workspaceOf(channel: string): string {
  const [platform, workspace, ...rest] = channel.split(':')
  return platform && workspace && workspace !== 'direct' && rest.length > 0 ? `${platform}:${workspace}` : channel
}
