/** The strict checks of rules.json, cautions.json, trouble.json and lumber.json. Loads zod. */
import { z } from 'zod'
import { TOPICS } from '../reply.ts'
import {
  type Caution,
  COUNTRIES,
  type LumberBook,
  type Rule,
  type RuleBook,
  SOURCE_READ,
  type Trouble,
  WORD_CONDITIONS,
} from './book.ts'

const id = z.string().regex(/^[a-z0-9][a-z0-9-]*$/, { error: 'an id of small letters, digits and hyphens' })
const words = z.string().min(1).max(300)
const key = z.string().regex(/^[a-z][a-z0-9_]*$/, { error: 'a key of small letters, digits and underscores' })
const figure = z.number()
const positive = z.number().positive()
const verdict = z.enum(['yes', 'no', 'depends'])

const amount = z.union([
  z.strictObject({ is: z.literal('count'), n: figure }),
  z.strictObject({ is: z.literal('number'), n: figure, digits: z.int().min(0).max(6) }),
  z.strictObject({ is: z.enum(['room', 'small', 'run']), mm: figure }),
  z.strictObject({ is: z.literal('area'), m2: figure }),
  z.strictObject({ is: z.literal('mass'), kg: figure }),
  z.strictObject({ is: z.literal('temperature'), c: figure }),
  z.strictObject({ is: z.literal('hours'), h: figure }),
  z.strictObject({ is: z.literal('minutes'), min: figure }),
  z.strictObject({ is: z.literal('percent'), pct: figure, digits: z.int().min(0).max(3).optional() }),
  z.strictObject({ is: z.literal('slope'), mmPerM: figure }),
  z.strictObject({ is: z.literal('quote'), text: words }),
])

const said = z.array(z.string().regex(/^[-+]?[a-z-]+$/)).min(1)
const range = z.tuple([figure.nullable(), figure.nullable()])
const when = z.strictObject({
  ...Object.fromEntries(WORD_CONDITIONS.map((name) => [name, said.optional()])),
  edge: range.optional(),
  joint: range.optional(),
})

const rule = z.strictObject({
  id,
  topic: z.enum(TOPICS),
  subject: id,
  when: when.optional(),
  limit: z.strictObject({ key, value: figure, sense: z.enum(['least', 'most']) }).optional(),
  sure: figure.optional(),
  values: z.record(key, figure).optional(),
  ok: verdict.optional(),
  need: verdict.optional(),
  amounts: z.record(z.string(), amount).optional(),
  source: id,
  kind: z.enum(['standard', 'practice', 'sheet']),
  country: z.enum(COUNTRIES).optional(),
  cautions: z.array(id).min(1).optional(),
})

export const ruleBook = z
  .strictObject({
    sources: z.record(
      id,
      z.strictObject({
        name: words,
        section: words.optional(),
        edition: words.optional(),
        read: z.enum(SOURCE_READ),
      }),
    ),
    rules: z.array(rule),
  })
  .refine((book) => new Set(book.rules.map((r) => r.id)).size === book.rules.length, { error: 'each id once' })
  .refine((book) => book.rules.every((r) => Object.hasOwn(book.sources, r.source)), {
    error: 'a source of each rule among `sources`',
  }) as unknown as z.ZodType<RuleBook & { readonly rules: readonly Rule[] }>

export const cautionList = z.array(
  z.strictObject({ id, always: z.boolean(), topics: z.array(z.enum(TOPICS)), source: id }),
) satisfies z.ZodType<readonly Caution[]>

export const troubleList = z.array(
  z.strictObject({
    id,
    action: z.enum(['stop', 'go-on', 'lift']),
    causes: z.int().min(1).max(9),
    source: id,
    cautions: z.array(id).min(1).optional(),
    rules: z.array(id).min(1).optional(),
  }),
) satisfies z.ZodType<readonly Trouble[]>

export const lumberBook = z.strictObject({
  note: words,
  sections: z.array(z.strictObject({ nominal: words, breadthMm: positive, depthMm: positive, sizeFactor: positive })),
  species: z.array(
    z.strictObject({
      species: id,
      grades: z.array(words).min(1),
      eMpa: positive,
      fbMpa: positive,
      confirmed: z.boolean(),
      source: words,
    }),
  ),
  panels: z.strictObject({
    source: words,
    rows: z.array(z.strictObject({ thicknessMm: positive, stiffnessNmm2PerM: positive })),
  }),
}) satisfies z.ZodType<LumberBook>
