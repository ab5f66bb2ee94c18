/** Strict checks of entries that come from outside: an imported file, another store. zod is slow to load, so the way of a
 *  message never touches this file: its own entries are typed. */
import * as z from 'zod'
import type { FactName } from '../facts.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { ENTRY_VERSIONS, type EntryKind } from './memory.ts'

const MOST_TEXT = 6000
const text = z.string().max(MOST_TEXT)
const name = z.string().min(1).max(200)
const amount = z.number().min(0).max(1e9)
const mm = z.number().min(0).max(1e7)
const instant = z.string().refine((iso) => {
  try {
    return Temporal.Instant.from(iso) !== null
  } catch {
    return false
  }
}, 'an instant with offset')

const place = z.looseObject({})
const piece = z.strictObject({
  sign: z.union([z.literal(1), z.literal(-1)]),
  lengthMm: mm,
  widthMm: mm,
  name: name.optional(),
  kind: z.enum(['island', 'bite']).optional(),
  curve: z.enum(['round', 'arc', 'quarter', 'rounded-corner', 'cut-corner']).optional(),
  outside: z.literal(true).optional(),
  nth: z.tuple([z.number().int().min(0), z.number().int().min(1)]).optional(),
  deep: z.enum(['length', 'width']).optional(),
  place: place.optional(),
})
const corner = z.tuple([z.number().min(-1e7).max(1e7), z.number().min(-1e7).max(1e7)])
const tile = z.looseObject({ lengthMm: mm, widthMm: mm, thicknessMm: mm.optional() })
const tiling = z.strictObject({
  tile: tile.optional(),
  jointMm: mm.optional(),
  pattern: z.looseObject({ name }).optional(),
  boxTiles: amount.optional(),
  boxM2: amount.optional(),
  boxPrice: amount.optional(),
  measuredMm: mm.optional(),
})
const room = z.looseObject({
  own: tiling.optional(),
  name: name.optional(),
  count: z.number().int().min(1).max(10_000),
  pieces: z.array(piece).max(500),
  cornersMm: z.array(corner).max(2000).optional(),
  areaM2: amount.optional(),
})
const notch = z.strictObject({ shape: z.enum(['square', 'u', 'v']), widthMm: mm, depthMm: mm, spaceMm: mm })
const temperature = z.strictObject({
  c: z.number().min(-100).max(200),
  of: z.enum(['air', 'slab', 'low', 'high', 'reference']),
})

/** The facts whose shape the sums rely on; others are plain values or small objects. */
const KNOWN = {
  rooms: z.array(room).max(500),
  areaM2: amount,
  tile,
  jointMm: mm,
  trowel: notch,
  backButter: z.boolean(),
  sparePct: amount,
  boxTiles: amount,
  boxM2: amount,
  boxPrice: amount,
  bagKg: amount,
  haveBags: amount,
  haveBoxes: amount,
  haveTiles: amount,
  leftM2: amount,
  usedBags: amount,
  usedM2: amount,
  coverageM2: amount,
  powderKg: amount,
  bagsToMix: amount,
  temperatures: z.array(temperature).max(100),
  zone: name,
  country: z.enum(['US', 'UK', 'AU', 'other']),
  siteC: z.number().min(-100).max(200),
  siteSlabC: z.number().min(-100).max(200),
  siteLowC: z.number().min(-100).max(200),
  outOfFlatMm: mm,
} satisfies Partial<Record<FactName, z.ZodType>>
const facts = z
  .object(KNOWN)
  .partial()
  .catchall(
    z.union([z.string().max(MOST_TEXT), z.number(), z.boolean(), z.array(z.unknown()).max(500), z.looseObject({})]),
  )

const bags = amount.max(1e6)
const use = z.strictObject({
  stuff: z.enum(['mortar', 'grout', 'tile']),
  bags: bags.optional(),
  m2: amount.optional(),
  tiles: amount.optional(),
  total: z.boolean().optional(),
  opened: bags.optional(),
  leftBags: bags.optional(),
  leftBoxes: bags.optional(),
  leftTiles: amount.optional(),
  binnedBags: bags.optional(),
  broken: amount.optional(),
  trowel: notch.optional(),
  backButter: z.boolean().optional(),
  tileMm: z.tuple([mm, mm]).optional(),
  packKg: amount.optional(),
  outOfFlatMm: amount.optional(),
})
const useWithRows = use.extend({ rows: amount.optional(), room: name.optional() })
const photo = z.strictObject({ id: name, name: name.optional(), url: text.optional() })
const reading = z.strictObject({
  what: z.enum(['flatness', 'moisture', 'slab', 'lot', 'contact', 'owner', 'note']),
  text,
  value: z.number().optional(),
})
const talk = z.looseObject({
  topic: name,
  facts,
  values: z.record(z.string(), z.union([z.number(), z.string()])),
  language: name,
  metric: z.boolean(),
  text,
  person: text,
  cues: z.array(name).max(500),
  lastSaid: z.array(name).max(100).default([]),
})

/** The body of each kind, by version; the last one is the newest. */
const BODIES: Readonly<Record<EntryKind, readonly z.ZodType[]>> = {
  talk: [talk, talk],
  facts: [facts, z.strictObject({ facts }), z.strictObject({ facts })],
  person: [
    z.looseObject({
      decimals: z.enum(['tenths', 'inches']).nullable().optional(),
      language: name.optional(),
      cautions: z.record(z.string(), z.string()).optional(),
    }),
  ],
  word: [z.looseObject({ word: name, means: z.string().max(MOST_TEXT).nullable() })],
  asked: [z.looseObject({ question: name, text, person: text }).nullable()],
  use: [use, useWithRows],
  reading: [
    reading,
    reading.extend({
      what: z.enum(['flatness', 'moisture', 'slab', 'air', 'lot', 'contact', 'owner', 'photo', 'note']),
      photos: z.array(photo).max(20).optional(),
    }),
  ],
  undo: [z.strictObject({ uses: z.array(z.string().max(600)).max(1000).optional() })],
  job: [
    z.discriminatedUnion('act', [
      z.strictObject({ act: z.literal('start'), name: name.nullable() }),
      z.strictObject({ act: z.literal('open'), n: z.number().int().min(1) }),
      z.strictObject({ act: z.literal('name'), name }),
    ]),
  ],
  point: [z.strictObject({ name })],
  remind: [
    z.strictObject({
      id: name,
      dueMs: z.number(),
      about: z.enum(['grout', 'walk', 'heavy', 'water', 'slake', 'pot-life', 'note']),
      text,
      late: text,
    }),
  ],
  unremind: [z.strictObject({ ids: z.array(name).max(1000) })],
}

const envelope = z.looseObject({
  at: instant,
  person: text,
  personName: text.optional(),
  messageId: z.string().min(1).max(500),
  part: z.number().int().min(0).max(10_000),
  kind: name,
  version: z.number().int().min(1),
})

/** Whether an entry from outside may be kept: its frame always, its body where this version knows the kind.
 *  One of a newer version or an unknown kind passes with its frame alone: it is kept and left out of the fold.
 *  @problem not-an-entry  with the path in it and what was expected */
export function checkEntry(entry: unknown): Outcome<'known' | 'newer'> {
  const frame = envelope.safeParse(entry)
  if (!frame.success) return refuse('not-an-entry', { why: issueOf(frame.error) })
  const { kind, version } = frame.data
  if (!Object.hasOwn(ENTRY_VERSIONS, kind) || version > ENTRY_VERSIONS[kind as EntryKind]) return fine('newer')
  const body = BODIES[kind as EntryKind][version - 1].safeParse((entry as { body?: unknown }).body)
  return body.success ? fine('known') : refuse('not-an-entry', { why: `body: ${issueOf(body.error)}` })
}

function issueOf(error: z.ZodError): string {
  const [issue] = error.issues
  return `${issue.path.join('.') || '(whole)'}: ${issue.message}`
}
