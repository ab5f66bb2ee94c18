/** The shape of a topic: what it gets, what it gives back. One file for each thing that can be asked. */
import type { FactName, Facts } from '../facts.ts'
import type { Learned } from '../jobs/learned.ts'
import type { Memory } from '../jobs/memory.ts'
import type { Reminding } from '../jobs/reminders.ts'
import type { Concept } from '../language/concepts.ts'
import type { Heard } from '../language/heard.ts'
import type { Amount, Phrase } from '../phrase.ts'
import type { Page } from '../pictures/page.ts'
import type { Outcome } from '../problem.ts'
import type { ReplyFile, Topic } from '../reply.ts'
import type { Figure, Settings } from '../settings.ts'
import type { Libraries } from '../units/libraries.ts'
import type { Sketch } from './picture.ts'

/** All a topic may look at. */
export type Brief = {
  readonly heard: Heard
  /** Said now, else what the talk said, else what the job holds. */
  readonly facts: Facts
  /** Where each fact came from, when it was not said now. */
  readonly carried: Readonly<Partial<Record<FactName, 'talk' | 'job'>>>
  readonly settings: Settings
  readonly memory: Memory
  /** What the crew's bags covered on earlier jobs of its workspace. */
  readonly learned: readonly Learned[]
  readonly person: string
  /** ISO 8601 with offset. */
  readonly now: string
  readonly zone: string | null
  readonly metric: boolean
  readonly language: string
  readonly libraries: Libraries
  /** Whether a meaning was heard in this message, or, where it only changes the last question, in that one. */
  has(...concepts: readonly Concept[]): boolean
}

/** A source as it is cited: its name, and whether only a report of it was read. */
export type Source = {
  readonly text: string
  readonly edition?: string
  readonly reported?: boolean
  readonly memory?: boolean
}

export type Cell = Phrase | Amount | number | null
/** A file of rows: numbers stay numbers, the rest is told. */
export type Table = {
  readonly name: string
  readonly head: readonly Phrase[]
  readonly rows: readonly (readonly Cell[])[]
}

/** A page to hand over, worded when told. */
export type PageSketch = {
  readonly name: string
  readonly alt: Phrase
  readonly page: (text: (phrase: Phrase) => string) => Page
}

export type Told = {
  readonly topic: Topic
  /** The first line: the answer itself. */
  readonly answer: Phrase
  readonly details?: readonly Phrase[]
  readonly assumed?: readonly Phrase[]
  readonly warnings?: readonly Phrase[]
  readonly sources?: readonly Source[]
  /** The workings, step by step with the numbers in. */
  readonly working?: readonly Phrase[]
  /** Keys of the `ask` contract, SI. Undefined ones are left out. */
  readonly values?: Readonly<Record<string, number | string | undefined>>
  readonly files?: readonly ReplyFile[]
  /** Pictures, worded when told. */
  readonly drawings?: readonly Sketch[]
  readonly pages?: readonly PageSketch[]
  /** Tables, told in the crew's words and carried as CSV. */
  readonly tables?: readonly Table[]
  /** What can be done next: `offer.ID` names it, `offer.ID.say` is the message it stands for. */
  readonly offers?: readonly string[]
  /** What the answer found out and a follow-up may need, such as when it was set. */
  readonly learned?: Partial<Facts>
  /** What the talk keeps as the question, where it is more than this message. */
  readonly asks?: string
  /** Reminders to send later, and ids of those not to send after all. */
  readonly reminders?: readonly Reminding[]
  readonly cancels?: readonly string[]
  /** Everything about the channel is to be deleted: confirmed. */
  readonly forget?: boolean
  /** Entries of its own to keep, beside the talk. */
  readonly entries?: readonly { readonly kind: string; readonly version: number; readonly body: unknown }[]
}

export type TopicAnswer = (brief: Brief) => Outcome<Told>

export const sourceOf = (figure: Figure): Source => ({
  text: figure.source,
  ...(figure.edition ? { edition: figure.edition } : {}),
  ...(figure.reported ? { reported: true } : {}),
})

/** Puts together what several topics have to say under one of them. */
export function joinTold(main: Told, ...others: readonly Told[]): Told {
  const all = [main, ...others]
  const gather = <K extends 'assumed' | 'warnings' | 'sources' | 'working'>(key: K): NonNullable<Told[K]> =>
    unique(all.flatMap((t) => (t[key] ?? []) as readonly unknown[])) as NonNullable<Told[K]>
  return {
    ...main,
    details: [...(main.details ?? []), ...others.flatMap((o) => [o.answer])],
    assumed: gather('assumed'),
    warnings: gather('warnings'),
    sources: gather('sources'),
    working: gather('working'),
    values: Object.assign({}, ...others.map((o) => o.values), main.values),
    files: all.flatMap((t) => t.files ?? []),
    drawings: all.flatMap((t) => t.drawings ?? []),
    offers: unique(all.flatMap((t) => t.offers ?? [])),
  }
}

/** Each once. Things are alike by all they hold; only those of the same name are compared in full. */
function unique<T>(list: readonly T[]): T[] {
  const kept = new Map<unknown, T[]>()
  return list.filter((one) => {
    const name = nameOf(one)
    const alike = kept.get(name)
    if (!alike) kept.set(name, [one])
    else if (alike.some((other) => JSON.stringify(other) === JSON.stringify(one))) return false
    else alike.push(one)
    return true
  })
}

function nameOf(one: unknown): unknown {
  if (typeof one !== 'object' || one === null) return one
  return 'key' in one ? one.key : 'text' in one ? one.text : null
}
