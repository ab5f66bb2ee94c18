/** What the job holds now: its facts, what they take, what is logged of it. */
import type { Facts } from '../../facts.ts'
import type { Job } from '../../jobs/job.ts'
import type { Memory } from '../../jobs/memory.ts'
import { count, say } from '../../phrase.ts'
import { isMixed } from '../../room-tiles.ts'
import { floorSum } from '../floors.ts'
import { logValues } from '../log/values.ts'
import { knownTile } from '../stuff.ts'
import type { Brief, Told } from '../topic.ts'
import { lasting, numberIn, quantitiesOf, tilesTold, type Values } from './quantities.ts'
import { factPhrases, jobName, logLines } from './tell.ts'

/** Keys of the contract that the facts of a job fill by themselves. */
export function factValues(facts: Facts): Values {
  const floor = floorSum(lasting(facts))
  const tile = knownTile(facts)
  return {
    area_m2: floor.ok ? floor.value?.areaM2 : undefined,
    tile_length_mm: tile?.lengthMm,
    tile_width_mm: tile?.widthMm,
    tile_thickness_mm: facts.tile?.thicknessMm,
    joint_mm: facts.jointMm,
    notch_width_mm: facts.trowel?.widthMm,
    notch_depth_mm: facts.trowel?.depthMm,
  }
}

/** A job without a floor of its own shows what the talk is about. */
const shownFacts = ({ facts, talk }: Memory): Facts =>
  facts.rooms === undefined && facts.areaM2 === undefined && talk ? { ...lasting(talk.facts), ...facts } : facts

export function holdings(brief: Brief, facts: Facts, shown: Job): Pick<Told, 'details' | 'values'> {
  const values = quantitiesOf(brief, facts)
  const [tiles, boxes, mortar, grout] = ['tile_count', 'tile_boxes', 'mortar_bags', 'grout_bags'].map((k) =>
    numberIn(values, k),
  )
  const bySize = tilesTold(brief, facts)
  const takes = [
    ...(boxes !== null ? [say('job.takes-boxes', { n: count(boxes) })] : []),
    ...(bySize.length > 0 ? bySize : tiles !== null ? [say('job.takes-tiles', { n: count(tiles) })] : []),
    ...(mortar !== null ? [say('job.takes-mortar', { n: count(mortar) })] : []),
    ...(grout !== null ? [say('job.takes-grout', { n: count(grout) })] : []),
  ]
  return {
    details: [
      ...(takes.length > 0 ? [say('job.takes', { list: takes })] : []),
      ...logLines(shown),
      ...(shown.readings.length > 0 ? [say('job.readings', { n: count(shown.readings.length) })] : []),
    ],
    values: { ...values, ...(isMixed(facts) ? {} : factValues(facts)), ...logValues(shown) },
  }
}

export function soFar(brief: Brief): Told {
  const { memory } = brief
  const facts = shownFacts(memory)
  const list = factPhrases(facts, brief.metric)
  const { details, values } = holdings(brief, facts, memory.job)
  const nothing = list.length === 0 && (details ?? []).length === 0
  return {
    topic: 'job',
    answer: nothing
      ? say('job.empty')
      : say('job.holds', { job: jobName(memory.job), list: list.length > 0 ? list : [say('job.no-facts')] }),
    details,
    values,
    offers: nothing ? [] : ['undo'],
  }
}
