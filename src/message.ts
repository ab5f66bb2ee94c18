/** What comes in, and what is kept: the two shapes between an adapter and the core. */

import type { Learned } from './jobs/learned.ts'

/** A photo that came with a message, by where the platform keeps it: the photo itself is not fetched. */
export type Photo = { readonly id: string; readonly name?: string; readonly url?: string }

/** One message, from any platform. */
export type Message = {
  readonly text: string
  /** The platform's id of this message; a second delivery carries the same one. */
  readonly id: string
  /** Who wrote it: the platform's stable id, and a name to show where it is known. */
  readonly person: string
  readonly personName?: string
  readonly photos?: readonly Photo[]
  /** The instant it is answered at: ISO 8601 with offset, from the shell's clock. */
  readonly now: string
  /** What the crew's bags covered on jobs of this workspace, and of no other. */
  readonly learned?: readonly Learned[]
  /** IANA time zone of the shell, or null where only the offset of `now` counts. */
  readonly zone: string | null
}

/** One fact kept about a channel. A channel's memory is the fold of its entries, oldest first. */
export type Entry = {
  readonly at: string
  readonly person: string
  readonly personName?: string
  /** With `part` unique in its channel, so that a redelivery adds nothing. */
  readonly messageId: string
  readonly part: number
  readonly kind: string
  readonly version: number
  readonly body: unknown
}
