import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { materialOf, PRACTICE, type Settings, settingsFrom, spreadOf, trowelFor, usualPack } from '../src/settings.ts'
import { readSettings, readSettingsTexts } from '../src/settings-check.ts'

const folder = path.resolve(import.meta.dirname, '../config')
const texts = Object.fromEntries(
  readdirSync(folder)
    .filter((f) => f.endsWith('.json'))
    .map((f) => [f, readFileSync(path.join(folder, f), 'utf8')]),
)
// biome-ignore lint/suspicious/noExplicitAny: the tests spoil files at any depth
const files = (): Record<string, any> =>
  Object.fromEntries(Object.entries(texts).map(([file, text]) => [file, JSON.parse(text)]))
const settings = (): Settings => settingsFrom(files())

describe('the files of config/', () => {
  test('pass', () => {
    const read = readSettingsTexts(texts)
    expect(read.ok ? [] : read.faults).toEqual([])
  })

  test('read without checks they are the same', () => {
    const read = readSettings(files())
    expect(read.ok && read.value).toEqual(settings())
  })

  test('every figure and product names where it comes from', () => {
    const { practice, materials } = settings()
    const figures = Object.values(PRACTICE).flat().length
    expect(Object.values(practice).flatMap((group) => Object.values(group)).length).toBe(figures)
    for (const material of Object.values(materials)) expect(material.source.length).toBeGreaterThan(5)
  })

  test('hold the kinds of material that the job needs', () => {
    const kinds = Object.values(settings().materials).map((m) => m.kind)
    expect(new Set(kinds)).toEqual(new Set(['mortar', 'grout', 'leveller', 'adhesive', 'coating']))
  })
})

describe('the README', () => {
  const readme = readFileSync(path.join(folder, '../README.md'), 'utf8')
  const entries = [...readme.matchAll(/^```json config\/(\S+) (\S+)\n([\s\S]*?)^```/gm)]

  test('shows how an entry is replaced', () => expect(entries.length).toBeGreaterThan(0))

  test.each(entries.map(([, file, id, text]) => [file!, id!, text!]))('%s, %s passes the checks', (file, id, text) => {
    const edited = files()
    edited[file][id] = JSON.parse(text)
    const read = readSettings(edited)
    expect(read.ok ? [] : read.faults).toEqual([])
    expect(read.ok && materialOf(read.value, 'mortar', id)).toMatchObject({ name: 'our floor mortar' })
  })

  test('shows a message as it is', () => {
    const spoilt = files()
    spoilt['materials.json']['mastic'].wetKgPerL = 'heavy'
    const read = readSettings(spoilt)
    expect(readme).toContain(read.ok ? 'it passed' : read.message)
  })
})

describe('lookups', () => {
  test('the trowel goes by the longest edge', () => {
    const s = settings()
    expect(trowelFor(s, 50).notch.depthMm).toBe(4.7625)
    expect(trowelFor(s, 200).notch.depthMm).toBe(6.35)
    expect(trowelFor(s, 304.8).notch.depthMm).toBe(9.525)
    expect(trowelFor(s, 457.2)).toMatchObject({ backButter: true, mortar: 'large-format-mortar' })
    expect(trowelFor(s, 5000).notch.depthMm).toBe(12.7)
  })

  test('a material is found by kind and id, and nothing else is', () => {
    const s = settings()
    expect(materialOf(s, 'mortar', 'rapid-mortar')?.setting).toBe('rapid')
    expect(materialOf(s, 'grout', 'rapid-mortar')).toBeNull()
    expect(materialOf(s, 'mortar', '__proto__')).toBeNull()
    expect(materialOf(s, 'mortar', 'constructor')).toBeNull()
  })

  test('the usual pack goes by the unit system', () => {
    const mortar = materialOf(settings(), 'mortar', 'large-format-mortar')!
    expect(usualPack(mortar, 'imperial').kg).toBeCloseTo(50 * 0.45359237, 4) // NIST Handbook 44 App. C
    expect(usualPack(mortar, 'metric').kg).toBe(20)
  })

  test('a figure without ends is its own range', () => {
    expect(spreadOf({ value: 3, source: 'x' })).toEqual({ low: 3, usual: 3, high: 3 })
    expect(spreadOf({ value: 3, low: 2, high: 5, source: 'x' })).toEqual({ low: 2, usual: 3, high: 5 })
  })
})

/** Each row spoils one thing; the answer must name the file, the path and what was expected. */
// biome-ignore lint/suspicious/noExplicitAny: the tests spoil files at any depth
const SPOILT: readonly [what: string, spoil: (f: any) => void, file: string, path: string, expected: RegExp][] = [
  [
    'a text for a number',
    (f) => {
      f['materials.json']['large-format-mortar'].wetKgPerL = 'heavy'
    },
    'materials.json',
    'large-format-mortar.wetKgPerL',
    /number/,
  ],
  [
    'a missing key',
    (f) => {
      delete f['materials.json']['large-format-mortar'].referenceC
    },
    'materials.json',
    'large-format-mortar.referenceC',
    /number/,
  ],
  [
    'a key it does not know',
    (f) => {
      f['materials.json']['mastic'].colour = 'grey'
    },
    'materials.json',
    'mastic',
    /only the keys it knows/,
  ],
  [
    'a kind it does not know',
    (f) => {
      f['materials.json']['mastic'].kind = 'paste'
    },
    'materials.json',
    'mastic.kind',
    /"mortar", "grout"/,
  ],
  [
    'a negative figure',
    (f) => {
      f['materials.json']['primer'].packs[0].kg = -1
    },
    'materials.json',
    'primer.packs.0.kg',
    /above 0/,
  ],
  [
    'an absurd figure',
    (f) => {
      f['materials.json']['sanded-grout'].packs[0].kg = 1e9
    },
    'materials.json',
    'sanded-grout.packs.0.kg',
    /at most 2000/,
  ],
  [
    'no packs',
    (f) => {
      f['materials.json']['primer'].packs = []
    },
    'materials.json',
    'primer.packs',
    /at least 1/,
  ],
  [
    'ends out of order',
    (f) => {
      f['materials.json']['mastic'].openTimeMin.low = 90
    },
    'materials.json',
    'mastic.openTimeMin',
    /rising order/,
  ],
  [
    'a shorter longest wait',
    (f) => {
      f['materials.json']['rapid-mortar'].waits.grout.longestH = 1
    },
    'materials.json',
    'rapid-mortar.waits.grout',
    /longestH at least h/,
  ],
  [
    'an unknown pack',
    (f) => {
      f['materials.json']['primer'].usualPack.metric = 'barrel'
    },
    'materials.json',
    'primer.usualPack.metric',
    /one of its packs/,
  ],
  [
    'an id with spaces',
    (f) => {
      f['materials.json']['my mortar'] = f['materials.json']['mastic']
    },
    'materials.json',
    'my mortar',
    /small letters/,
  ],
  [
    'a cap under the least bed',
    (f) => {
      f['materials.json']['leveller'].maxBedMm = 1
    },
    'materials.json',
    'leveller.maxBedMm',
    /minBedMm or more/,
  ],
  [
    'a figure without source',
    (f) => {
      delete f['practice.json'].mortar.minBedMm.source
    },
    'practice.json',
    'mortar.minBedMm.source',
    /string/,
  ],
  [
    'a missing figure',
    (f) => {
      delete f['practice.json'].cure.coldC
    },
    'practice.json',
    'cure.coldC',
    /object/,
  ],
  [
    'a figure outside its ends',
    (f) => {
      f['practice.json'].mortar.skimMm.value = 9
    },
    'practice.json',
    'mortar.skimMm',
    /rising order/,
  ],
  [
    'a yes for a truth value',
    (f) => {
      f['tiles.json'].glass.softFace = 'yes'
    },
    'tiles.json',
    'glass.softFace',
    /boolean/,
  ],
  [
    'an unknown unit system',
    (f) => {
      f['defaults.json'].units = 'cubits'
    },
    'defaults.json',
    'units',
    /"imperial", "metric"/,
  ],
  [
    'a long language',
    (f) => {
      f['defaults.json'].language = 'english'
    },
    'defaults.json',
    'language',
    /two letters/,
  ],
  [
    'a mortar that is not there',
    (f) => {
      f['defaults.json'].trowels[0].mortar = 'none'
    },
    'defaults.json',
    'trowels.0.mortar',
    /id of a mortar/,
  ],
  [
    'a grout that is a mortar',
    (f) => {
      f['defaults.json'].grout.sanded = 'mastic'
    },
    'defaults.json',
    'grout.sanded',
    /id of a grout/,
  ],
  [
    'a tile kind that is not there',
    (f) => {
      f['defaults.json'].tileKind = 'cheese'
    },
    'defaults.json',
    'tileKind',
    /tiles\.json/,
  ],
  [
    'trowels out of order',
    (f) => {
      f['defaults.json'].trowels[1].edgeUpToMm = 10
    },
    'defaults.json',
    'trowels.1.edgeUpToMm',
    /more than 60/,
  ],
  [
    'no trowel for the rest',
    (f) => {
      f['defaults.json'].trowels.pop()
    },
    'defaults.json',
    'trowels.2.edgeUpToMm',
    /null for the last/,
  ],
  [
    'a missing file',
    (f) => {
      delete f['tiles.json']
    },
    'tiles.json',
    '',
    /file of that name/,
  ],
  [
    'a list for a file',
    (f) => {
      f['practice.json'] = []
    },
    'practice.json',
    '',
    /object/,
  ],
  [
    'null for a file',
    (f) => {
      f['defaults.json'] = null
    },
    'defaults.json',
    '',
    /object/,
  ],
]

describe('a bad file', () => {
  test.each(SPOILT)('%s', (_, spoil, file, at, expected) => {
    const spoilt = files()
    spoil(spoilt)
    const read = readSettings(spoilt)
    if (read.ok) throw new Error('it passed')
    const fault = read.faults.find((f) => f.file === file && f.path === at)
    expect(fault, JSON.stringify(read.faults)).toBeDefined()
    expect(fault!.expected).toMatch(expected)
    expect(read.message).toContain(`config/${file}`)
    expect(read.message).toContain(at)
  })

  test('is named with what stands there', () => {
    const spoilt = files()
    spoilt['materials.json']['mastic'].wetKgPerL = 'heavy'
    const read = readSettings(spoilt)
    expect(!read.ok && read.message).toBe(
      'config/materials.json, at mastic.wetKgPerL: expected a value of type number; found "heavy"',
    )
  })

  test('that is no JSON is named', () => {
    const read = readSettingsTexts({ ...texts, 'defaults.json': '{ "units": "imperial", }' })
    expect(!read.ok && read.message).toMatch(/^config\/defaults\.json: expected JSON; found /)
  })

  test('does not hide another', () => {
    const spoilt = files()
    spoilt['defaults.json'].units = 1
    spoilt['tiles.json'].glass.thicknessMm = 0
    const read = readSettings(spoilt)
    expect(!read.ok && read.faults.map((f) => f.file).toSorted()).toEqual(['defaults.json', 'tiles.json'])
  })
})
