/** From what was heard to the topic that answers it. A table, read from the top: the first row that fits wins. */

import type { Facts } from './facts.ts'
import type { Talk } from './jobs/memory.ts'
import type { Concept } from './language/concepts.ts'
import type { Heard } from './language/heard.ts'
import { mentionsTime } from './language/moments.ts'
import { remembered } from './remembered.ts'
import type { Topic } from './reply.ts'
import { AROUND_ROUTES, AROUND_SUMS } from './topics/around/routes.ts'
import { asksPour } from './topics/fitness/pour.ts'
import { asksRule, asksVerdict } from './topics/fitness/route.ts'
import { asksSomething } from './topics/job/asks.ts'
import { poleLengthMm, rulesCompared } from './topics/layout-route.ts'
import { ledgerAsked } from './topics/wall-route.ts'

export type Route = {
  readonly topic: Topic
  /** All of these were heard, each as any one of its list. */
  readonly all?: readonly (readonly Concept[])[]
  readonly none?: readonly Concept[]
  /** Bags may be of anything: after a question about grout or water this row is about that. */
  readonly weak?: boolean
  /** What words alone do not tell. */
  readonly when?: (heard: Heard) => boolean
}

const asksTime: readonly Concept[] = ['when', 'how-long', 'can-we']

/** Rows of the quantities and waits. Other topics add theirs where they belong in the order. */
export const ROUTES: readonly Route[] = [
  // What a bag covers by its notch is a sum; what the notch should leave is a rule.
  {
    topic: 'mortar',
    all: [
      ['cover', 'bag'],
      ['notch', 'trowel'],
    ],
    none: ['negation'],
    when: namesBag,
  },
  {
    topic: 'cure',
    all: [['set-verb', 'grouted-verb']],
    none: ['how-much', 'how-many', 'water', 'bag'],
    when: tellsStart,
  },
  {
    topic: 'layout',
    all: [['niche'], ['rough-opening', 'wide', 'high']],
    none: ['slope-word', 'waterproofing', 'can-we', 'how-many'],
  },
  { topic: 'layout', all: [['carry-round']], when: (h) => h.quantities.length > 0 || h.tokens.length <= 10 },
  {
    topic: 'layout',
    all: [
      ['niche', 'window-word', 'outlet', 'valve-word'],
      ['on-joints', 'where-put'],
    ],
    none: ['slope-word', 'waterproofing', 'how-many', 'how-much'],
    when: (h) => h.quantities.length > 0 || h.has('on-joints'),
  },
  { topic: 'layout', when: ledgerAsked },
  { topic: 'layout', when: (h) => rulesCompared(h) || poleLengthMm(h) !== null },
  { topic: 'substrate', when: asksPour },
  {
    topic: 'layout',
    all: [['movement-word']],
    none: ['how-much', 'piece', 'box', 'layout-word', 'picture', 'mortar', 'grout'],
    when: (h) => h.facts.rooms !== undefined && (h.facts.tile === undefined || !asksForRule(h)),
  },
  // "10 or 15 percent extra for herringbone?"
  {
    topic: 'tile',
    all: [['spare']],
    none: ['price', 'cost', 'tax'],
    when: (h) => h.percents.length > 0 && h.facts.pattern !== undefined,
  },
  { topic: 'shower', all: [['curb'], ['build-up', 'high', 'what', 'how-much']], none: ['tile', 'mortar'] },
  ...AROUND_SUMS,
  { topic: 'mix', all: [['mixed-verb'], ['ago']], none: ['water', 'walk', 'set-verb'], when: asksSomething },
  { topic: 'mix', all: [['open-time']] },
  { topic: 'mix', all: [['mix-verb', 'spread-verb'], ['how-much']], when: asksBatch },
  // "mix for 130 sf": the powder and water for so much, and no floor to be laid out.
  {
    topic: 'mix',
    all: [['mix-verb']],
    none: ['can-we', 'tile', 'grouted-verb', 'bag', 'how-many'],
    when: (h) => h.facts.areaM2 !== undefined && h.facts.rooms === undefined && h.facts.tile === undefined,
  },
  { topic: 'mix', all: [['pot-life']], none: ['can-we', 'negation'] },
  { topic: 'mix', all: [['slake']], none: ['can-we', 'negation'], when: asksHowLong },
  { topic: 'mix', all: [['bucket'], ['how-long', 'when']], none: ['grouted-verb', 'set-verb', 'can-we'] },
  { topic: 'trouble', when: asksVerdict },
  { topic: 'help', all: [['help']], when: (h) => h.quantities.length === 0 },
  ...AROUND_ROUTES,
  { topic: 'trouble', when: asksRule },
  { topic: 'mix', all: [['how-many', 'how-much']], when: asksVolumeForPowder },
  // "can I use sanded on glass?" is about the kind; with a when or a how long it is about the wait.
  { topic: 'grout', all: [['sanded', 'unsanded']], none: ['when', 'how-long', 'water', 'slake', 'pot-life'] },
  {
    topic: 'mix',
    all: [['water'], ['how-much', 'how-many', 'what', 'mortar', 'grout', 'bag', 'powder', 'for']],
    none: ['waterproofing', 'wet-use'],
    when: mixesStuff,
  },
  {
    topic: 'cure',
    all: [asksTime, ['grout', 'walk', 'heavy', 'wet-use', 'cure-word', 'set-verb', 'grouted-verb']],
    none: ['how-much', 'how-many'],
  },
  { topic: 'cure', all: [['cure-word']], none: ['how-much', 'how-many', 'bag'], weak: true },
  {
    topic: 'cure',
    all: [['set-verb', 'grouted-verb']],
    when: (h) => h.facts.temperatures !== undefined || h.has('time-word') || tellsHour(h),
  },
  { topic: 'grout', all: [['grout', 'sanded', 'unsanded', 'epoxy', 'premium-grout']], none: ['mortar'] },
  {
    topic: 'mortar',
    all: [['mortar', 'notch', 'trowel', 'back-butter', 'large-format', 'unmodified', 'rapid', 'mastic']],
    when: (h) => !h.has('grout') && !h.has('how-many'),
  },
  { topic: 'mortar', all: [['mortar', 'large-format', 'unmodified', 'rapid', 'mastic']] },
  { topic: 'mortar', all: [['cover'], ['bag', 'notch', 'trowel']], none: ['grout', 'tile'], weak: true },
  {
    topic: 'mortar',
    all: [['bag'], ['how-many', 'how-much', 'enough', 'left-to-do', 'left', 'used', 'have', 'will-do']],
    none: ['grout', 'tile'],
    weak: true,
  },
  { topic: 'tile', all: [['spare'], ['how-much', 'what', 'which', 'how-many']], none: ['mortar', 'grout', 'bag'] },
  {
    topic: 'tile',
    all: [
      ['tile', 'piece', 'box', 'plank', 'tile-kind', 'mosaic'],
      ['how-many', 'how-much', 'buy', 'what'],
    ],
  },
  { topic: 'tile', all: [['box'], ['enough']], none: ['mortar', 'grout', 'bag'] },
  {
    topic: 'layout',
    all: [
      [
        'layout-word',
        'start-line',
        'cut',
        'hide',
        'full-tiles',
        'picture',
        'which-way',
        'story-pole',
        'cut-list',
        'slab-joint',
      ],
    ],
    none: ['how-much', 'mortar', 'grout', 'clip'],
  },
  { topic: 'layout', all: [['room-off']] },
  { topic: 'help', all: [['thanks', 'greeting']], when: (h) => h.quantities.length === 0 && h.tokens.length <= 6 },
  { topic: 'layout', all: [['perimeter', 'area-word']], when: (h) => h.facts.tile === undefined },
]

/** "set at 3" */
const tellsHour = (heard: Heard): boolean =>
  heard.loose.some(({ q }) => q.dimension === 'none' && q.n >= 1 && q.n <= 12 && heard.reader.is(q.first - 1, 'at'))

/** Something was done at a time or at a temperature, and a wait is asked for: "set at 2pm, 58F, can we grout tonight?" */
function tellsStart(heard: Heard): boolean {
  const known = heard.facts.temperatures !== undefined || mentionsTime(heard)
  const asks = heard.has('grout', 'walk', 'heavy', 'wet-use', 'when', 'how-long', 'cure-word')
  // "can I set tile at 45F?" asks leave to begin.
  const begins = heard.marks.some((m) => m.concept === 'can-we' && heard.reader.is(m.first + m.count, 'set-verb'))
  return known && asks && !begins
}

/** "how long to slake", "slake time?": the minutes, not whether it must be. */
function asksHowLong(heard: Heard): boolean {
  return heard.has('how-long', 'when', 'how-much') || heard.tokens.length <= 3
}

/** "how much should I mix", "how much can I spread at a time": the next stretch, not the whole floor. */
function asksBatch(heard: Heard): boolean {
  return heard.facts.rooms === undefined && heard.facts.bagKg === undefined && !heard.has('water', 'buy')
}

function namesBag(heard: Heard): boolean {
  return heard.has('bag') || heard.facts.bagKg !== undefined || heard.facts.powderKg !== undefined
}

/** "how many quarts for 25 lb of sanded?" */
function asksVolumeForPowder(heard: Heard): boolean {
  const powder = heard.facts.powderKg !== undefined || heard.facts.bagKg !== undefined
  return (
    powder &&
    heard.freeUnits.some((unit) => VOLUMES.includes(unit)) &&
    heard.quantities.every((q) => q.dimension !== 'volume')
  )
}
const VOLUMES: readonly string[] = ['qt', 'gal', 'l', 'ml', 'cup', 'pt', 'floz', 'oz']

/** Water for powder, not water on a floor. */
function mixesStuff(heard: Heard): boolean {
  return (
    heard.has(
      'mortar',
      'grout',
      'bag',
      'powder',
      'sanded',
      'unsanded',
      'large-format',
      'rapid',
      'leveller',
      'epoxy',
      'unmodified',
    ) ||
    heard.facts.powderKg !== undefined ||
    heard.facts.bagKg !== undefined
  )
}

const fits = (route: Route, heard: Heard): boolean =>
  (route.all ?? []).every((any) => heard.has(...any)) &&
  !(route.none && heard.has(...route.none)) &&
  (route.when?.(heard) ?? true)

/** The topic a message asks for by its own words, or null where it names none. */
export function topicNamed(heard: Heard): Topic | null {
  return routeOf(heard)?.topic ?? null
}

const routes = remembered<Heard, Route | null>(4)

/** The first row that fits, looked for once a message. */
const routeOf = (heard: Heard): Route | null => routes(heard, () => ROUTES.find((one) => fits(one, heard)) ?? null)

const SUM_TOPICS: readonly Topic[] = ['tile', 'mortar', 'grout', 'layout', 'levelling', 'order', 'underlayment']
const RULE_TOPICS: readonly Topic[] = ['trouble', 'joints', 'contact', 'substrate']

/** Facts and no question. */
function changesOnly(heard: Heard): boolean {
  const { jointMm, pattern, tile, trowel } = heard.facts
  const told = jointMm !== undefined || pattern !== undefined || tile !== undefined || trowel !== undefined
  return (
    told &&
    !heard.plain.text.includes('?') &&
    !heard.has('can-we', 'enough', 'which', 'how-long') &&
    heard.tokens.length <= 12
  )
}

/** "and the water?" */
const A_WORD = 4

/** Answers that end in powder to be mixed. */
const WATERED: readonly Topic[] = ['tile', 'mortar', 'grout', 'mix']

/** "how much water for that" */
const asksWater = (heard: Heard): boolean =>
  heard.has('water') &&
  (heard.has('how-much', 'how-many', 'what') || heard.tokens.length <= A_WORD) &&
  !heard.has('wet-use', 'waterproofing', 'shower')

const POWDER_TOPICS: readonly Topic[] = ['grout', 'mix', 'mortar']

/** "do I need movement joints here?", "why soft joints" */
const asksForRule = ({ rules }: Heard): boolean => rules.stances.some((s) => s !== 'ask') || rules.why

/** Soft joints of a floor that is known are counted; asked by themselves they are a rule. */
const countsSoftJoints = (heard: Heard, base: Facts): boolean =>
  heard.has('movement-word') &&
  base.rooms !== undefined &&
  !asksForRule(heard) &&
  !heard.has('how-long', 'when', 'apart')

/** What changes a floor tells the last sum again; without one, what the job knows. */
export const topicOfFloor = (talk: Talk | null, job: Facts): Topic =>
  talk && SUM_TOPICS.includes(talk.topic) ? talk.topic : job.tile ? 'tile' : 'layout'

/** The topic of a message that names none: that of the talk it goes on with, else by what it states. */
export function topicOf(heard: Heard, talk: Talk | null, followsUp: boolean, base: Facts): Topic | null {
  if (countsSoftJoints(heard, base)) return 'layout'
  // "running bond instead", "and grout with 3mm joints": a change of the last sum asks for no rule.
  const changes = followsUp && talk !== null && SUM_TOPICS.includes(talk.topic) && changesOnly(heard)
  const route = changes ? ROUTES.find((r) => !RULE_TOPICS.includes(r.topic) && fits(r, heard)) : routeOf(heard)
  const yields = route?.weak && followsUp && talk && (route.topic === 'cure' || POWDER_TOPICS.includes(talk.topic))
  if (yields) return talk.topic
  if (route) return route.topic
  if (followsUp && talk && WATERED.includes(talk.topic) && asksWater(heard)) return 'mix'
  const { facts } = heard
  // An area told first and a tile after it: now there is something to count.
  const counts = facts.tile !== undefined || heard.has('how-many')
  if (followsUp && talk) return talk.topic === 'layout' && counts ? 'tile' : talk.topic
  if (facts.tile || facts.boxTiles || facts.boxM2) return 'tile'
  if (facts.trowel || facts.coverageM2 || facts.haveBags || facts.usedBags) return 'mortar'
  if (facts.rooms || facts.areaM2) return 'layout'
  return null
}
