/** Which grout is meant or fits: named, else by the joint's width and the tile's face. */
import { chooseGrout } from '../core/grout.ts'
import type { GroutName } from '../facts.ts'
import { type Phrase, say, small, word } from '../phrase.ts'
import { fine, type Outcome } from '../problem.ts'
import type { Grout } from '../settings.ts'
import { groutOf } from './stuff.ts'
import { type Brief, sourceOf, type Told } from './topic.ts'

export type Kind = {
  readonly name: GroutName
  readonly grout: Grout
  readonly warnings: Phrase[]
  readonly because: Phrase | null
}

/** The grout that is meant: named, else by the joint's width and the tile's face. */
export function kindOf(brief: Brief, jointMm: number): Outcome<Kind> {
  const { practice, tiles } = brief.settings
  const { facts } = brief
  const soft =
    facts.softFace === true ||
    (facts.tile?.kind !== undefined && tiles[facts.tile.kind]?.softFace === true && facts.tile.kind === 'glass')
  const choice = chooseGrout(jointMm, soft, {
    sandedFromMm: practice.grout.sandedFromMm.value,
    coarseFromMm: practice.grout.coarseFromMm.value,
  })
  if (!choice.ok) return choice
  const named = asksKind(brief) && facts.grout !== 'epoxy' ? undefined : facts.grout
  const name: GroutName = named ?? choice.value.type
  const found = groutOf(brief, name)
  if (!found.ok) return found
  const warnings: Phrase[] = []
  if (choice.value.testPanel) warnings.push(say('grout.test-panel'))
  if (facts.grout === 'unsanded' && choice.value.type === 'sanded')
    warnings.push(say('grout.unsanded-wide', { limit: small(practice.grout.sandedFromMm.value) }))
  if (facts.grout === 'sanded' && choice.value.type === 'unsanded')
    warnings.push(
      say(soft ? 'grout.sand-scratches' : 'grout.sanded-narrow', { limit: small(practice.grout.sandedFromMm.value) }),
    )
  if (choice.value.coarse && name === 'sanded') warnings.push(say('grout.coarse'))
  const because = facts.grout
    ? null
    : say(`grout.because-${choice.value.because}`, {
        joint: small(jointMm),
        limit: small(practice.grout.sandedFromMm.value),
      })
  return fine({ name, grout: found.value.grout, warnings, because })
}

/** "sanded or unsanded for a 3/16 joint": the kind is the answer. */
export function chooseOnly(brief: Brief, kind: Kind, jointMm: number): Told {
  return {
    topic: 'grout',
    answer: say(verdictKey(brief, kind), { kind: word(`grout-${kind.name}`), joint: small(jointMm) }),
    details: kind.because ? [kind.because] : [],
    warnings: kind.warnings,
    sources: [sourceOf(brief.settings.practice.grout.sandedFromMm)],
    working: kind.because ? [kind.because] : [],
    values: { joint_mm: jointMm },
    offers: ['math'],
  }
}

/** "can I use sanded?": the verdict comes first. */
function verdictKey(brief: Brief, kind: Kind): string {
  const one = brief.heard.has('sanded') !== brief.heard.has('unsanded') && brief.heard.has('can-we')
  if (!one || brief.facts.grout === undefined) return 'grout.choice'
  return brief.facts.grout === kind.name ? 'grout.choice-yes' : 'grout.choice-no'
}

export const asksKind = (brief: Brief): boolean =>
  (brief.heard.has('sanded') && brief.heard.has('unsanded')) ||
  (brief.heard.has('which', 'can-we', 'what') &&
    brief.heard.has('grout', 'sanded', 'unsanded') &&
    !brief.heard.has('how-much', 'how-many', 'bag', 'enough'))
