/** "You're burning grout": what a bag filled against what those joints should take, and what would account for it. */
import { logged } from '../../jobs/job.ts'
import { area, percent, say, small } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { knownTile, tilePhrase, usualJointMm } from '../stuff.ts'
import type { Brief, Told } from '../topic.ts'
import { coverageLogged } from './burning.ts'
import { priorM2 } from './finish.ts'
import { logValues } from './values.ts'

/** Joints are never raked so evenly that less than this share off would mean anything. */
const NORMAL_SHARE = 0.2

export function burningGrout(brief: Brief, saidM2PerBag: number | null): Outcome<Told> {
  const { facts } = brief
  const tile = knownTile(facts)
  if (!tile) return refuse('question', { question: 'tile' })
  const usual = priorM2(brief, facts, 'grout')
  const log = logged(brief.memory.job, 'grout')
  const actual = saidM2PerBag ?? coverageLogged(log.stretches)
  const jointMm = facts.jointMm ?? usualJointMm(brief)
  const setup = {
    tile: tilePhrase(tile, brief.metric),
    joint: small(jointMm),
    usual: area(usual ?? 0),
    actual: area(actual ?? 0),
  }
  const common = { topic: 'log' as const, values: logValues(brief.memory.job), offers: ['undo'] }
  if (usual === null) return refuse('question', { question: 'tile' })
  if (actual === null) return fine({ ...common, answer: say('log.grout-should', setup), offers: [] })
  const share = usual / actual
  const verdict = share > 1 + NORMAL_SHARE ? 'heavy' : share < 1 / (1 + NORMAL_SHARE) ? 'light' : 'right'
  return fine({
    ...common,
    answer: say(`log.grout-${verdict}`, setup),
    details: [
      say('log.grout-should', setup),
      ...(verdict === 'heavy'
        ? [
            say('log.more-grout', { more: percent((share - 1) * 100) }),
            say('log.reason-joint', { joint: small(jointMm * share) }),
            say('log.reason-grout-waste', { share: percent((1 - 1 / share) * 100) }),
          ]
        : verdict === 'light'
          ? [say('log.grout-light-check')]
          : []),
    ],
    offers: [],
  })
}
