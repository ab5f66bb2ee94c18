/** The neutral reply every adapter renders: data and finished sentences, no platform's markup. */
import type { Span } from './problem.ts'

export const TOPICS = [
  'tile',
  'mortar',
  'grout',
  'mix',
  'cure',
  'layout',
  'levelling',
  'underlayment',
  'substrate',
  'joints',
  'contact',
  'shower',
  'trouble',
  'order',
  'job',
  'log',
  'convert',
  'help',
] as const
export type Topic = (typeof TOPICS)[number]

/** A file a reply carries. A picture is SVG text here; an adapter makes the PNG. `alt` says what it shows,
 *  `plain` is the same in plain characters. */
export type ReplyFile = {
  readonly name: string
  readonly media_type: string
  readonly text: string
  readonly alt?: string
  readonly plain?: string
}

/** What can be done next from under an answer; a button on a platform, a word in the terminal.
 *  `say` is the message that pressing it stands for, answered as if the presser had typed it. */
export type Offer = { readonly id: string; readonly label: string; readonly say: string }

export type Reply = {
  readonly ok: boolean
  readonly topic: Topic
  readonly language: string
  /** The first line: the answer itself. */
  readonly answer: string
  readonly details: readonly string[]
  readonly assumed: readonly string[]
  readonly warnings: readonly string[]
  readonly sources: readonly string[]
  /** Numbers in SI by the names of the `ask` contract; instants and unit names are strings. */
  readonly values: Readonly<Record<string, number | string>>
  readonly files: readonly ReplyFile[]
  readonly offers: readonly Offer[]
  readonly problem: { readonly code: string; readonly message: string; readonly at: Span | null } | null
  /** The labels an adapter may put before the lists, in the reply's language. */
  readonly labels: { readonly assumed: string; readonly sources: string; readonly warning: string }
}
