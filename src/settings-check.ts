/** The strict checks of config/. Loads zod, so an adapter skips it for files that it has checked before. */
import { z } from 'zod'
import { COUNTRIES } from './rules/book.ts'
import { cautionList, lumberBook, ruleBook, troubleList } from './rules/check.ts'
import {
  type Adhesive,
  type Coating,
  type Defaults,
  type Figure,
  type Grout,
  type Leveller,
  type Materials,
  type Mortar,
  type Pack,
  PRACTICE,
  type Practice,
  SETTINGS_FILES,
  type Settings,
  type Spread,
  settingsFrom,
  type TileKinds,
  type Wait,
} from './settings.ts'
import { aroundFaults, aroundSchema } from './settings-check-around.ts'

/** One thing wrong in a file: where, what was expected and what stands there. */
export type SettingsFault = {
  readonly file: string
  /** Like `large-format-mortar.potLifeMin.low`; empty for the file as a whole. */
  readonly path: string
  readonly expected: string
  readonly found: string
}

export type SettingsOutcome =
  | { readonly ok: true; readonly value: Settings }
  | { readonly ok: false; readonly faults: readonly SettingsFault[]; readonly message: string }

const positive = z.number().positive()
const notNegative = z.number().min(0)
const words = z.string().min(1).max(300)
const temperatureC = z.number().min(-40).max(60)

const inOrder = (s: Spread): boolean => s.low <= s.usual && s.usual <= s.high
const ORDER = { error: 'low, usual and high in rising order' }
const spread = z.strictObject({ low: positive, usual: positive, high: positive }).refine(inOrder, ORDER)
const wait = z
  .strictObject({ h: notNegative.max(2000), longestH: notNegative.max(2000) })
  .refine((w) => w.h <= w.longestH, { error: 'longestH at least h' }) satisfies z.ZodType<Wait>
const pack = z.strictObject({ name: words, kg: positive.max(2000), yieldL: positive.max(2000).optional() })
const notch = z.strictObject({
  shape: z.enum(['square', 'u', 'v']),
  widthMm: z.number().min(0.5).max(50),
  depthMm: z.number().min(0.5).max(50),
  spaceMm: z.number().min(0).max(100),
})
const bed = { minBedMm: notNegative.max(150), maxBedMm: positive.max(150) }

const sourced = { source: words, sources: z.record(z.string(), words).optional() }
const product = {
  ...sourced,
  name: words,
  packs: z.array(pack).min(1) satisfies z.ZodType<readonly Pack[]>,
  usualPack: z.strictObject({ imperial: words, metric: words }),
  referenceC: temperatureC,
  minC: temperatureC.optional(),
  maxC: temperatureC.optional(),
}
const mixed = {
  ...product,
  setting: z.enum(['cement', 'rapid', 'epoxy', 'drying']),
  waterLPerKg: spread.nullable(),
  slakeMin: spread.nullable(),
  potLifeMin: spread.nullable(),
}
const density = positive.min(0.3).max(5)

const mortar = z.strictObject({
  ...mixed,
  ...bed,
  kind: z.literal('mortar'),
  wetKgPerL: density,
  yieldLPerKg: positive.max(10).optional(),
  openTimeMin: spread,
  maxTileEdgeMm: positive.optional(),
  waits: z.strictObject({ grout: wait, walk: wait, heavy: wait, water: wait }),
}) satisfies z.ZodType<Mortar>

const grout = z.strictObject({
  ...mixed,
  kind: z.literal('grout'),
  type: z.enum(['sanded', 'unsanded', 'high-performance', 'epoxy']),
  powderKgPerJointL: spread,
  minJointMm: notNegative.max(50),
  maxJointMm: positive.max(50),
  wholeKits: z.boolean(),
  waits: z.strictObject({ walk: wait, heavy: wait, water: wait }),
}) satisfies z.ZodType<Grout>

const leveller = z.strictObject({
  ...mixed,
  ...bed,
  kind: z.literal('leveller'),
  wetKgPerL: density,
  yieldLPerKg: positive.max(10).optional(),
  waits: z.strictObject({ walk: wait, tile: wait }),
}) satisfies z.ZodType<Leveller>

const adhesive = z.strictObject({
  ...product,
  kind: z.literal('adhesive'),
  wetKgPerL: density,
  trowel: notch,
  waits: z.strictObject({ tile: wait }),
}) satisfies z.ZodType<Adhesive>

const coating = z.strictObject({
  ...product,
  kind: z.literal('coating'),
  wetKgPerL: density,
  coatLPerM2: spread,
  coats: z.int().min(1).max(10),
  recoatH: notNegative.max(500),
  waits: z.strictObject({ tile: wait, water: wait.optional() }),
}) satisfies z.ZodType<Coating>

const id = z.string().regex(/^[a-z0-9][a-z0-9-]*$/, { error: 'an id of small letters, digits and hyphens' })
const material = z.discriminatedUnion('kind', [mortar, grout, leveller, adhesive, coating])
const materials = z.record(id, material) satisfies z.ZodType<Materials>

const figure = z
  .strictObject({
    value: z.number(),
    low: z.number().optional(),
    high: z.number().optional(),
    source: words,
    edition: words.optional(),
    reported: z.boolean().optional(),
  })
  .refine((f) => inOrder({ low: f.low ?? f.value, usual: f.value, high: f.high ?? f.value }), {
    error: 'low, value and high in rising order',
  }) satisfies z.ZodType<Figure>

const group = (names: readonly string[]) => z.strictObject(Object.fromEntries(names.map((name) => [name, figure])))
const practice = z.strictObject(
  Object.fromEntries(Object.entries(PRACTICE).map(([name, figures]) => [name, group(figures)])),
) as unknown as z.ZodType<Practice>

const tiles = z.record(
  id,
  z.strictObject({
    ...sourced,
    name: words,
    thicknessMm: positive.max(100),
    densityKgPerM3: spread,
    softFace: z.boolean(),
  }),
) satisfies z.ZodType<TileKinds>

const JOINT_MM = z.number().min(0.5).max(50)

const defaults = z.strictObject({
  units: z.enum(['imperial', 'metric']),
  language: z.string().regex(/^[a-z]{2}$/, { error: 'a language of two letters, like "en"' }),
  timeZone: words.nullable(),
  country: z.enum(COUNTRIES).optional(),
  jointMm: z.strictObject({ imperial: JOINT_MM, metric: JOINT_MM }),
  tileThicknessMm: z.number().min(1).max(100),
  tileKind: id,
  spareShare: z.number().min(0).max(1),
  grout: z.strictObject({ sanded: id, unsanded: id }),
  paceM2PerH: positive.max(100),
  tileSizes: z.strictObject({ imperial: z.array(words), metric: z.array(words), source: words }),
  trowels: z
    .array(z.strictObject({ edgeUpToMm: positive.nullable(), notch, backButter: z.boolean(), mortar: id }))
    .min(1),
}) satisfies z.ZodType<Defaults>

const around = aroundSchema({ id, spread, notch, figure })

const SCHEMAS = {
  materials,
  practice,
  tiles,
  defaults,
  around,
  book: ruleBook,
  cautions: cautionList,
  troubles: troubleList,
  lumber: lumberBook,
} satisfies Record<keyof typeof SETTINGS_FILES, z.ZodType>

/** Reads config/ as parsed JSON by file name. Files that are not settings are left alone.
 *  Pure; every fault of every file is reported at once. */
export function readSettings(files: Readonly<Record<string, unknown>>): SettingsOutcome {
  const faults = Object.entries(SETTINGS_FILES).flatMap(([key, file]) =>
    Object.hasOwn(files, file)
      ? faultsOf(file, SCHEMAS[key as keyof typeof SCHEMAS], files[file])
      : [{ file, path: '', expected: 'a file of that name in config/', found: 'no such file' }],
  )
  if (faults.length > 0) return refused(faults)
  const settings = settingsFrom(files)
  const crossed = crossFaults(settings)
  return crossed.length > 0 ? refused(crossed) : { ok: true, value: settings }
}

/** The same from the files' texts: a text that is no JSON is a fault like any other. */
export function readSettingsTexts(texts: Readonly<Record<string, string>>): SettingsOutcome {
  const files: Record<string, unknown> = {}
  const faults: SettingsFault[] = []
  for (const [file, text] of Object.entries(texts)) {
    try {
      files[file] = JSON.parse(text)
    } catch (error) {
      faults.push({ file, path: '', expected: 'JSON', found: error instanceof Error ? error.message : 'no JSON' })
    }
  }
  return faults.length > 0 ? refused(faults) : readSettings(files)
}

const refused = (faults: readonly SettingsFault[]): SettingsOutcome => ({
  ok: false,
  faults,
  message: faults.map(sentence).join('\n'),
})

const sentence = ({ file, path, expected, found }: SettingsFault): string =>
  `config/${file}${path ? `, at ${path}` : ''}: expected ${expected}; found ${found}`

function faultsOf(file: string, schema: z.ZodType, content: unknown): SettingsFault[] {
  const parsed = schema.safeParse(content, { reportInput: true })
  if (parsed.success) return []
  return parsed.error.issues.map((issue) => {
    const path = issue.path.map(String).join('.')
    if (issue.code === 'unrecognized_keys')
      return { file, path, expected: 'only the keys it knows', found: issue.keys.map((k) => `"${k}"`).join(', ') }
    return { file, path, expected: expectation(issue), found: shown(valueAt(content, issue.path)) }
  })
}

/** What a zod issue expected, in words. */
function expectation(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.expected === 'int' ? 'a whole number' : `a value of type ${issue.expected}`
    case 'too_small':
      return issue.origin === 'string' || issue.origin === 'array'
        ? `at least ${issue.minimum} of ${issue.origin === 'array' ? 'the entries' : 'the letters'}`
        : `a number ${issue.inclusive ? 'of at least' : 'above'} ${issue.minimum}`
    case 'too_big':
      return issue.origin === 'string' ? `at most ${issue.maximum} letters` : `a number of at most ${issue.maximum}`
    case 'invalid_value':
      return `one of ${issue.values.map((v) => JSON.stringify(v)).join(', ')}`
    case 'invalid_union':
      return 'kind to be one of "mortar", "grout", "leveller", "adhesive", "coating"'
    case 'invalid_key':
      return issue.issues[0]?.message ?? 'another key'
    default:
      return issue.message
  }
}

function valueAt(content: unknown, path: readonly PropertyKey[]): unknown {
  let value = content
  for (const key of path) {
    if (typeof value !== 'object' || value === null) return undefined
    value = (value as Record<PropertyKey, unknown>)[key]
  }
  return value
}

function shown(value: unknown): string {
  if (value === undefined) return 'nothing'
  const text = typeof value === 'number' ? String(value) : JSON.stringify(value)
  return text.length > 80 ? `${text.slice(0, 77)}...` : text
}

/** What one entry says about another: names that must exist, ends that must be in order. */
function crossFaults({ materials: all, tiles: kinds, defaults: usual, around }: Settings): SettingsFault[] {
  const faults: SettingsFault[] = []
  const must = (good: boolean, file: string, path: string, expected: string, found: unknown) => {
    if (!good) faults.push({ file, path, expected, found: shown(found) })
  }
  const kindOf = (name: string) => (Object.hasOwn(all, name) ? all[name]?.kind : undefined)
  for (const [name, m] of Object.entries(all)) {
    const packs = m.packs.map((p) => p.name)
    for (const units of ['imperial', 'metric'] as const) {
      const path = `${name}.usualPack.${units}`
      must(
        packs.includes(m.usualPack[units]),
        SETTINGS_FILES.materials,
        path,
        'the name of one of its packs',
        m.usualPack[units],
      )
    }
    if ('minBedMm' in m)
      must(m.minBedMm <= m.maxBedMm, SETTINGS_FILES.materials, `${name}.maxBedMm`, 'minBedMm or more', m.maxBedMm)
    if (m.kind === 'grout')
      must(
        m.minJointMm <= m.maxJointMm,
        SETTINGS_FILES.materials,
        `${name}.maxJointMm`,
        'minJointMm or more',
        m.maxJointMm,
      )
    if (m.minC !== undefined && m.maxC !== undefined)
      must(m.minC < m.maxC, SETTINGS_FILES.materials, `${name}.maxC`, 'more than minC', m.maxC)
  }
  for (const fault of aroundFaults(around, kindOf))
    must(false, SETTINGS_FILES.around, fault.path, fault.expected, fault.found)
  const file = SETTINGS_FILES.defaults
  must(Object.hasOwn(kinds, usual.tileKind), file, 'tileKind', 'an id of config/tiles.json', usual.tileKind)
  for (const type of ['sanded', 'unsanded'] as const)
    must(
      kindOf(usual.grout[type]) === 'grout',
      file,
      `grout.${type}`,
      'the id of a grout of config/materials.json',
      usual.grout[type],
    )
  usual.trowels.forEach((t, i) => {
    must(
      kindOf(t.mortar) === 'mortar',
      file,
      `trowels.${i}.mortar`,
      'the id of a mortar of config/materials.json',
      t.mortar,
    )
    const last = i === usual.trowels.length - 1
    must(
      last === (t.edgeUpToMm === null),
      file,
      `trowels.${i}.edgeUpToMm`,
      'null for the last trowel and only for it',
      t.edgeUpToMm,
    )
    const before = usual.trowels[i - 1]?.edgeUpToMm ?? 0
    must(
      t.edgeUpToMm === null || t.edgeUpToMm > before,
      file,
      `trowels.${i}.edgeUpToMm`,
      `more than ${before}`,
      t.edgeUpToMm,
    )
  })
  return faults
}
