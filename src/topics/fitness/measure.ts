/** Which measurement a message holds, as far as its figures are all there. */
import type { Heard } from '../../language/heard.ts'
import type { RuleWords } from '../../language/rule-words.ts'
import { runAndRiseIn } from './expansion.ts'
import { sealantSectionMm } from './slab.ts'
import { cutFiguresIn, floorNumbersIn, wheelIn } from './worked.ts'

export const MEASURES = [
  'heights',
  'joists',
  'sheathing',
  'gaps',
  'square',
  'voids',
  'contacts',
  'joint',
  'lippage',
  'screed',
  'holes',
  'humidity',
  'width',
  'expansion',
  'tubes',
  'bed',
  'airflow',
  'ends',
  'sag',
  'floor-number',
  'notch',
] as const
export type MeasureName = (typeof MEASURES)[number]

const THERE: Readonly<Record<MeasureName, (words: RuleWords, heard: Heard) => boolean>> = {
  heights: ({ measures }) => measures.grid !== null,
  joists: ({ measures }) => measures.joists !== null,
  sheathing: ({ measures }) => measures.sheathing !== null && measures.sheathing.spacingMm !== null,
  gaps: ({ measures, figures }) => measures.gapsMm.length > 1 && (figures.edgeMm !== null || figures.gap !== null),
  // Four sides and a diagonal are the room itself.
  square: ({ measures }, { facts }) => measures.square !== null && facts.rooms?.[0]?.outline?.told !== 'four-sides',
  voids: ({ measures }) => measures.voids !== null,
  contacts: ({ measures, sum }) => measures.contactsPct.length > 1 && !sum,
  joint: ({ measures, sum, subjects }) =>
    (measures.calipersMm.length > 2 ||
      measures.variationMm !== null ||
      (measures.warpMm !== null && subjects[0]?.name === 'least-joint')) &&
    !sum,
  lippage: ({ measures, figures }) => measures.warpMm !== null && figures.jointMm !== null,
  screed: ({ measures, subjects }) => measures.slabMm !== null && subjects[0]?.name === 'screed-sulfate',
  holes: ({ measures, subjects }, heard) =>
    (subjects[0]?.name === 'slab-holes' || measures.holes !== null) &&
    (measures.slabMm !== null || heard.facts.areaM2 !== undefined),
  humidity: ({ measures, subjects }) => measures.humiditiesPct.length > 1 && subjects[0]?.name === 'slab-humidity',
  width: ({ figures, subjects, conditions }) =>
    subjects.some((hit) => hit.name === 'movement-width') &&
    figures.longMm !== null &&
    conditions['place']?.[0] === 'exterior',
  expansion: (_, heard) => runAndRiseIn(heard) !== null,
  tubes: ({ figures, stances }) =>
    (figures.longMm !== null || stances.includes('ask')) && sealantSectionMm(figures) !== null,
  bed: (_, { facts }) => facts.trowel !== undefined && facts.areaM2 === undefined && facts.rooms === undefined,
  airflow: (_, heard) => wheelIn(heard) !== null,
  ends: (_, heard) => heard.facts.rooms === undefined && cutFiguresIn(heard, heard.system === 'metric') !== null,
  sag: ({ figures, measures }) => figures.longMm !== null && measures.joists === null,
  'floor-number': ({ stances }, heard) => !stances.includes('may') && floorNumbersIn(heard).length > 0,
  notch: ({ subjects, sum, figures }, heard) =>
    !sum &&
    subjects[0]?.name === 'notch-size' &&
    (figures.tileMm !== null || heard.facts.tile !== undefined || heard.facts.trowel !== undefined),
}

/** The first that is there, or null. Words are looked at before figures, which cost more. */
export function measureIn(heard: Heard): MeasureName | null {
  const words = heard.rules
  const named = words.measuring
  return MEASURES.find((name) => named.includes(name) && THERE[name](words, heard)) ?? null
}
