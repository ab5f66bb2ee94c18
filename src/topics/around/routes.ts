/** Rows of the router for what lies around the tile, in the order they are looked at. */
import type { Concept } from '../../language/concepts.ts'
import type { Heard } from '../../language/heard.ts'
import type { Route } from '../../router.ts'
import { asksParts } from './mud-bed.ts'
import { primerAsked } from './primer-read.ts'

const GOODS: readonly Concept[] = [
  'underlayment',
  'cork',
  'foam',
  'cement-board',
  'fibre-cement',
  'crack-membrane',
  'membrane',
]
const AMOUNT: readonly Concept[] = ['how-many', 'how-much', 'buy', 'what', 'enough', 'cover']

const hasSheetSize = (h: Heard): boolean => h.sizes.some((size) => size.role === 'sheet')
const isSized = ({ facts: { goods } }: Heard): boolean => goods?.lengthMm !== undefined || goods?.m2 !== undefined
const hasFloor = (h: Heard): boolean => h.facts.rooms !== undefined || h.facts.areaM2 !== undefined
const hasMass = (h: Heard): boolean => h.quantities.some((q) => q.dimension === 'mass')

/** Tokens of a question that goes on with the talk. */
const SHORT = 5

/** Words of hauling and of stuff by the bag: there the weight is no appliance's. */
const CARRIED: readonly Concept[] = [
  'lift',
  'payload',
  'trip',
  'trailer',
  'truck',
  'bag',
  'mortar',
  'grout',
  'box',
  'walk',
  'when',
]

const COUNTED: readonly Concept[] = ['how-many', 'how-much']

/** "900 lb oven on four legs", "fridge 800 lb, floor ok?": what stands on the floor. */
const standsOnFloor = (h: Heard): boolean =>
  hasMass(h) && (h.has('leg', 'footprint', 'floor-load', 'can-we') || h.plain.text.includes('?'))

/** What is plainly counted goes before a verdict that some of its words might ask for. */
export const AROUND_SUMS: readonly Route[] = [
  { topic: 'shower', none: ['slope-word', 'drain', 'pan', 'set-verb', 'grout'], when: asksParts },
  { topic: 'order', all: [['appliance']], none: CARRIED, when: standsOnFloor },
  {
    topic: 'underlayment',
    all: [GOODS, ['adhesive', 'sheet', 'roll', 'tape', 'screw'], COUNTED],
    none: ['grout'],
    when: (h) => h.facts.tile === undefined,
  },
  {
    topic: 'levelling',
    all: [['clip', 'wedge']],
    when: (h) => h.has(...COUNTED) || h.facts.rooms !== undefined || h.facts.areaM2 !== undefined,
  },
]

/** "Order list", "everything we need"; a lone "order" may be the verb. */
const asksForList = (h: Heard): boolean => h.marks.some((m) => m.concept === 'order-word' && m.count > 1)

export const AROUND_ROUTES: readonly Route[] = [
  { topic: 'underlayment', when: primerAsked },
  { topic: 'underlayment', all: [['sheet', 'roll'], ['area-word']], when: (h) => isSized(h) && !hasFloor(h) },
  {
    topic: 'underlayment',
    all: [
      ['plywood', 'osb'],
      ['sheet', 'how-many'],
    ],
    none: ['joist', 'grout', 'mortar', 'mosaic', 'build-up', 'thick', ...GOODS],
    when: (h) => hasFloor(h) && h.facts.tile === undefined,
  },
  { topic: 'order', all: [['order-word']], when: asksForList },
  { topic: 'order', all: [['schedule']] },
  {
    topic: 'order',
    all: [['payload', 'trip', 'trailer']],
    none: ['grouted-verb'],
    when: (h) => hasMass(h) || h.has('trip', 'payload'),
  },
  { topic: 'order', all: [['wheelbase', 'hitch-word']], when: hasMass },
  { topic: 'order', all: [['lift']], when: hasMass },
  {
    topic: 'order',
    all: [['access-word']],
    none: ['joist'],
    when: (h) => h.has('step-to', 'door', 'what', 'can-we', 'build-up'),
  },
  {
    topic: 'order',
    when: (h) =>
      h.facts.prices !== undefined && (h.facts.areaM2 !== undefined || h.facts.rooms !== undefined) && !h.has('keep'),
  },
  { topic: 'order', all: [['missing', 'csv']] },
  {
    topic: 'order',
    all: [['base-trim', 'profile']],
    none: ['shower', 'pan', 'slab', 'grout', 'joint'],
    when: (h) => h.quantities.length > 0 && h.has('how-many', 'how-much', 'for', 'linear', 'of', 'buy'),
  },
  {
    topic: 'order',
    all: [['step']],
    none: ['walk', 'slope-word', 'house-part'],
    when: (h) => h.facts.tile !== undefined && (!h.facts.rooms || h.has('deep')),
  },
  { topic: 'order', all: [['flange', 'under-counter', 'undercut', 'floor-load']], none: ['joist', 'grouted-verb'] },
  { topic: 'order', all: [['step-to']], when: (h) => h.quantities.length > 0 },
  { topic: 'levelling', all: [['clip', 'wedge']] },
  { topic: 'shower', all: [['flood-test', 'weep', 'mud-word', 'linear-drain']], none: ['build-up', 'weight-word'] },
  { topic: 'shower', all: [['slope-word'], ['shower', 'pan', 'drain', 'curb', 'bench', 'niche', 'what']] },
  {
    topic: 'shower',
    all: [
      ['pan', 'drain', 'linear-drain'],
      ['mortar', 'thick', 'bag', 'deep'],
    ],
    none: ['grout', 'notch', 'trowel', 'tile'],
  },
  { topic: 'underlayment', all: [['waterproofing'], ['roll']], when: (h) => h.facts.goods !== undefined },
  { topic: 'shower', all: [['waterproofing', 'coat']], none: ['can-we'] },
  { topic: 'shower', all: [['tape'], ['shower', 'pan']] },
  {
    topic: 'shower',
    all: [
      ['curb', 'bench', 'niche'],
      ['shower', 'how-much', 'what'],
    ],
    none: ['tile', 'grout'],
  },
  {
    topic: 'order',
    all: [['build-up']],
    none: ['grout', 'shower', 'pan'],
    when: (h) => !h.has('wall', 'high') && (h.quantities.length > 0 || !h.has('mortar', 'slab', 'joint', ...GOODS)),
  },
  {
    topic: 'order',
    all: [['cost', 'tax', 'price']],
    when: (h) =>
      h.facts.tile !== undefined ||
      h.facts.areaM2 !== undefined ||
      h.facts.rooms !== undefined ||
      h.quantities.length > 1,
  },
  { topic: 'order', all: [['weight-word']] },
  { topic: 'order', all: [['order-word']], when: (h) => !h.has('how-many', 'how-much') },
  {
    topic: 'underlayment',
    all: [GOODS, ['mortar', 'adhesive'], ['under-word']],
    when: (h) => hasSheetSize(h) || hasFloor(h),
  },
  { topic: 'underlayment', all: [GOODS, ['sheet', 'roll', 'adhesive', 'tape', 'screw', 'fill-word']] },
  {
    topic: 'underlayment',
    all: [
      ['cork', 'foam', 'underlayment', 'cement-board', 'adhesive'],
      ['when', 'how-long', 'can-we'],
    ],
    none: ['grout', 'walk', 'heavy', 'mortar'],
  },
  {
    topic: 'underlayment',
    all: [['membrane', 'crack-membrane'], ['when', 'how-long', 'can-we'], ['tile']],
    none: ['grout', 'walk', 'heavy', 'mortar', 'impervious'],
  },
  {
    topic: 'underlayment',
    all: [GOODS, AMOUNT],
    when: (h) => !h.has('grout') && (!h.has('tile') || h.facts.tile === undefined),
  },
  {
    topic: 'underlayment',
    all: [['sheet', 'roll'], AMOUNT],
    none: ['mosaic', 'tile', 'grout'],
    when: (h) => h.facts.tile === undefined,
  },
  {
    topic: 'underlayment',
    all: [GOODS],
    none: ['waterproofing', 'mortar', 'grout'],
    when: (h) => h.facts.tile === undefined && (hasSheetSize(h) || hasFloor(h)),
  },
  // "rolls of 200 sf for 18x24", "4x8 plywood sheets for 16x20": what is cut to the floor, and the floor.
  {
    topic: 'underlayment',
    all: [['sheet', 'roll']],
    none: ['mosaic', 'grout', 'mortar', 'walk'],
    when: (h) => isSized(h) && hasFloor(h) && h.facts.tile === undefined,
  },
  // "and adhesive?", "seam tape?" after the sheets were counted.
  {
    topic: 'underlayment',
    all: [['adhesive', 'tape', 'screw']],
    none: ['tile', 'mortar', 'grout', 'shower', 'wall', 'sealant'],
    when: (h) => h.quantities.length === 0 && h.tokens.length <= SHORT,
  },
  {
    topic: 'underlayment',
    all: [
      ['cork', 'foam', 'cement-board', 'fibre-cement'],
      ['joint', 'spacer', 'screw', 'tape', 'thick', 'build-up', 'apart', 'which'],
    ],
    none: ['grout'],
    when: (h) => h.facts.tile === undefined,
  },
]
