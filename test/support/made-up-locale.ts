/** A tiny made-up language, to show that a folder of tables is all a language needs: no code knows of it. */
import { en } from '../../src/language/en/index.ts'
import type { Locale } from '../../src/language/locale.ts'
import { NO_RULE_WORDS } from '../../src/language/rule-words.ts'

const none = <K extends string>(table: Readonly<Record<K, readonly string[]>>): Record<K, readonly string[]> =>
  Object.fromEntries(Object.keys(table).map((key) => [key, []])) as unknown as Record<K, readonly string[]>

export const madeUp: Locale = {
  code: 'xo',
  // Grouping by a space and a decimal comma, unlike either real one.
  intl: 'fr-FR',
  separators: { decimal: ',', thousands: '\u202f' },
  askedFor: ['sa xolo', 'xolo'],
  numbers: {
    words: { wan: 1, tu: 2, tiri: 3, tenta: 10, wuntiri: 13 },
    parts: { hafu: 1 / 2, kota: 1 / 4 },
    and: ['na'],
    one: ['wa'],
    partBehindNoun: false,
    doubtful: null,
    stuckUnits: ['fut'],
    powered: ['m'],
    pointThousands: true,
  },
  units: { ...none(en.units), ft: ['fut'], in: ['insh'], m: ['meta', 'm'], mm: ['mm'], sqm: ['m2'], sqft: ['fut2'] },
  words: {
    ...none(en.words),
    tile: ['plaka', 'plakas'],
    'how-many': ['omeni'],
    room: ['ruma'],
    joint: ['leina'],
    for: ['fo'],
    of: ['ofa'],
    mortar: ['matara'],
    bag: ['sakata'],
    trowel: ['palaka'],
    'make-it': ['makita'],
    math: ['sho matika'],
    help: ['hilfo'],
  },
  wayLetters: {},
  plain: ['pulis', 'tanki'],
  times: {
    clock: '(?!)',
    replace: [],
    spans: { alone: [], added: [], beforeHour: [], afterHour: [], every: [], timely: '(?!)' },
  },
  nounFirst: false,
  rules: NO_RULE_WORDS,
  commands: en.commands,
  ownWords: { define: ['"(?<word>[^"]+)" iza (?<means>.+)'], remove: [], list: ['alata voda'], articles: [] },
  phrases: {
    'tile.answer': '{count} {count|plaka|plakas} ofa {tile}, {spares} extra.',
    'unit.sf': '{n} fut2',
    'help.answer': 'Sei wata luka:',
    'language.pinned': 'Xolo fo yu',
  },
}
