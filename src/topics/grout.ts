/** Grout: which kind, how much, and whether what is on hand will do. */
import { groutNeed, jointVolumeL, jointVolumeLPerM2 } from '../core/grout.ts'
import { remaining } from '../core/stock.ts'
import type { Facts, Tile } from '../facts.ts'
import { area, count, mass, number, type Phrase, percent, say, word } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import type { Pack } from '../settings.ts'
import { briefsByTiling, joinParts, type TiledPart } from './by-tiling.ts'
import { floorSum, roomM2, roomName } from './floors.ts'
import { asksKind, chooseOnly, type Kind, kindOf } from './grout-kind.ts'
import { laidFor } from './plan.ts'
import { jointOf, knownTile, packOf, packPhrase, thicknessOf, tilePhrase } from './stuff.ts'
import { type Brief, sourceOf, type Told } from './topic.ts'

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

/** The joints of a room as it is laid, where it has a shape; else null: the standard formula serves for the area. [m] */
function jointLengthOf(facts: Facts, jointMm: number): number | null {
  const tile = knownTile(facts)
  const laid = tile && facts.leftM2 === undefined ? laidFor(facts, tile, jointMm) : null
  return laid?.ok ? laid.value.jointLengthM : null
}

/** What the joints of one tiling hold. */
type Joints = {
  readonly brief: Brief
  readonly kind: Kind
  readonly tile: Tile
  readonly jointMm: number
  readonly depthMm: number
  readonly areaM2: number
  readonly jointLengthM: number | null
  readonly litres: number
  readonly perM2: number
  readonly work: Phrase
}

function jointsOf(brief: Brief, kind: Kind, jointMm: number, assumed: Phrase[]): Outcome<Joints> {
  const { facts } = brief
  const tile = knownTile(facts)
  const floor = floorSum(facts)
  if (!floor.ok) return floor
  const areaM2 = facts.leftM2 ?? floor.value?.areaM2
  if (!tile) return refuse('question', { question: 'tile' })
  if (areaM2 === undefined) return refuse('question', { question: 'area' })
  const depthMm = thicknessOf(brief, tile, assumed)
  const perM2 = jointVolumeLPerM2({ lengthMm: tile.lengthMm, widthMm: tile.widthMm, jointMm }, depthMm)
  if (!perM2.ok) return refuse('out-of-range', { ...perM2.problem.facts })
  const jointLengthM = jointLengthOf(facts, jointMm)
  const measured = jointLengthM === null ? null : jointVolumeL(jointLengthM, jointMm, depthMm)
  const litres = measured?.ok ? measured.value : perM2.value * areaM2
  const work = measured?.ok
    ? say('grout.work-length', {
        length: number(jointLengthM as number, 2),
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
      })
  return fine({ brief, kind, tile, jointMm, depthMm, areaM2, jointLengthM, litres, perM2: perM2.value, work })
}

const sum = (of: readonly number[]): number => of.reduce((a, b) => a + b, 0)

export function grout(brief: Brief): Outcome<Told> {
  const assumed: Phrase[] = []
  const { facts } = brief
  const jointMm = jointOf(brief, assumed)
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
  const briefs = facts.leftM2 === undefined ? briefsByTiling(brief) : [brief]
  const joints: Joints[] = []
  for (const one of briefs) {
    const its = jointOf(one, assumed)
    const kindHere = kindOf(one, its)
    if (!kindHere.ok) return kindHere
    const here = jointsOf(one, kindHere.value, its, assumed)
    if (!here.ok) return here
    joints.push(here.value)
  }
  const kinds = [...new Set(joints.map((j) => j.kind.name))]
  const parts: TiledPart[] = []
  for (const name of kinds) {
    const alike = joints.filter((j) => j.kind.name === name)
    const told = groutFor(kinds.length > 1 ? alike[0].brief : brief, alike, assumed)
    if (!told.ok) return told
    const rooms = alike.flatMap((j) => j.brief.facts.rooms ?? [])
    parts.push({ brief: { ...brief, facts: { ...facts, rooms } }, told: told.value })
  }
  return fine(parts.length === 1 ? parts[0].told : joinParts(parts))
}

/** Grout of one kind for the rooms that take it. */
function groutFor(brief: Brief, joints: readonly Joints[], before: readonly Phrase[]): Outcome<Told> {
  const { settings } = brief
  const [{ kind, perM2, tile, depthMm, jointMm }] = joints
  const assumed = [...before]
  const litres = sum(joints.map((j) => j.litres))
  const areaM2 = sum(joints.map((j) => j.areaM2))
  const amounts = amountsOf(brief, kind, perM2, litres, assumed)
  if (!amounts.ok) return amounts
  const told = tellAmounts(brief, kind, amounts.value, areaM2, joints)
  if (!told.ok) return told
  const lengths = joints.map((j) => j.jointLengthM)
  const one = <T>(values: readonly T[]): T | undefined => (values.every((v) => v === values[0]) ? values[0] : undefined)
  return fine({
    ...told.value,
    details: [...(told.value.details ?? []), ...byRoom(joints, amounts.value.kg.usual / litres)],
    assumed: [...assumed, ...(kind.because ? [kind.because] : [])],
    warnings: kind.warnings,
    sources: [sourceOf(settings.practice.grout.sandedFromMm), { text: kind.grout.source }],
    working: [
      ...joints.map((j) => j.work),
      say('grout.work-powder', {
        litres: number(litres, 2),
        density: number(kind.grout.powderKgPerJointL.usual, 2),
        waste: percent(settings.practice.grout.wasteShare.value * 100),
        kg: number(amounts.value.kg.usual, 2),
      }),
      ...(brief.metric
        ? []
        : [
            say('grout.work-pounds', {
              kg: number(amounts.value.kg.usual, 2),
              mass: mass(amounts.value.kg.usual),
            }),
          ]),
    ],
    values: {
      ...told.value.values,
      area_m2: areaM2,
      tile_length_mm: one(joints.map((j) => j.tile.lengthMm)) && tile.lengthMm,
      tile_width_mm: one(joints.map((j) => j.tile.widthMm)) && tile.widthMm,
      tile_thickness_mm: one(joints.map((j) => j.depthMm)),
      joint_mm: one(joints.map((j) => j.jointMm)) && jointMm,
      joint_depth_mm: one(joints.map((j) => j.depthMm)) && depthMm,
      grout_kg: amounts.value.kg.usual,
      grout_kg_low: amounts.value.kg.low,
      grout_kg_high: amounts.value.kg.high,
      grout_bags: amounts.value.bags,
      joint_length_m: lengths.every((m) => m !== null) ? sum(lengths as number[]) : undefined,
    },
    offers: ['math', 'keep'],
  })
}

/** Grout of each room by its own joints, where there are several. */
function byRoom(joints: readonly Joints[], kgPerL: number): Phrase[] {
  const rooms = joints.flatMap((j) =>
    (j.brief.facts.leftM2 === undefined ? (j.brief.facts.rooms ?? []) : []).map((room) => {
      const lengthM = jointLengthOf({ ...j.brief.facts, rooms: [room] }, j.jointMm)
      const measured = lengthM === null ? null : jointVolumeL(lengthM, j.jointMm, j.depthMm)
      return { room, litres: measured?.ok ? measured.value : j.perM2 * roomM2(room) }
    }),
  )
  if (rooms.length < 2) return []
  const list = rooms.map(({ room, litres }) => say('grout.room', { room: roomName(room), mass: mass(litres * kgPerL) }))
  return [say('grout.by-room', { list })]
}

/** Each size of tile once. */
function tilesOf(joints: readonly Joints[], metric: boolean): Phrase[] {
  const sizes = new Map(joints.map(({ tile }) => [`${tile.lengthMm}x${tile.widthMm}`, tile]))
  return [...sizes.values()].map((tile) => tilePhrase(tile, metric))
}

function tellAmounts(
  brief: Brief,
  kind: Kind,
  amounts: Amounts,
  areaM2: number,
  joints: readonly Joints[],
): Outcome<Told> {
  const named = {
    kind: word(`grout-${kind.name}`),
    bag: packPhrase(amounts.pack),
    area: area(areaM2),
    mass: mass(amounts.kg.usual),
    tile: tilesOf(joints, brief.metric),
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
      answer: say(`grout.${verdict}${kind.grout.wholeKits ? '-kits' : ''}`, {
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
