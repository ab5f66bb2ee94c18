/** Grout: which kind, how much, and whether what is on hand will do. */
import { chooseGrout, groutNeed, jointVolumeL, jointVolumeLPerM2 } from '../core/grout.ts'
import { remaining } from '../core/stock.ts'
import type { GroutName } from '../facts.ts'
import { area, count, mass, number, type Phrase, percent, run, say, small, word } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import type { Grout, Pack } from '../settings.ts'
import { floorSum } from './floors.ts'
import { laidFor } from './plan.ts'
import { groutOf, jointOf, knownTile, packOf, packPhrase, thicknessOf, tilePhrase } from './stuff.ts'
import { type Brief, sourceOf, type Told } from './topic.ts'

type Kind = {
  readonly name: GroutName
  readonly grout: Grout
  readonly warnings: Phrase[]
  readonly because: Phrase | null
}

/** The grout that is meant: named, else by the joint's width and the tile's face. */
function kindOf(brief: Brief, jointMm: number): Outcome<Kind> {
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
function chooseOnly(brief: Brief, kind: Kind, jointMm: number): Told {
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

const asksKind = (brief: Brief): boolean =>
  (brief.heard.has('sanded') && brief.heard.has('unsanded')) ||
  (brief.heard.has('which', 'can-we', 'what') &&
    brief.heard.has('grout', 'sanded', 'unsanded') &&
    !brief.heard.has('how-much', 'how-many', 'bag', 'enough'))

type Amounts = {
  readonly perM2: number
  readonly litres: number
  readonly kg: { low: number; usual: number; high: number }
  readonly bags: number
  readonly bagsSafe: number
  readonly pack: Pack
}

function amountsOf(brief: Brief, kind: Kind, perM2: number, litres: number, assumed: Phrase[]): Outcome<Amounts> {
  const { practice } = brief.settings
  const pack = packOf(brief, kind.grout, assumed)
  const need = groutNeed(litres, {
    powderKgPerJointL: kind.grout.powderKgPerJointL,
    bagKg: pack.kg,
    wasteShare:
      brief.facts.sparePct !== undefined && brief.heard.facts.sparePct !== undefined
        ? brief.facts.sparePct / 100
        : practice.grout.wasteShare.value,
    openDepthShare: practice.grout.openDepthShare.value,
  })
  if (!need.ok) return need
  return fine({ perM2, litres, kg: need.value.kg, bags: need.value.bagsToBuy, bagsSafe: need.value.bagsSafe, pack })
}

/** The joints of the floor as laid, where it has a shape; else null: the standard formula serves for the area. [m] */
function jointLengthOf(brief: Brief, jointMm: number): number | null {
  const tile = knownTile(brief.facts)
  const laid = tile && brief.facts.leftM2 === undefined ? laidFor(brief.facts, tile, jointMm) : null
  return laid?.ok ? laid.value.jointLengthM : null
}

export function grout(brief: Brief): Outcome<Told> {
  const assumed: Phrase[] = []
  const { facts, settings } = brief
  const jointMm = jointOf(brief, assumed)
  const jointLengthM = jointLengthOf(brief, jointMm)
  const kind = kindOf(brief, jointMm)
  if (!kind.ok) return kind
  const floor = floorSum(facts)
  if (!floor.ok) return floor
  const areaM2 = facts.leftM2 ?? floor.value?.areaM2
  if (
    asksKind(brief) ||
    (areaM2 === undefined && facts.jointMm !== undefined && !brief.heard.has('how-much', 'how-many', 'bag'))
  )
    return fine(chooseOnly(brief, kind.value, jointMm))
  const tile = knownTile(facts)
  if (!tile) return refuse('question', { question: 'tile' })
  if (areaM2 === undefined) return refuse('question', { question: 'area' })
  const depthMm = thicknessOf(brief, tile, assumed)
  const perM2 = jointVolumeLPerM2({ lengthMm: tile.lengthMm, widthMm: tile.widthMm, jointMm }, depthMm)
  if (!perM2.ok) return refuse('out-of-range', { ...perM2.problem.facts })
  const measured =
    jointLengthM !== null && facts.leftM2 === undefined ? jointVolumeL(jointLengthM, jointMm, depthMm) : null
  const litres = measured?.ok ? measured.value : perM2.value * areaM2
  const amounts = amountsOf(brief, kind.value, perM2.value, litres, assumed)
  if (!amounts.ok) return amounts
  const told = tellAmounts(brief, kind.value, amounts.value, areaM2)
  if (!told.ok) return told
  return fine({
    ...told.value,
    assumed: [...assumed, ...(kind.value.because ? [kind.value.because] : [])],
    warnings: kind.value.warnings,
    sources: [sourceOf(settings.practice.grout.sandedFromMm), { text: kind.value.grout.source }],
    working: [
      measured?.ok
        ? say('grout.work-length', {
            length: run((jointLengthM as number) * 1000),
            joint: number(jointMm, 2),
            depth: number(depthMm, 1),
            litres: number(litres, 2),
          })
        : say('grout.work-volume', {
            length: number(tile.lengthMm, 1),
            width: number(tile.widthMm, 1),
            joint: number(jointMm, 2),
            depth: number(depthMm, 1),
            perM2: number(perM2.value, 3),
            area: number(areaM2, 2),
            litres: number(litres, 2),
          }),
      say('grout.work-powder', {
        litres: number(litres, 2),
        density: number(kind.value.grout.powderKgPerJointL.usual, 2),
        waste: percent(settings.practice.grout.wasteShare.value * 100),
        kg: number(amounts.value.kg.usual, 2),
      }),
    ],
    values: {
      ...told.value.values,
      area_m2: areaM2,
      tile_length_mm: tile.lengthMm,
      tile_width_mm: tile.widthMm,
      tile_thickness_mm: depthMm,
      joint_mm: jointMm,
      joint_depth_mm: depthMm,
      grout_kg: amounts.value.kg.usual,
      grout_kg_low: amounts.value.kg.low,
      grout_kg_high: amounts.value.kg.high,
      grout_bags: amounts.value.bags,
      joint_length_m: jointLengthM ?? undefined,
    },
    offers: ['math', 'keep'],
  })
}

function tellAmounts(brief: Brief, kind: Kind, amounts: Amounts, areaM2: number): Outcome<Told> {
  const tile = knownTile(brief.facts) as NonNullable<ReturnType<typeof knownTile>>
  const named = {
    kind: word(`grout-${kind.name}`),
    bag: packPhrase(amounts.pack),
    area: area(areaM2),
    mass: mass(amounts.kg.usual),
    tile: tilePhrase(tile, brief.metric),
  }
  const have = brief.facts.haveBags
  if (have !== undefined) {
    const perBag = (kg: number): number => amounts.pack.kg / (kg / areaM2)
    const rest = remaining(have, areaM2, {
      low: perBag(amounts.kg.high),
      usual: perBag(amounts.kg.usual),
      high: perBag(amounts.kg.low),
    })
    if (!rest.ok) return rest
    const { verdict, needed, buy } = rest.value
    return fine({
      topic: 'grout',
      answer: say(`grout.${verdict}`, {
        ...named,
        have: count(have),
        need: number(needed.usual, 1),
        buy: count(Math.max(1, buy)),
      }),
      values: { bags_to_finish: needed.usual, bags_to_finish_90: needed.high, bags_to_buy: buy },
    })
  }
  const key = kind.grout.wholeKits ? 'grout.kits' : amounts.bagsSafe > amounts.bags ? 'grout.bags-safe' : 'grout.bags'
  return fine({
    topic: 'grout',
    answer: say(key, { ...named, bags: count(amounts.bags), safe: count(amounts.bagsSafe) }),
    details: kind.grout.waterLPerKg === null ? [say('grout.no-water')] : [say('grout.same-water')],
  })
}
