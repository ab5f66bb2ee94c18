/** How the tile of the facts is laid: its pattern, how it is turned, the joint at the walls. */
import { boxOf, type Floor } from '../core/floor/rings.ts'
import type { Pattern as LaidPattern, LayoutSpec } from '../core/layout/spec.ts'
import type { Facts, Pattern, Room, Tile } from '../facts.ts'

/** Perimeter joint at the walls: 1/4 in; config/practice.json will do for another. [mm] */
export const WALL_GAP_MM = 6.35

/** The crew's pattern as the layout takes it. */
export function laidPattern(pattern: Pattern | undefined): { pattern: LaidPattern; angleDeg: number } {
  const angleDeg = pattern?.angleDeg ?? 0
  switch (pattern?.name) {
    case 'offset': {
      const [over, under] = pattern.offset ?? [1, 2]
      return {
        pattern: {
          kind: 'offset',
          share: { over, under },
          step: pattern.backAndForth || under === 2 ? 'back-and-forth' : 'stair',
          along: pattern.along ?? 'length',
        },
        angleDeg,
      }
    }
    case 'herringbone':
      return { pattern: { kind: 'herringbone', planks: 1 }, angleDeg }
    case 'double-herringbone':
      return { pattern: { kind: 'herringbone', planks: 2 }, angleDeg }
    case 'basketweave':
      return { pattern: { kind: 'basketweave' }, angleDeg }
    case 'random':
      return { pattern: { kind: 'random', leastStaggerMm: null }, angleDeg }
    case 'two-size':
      return { pattern: { kind: 'two-size', smallMm: pattern.smallMm ?? 0 }, angleDeg }
    case 'diagonal':
      return { pattern: { kind: 'stacked' }, angleDeg: pattern.angleDeg ?? 45 }
    default:
      return { pattern: { kind: 'stacked' }, angleDeg }
  }
}

/** How tile is turned: on a floor its length runs along the longer side; on a wall it lies, unless the crew stands it up. */
export type Turned = 'floor' | 'lies' | 'stands'

export const turnedIn = (room: Room, facts: Facts): Turned =>
  room.upright ? (facts.tileStands ? 'stands' : 'lies') : 'floor'

export function specFor(
  floor: Floor,
  tile: Tile,
  jointMm: number,
  pattern: Pattern | undefined,
  turnedTo: Turned = 'floor',
): LayoutSpec {
  const { minX, minY, maxX, maxY } = boxOf(floor.rings)
  const laid = laidPattern(pattern)
  const gapMm = Math.min(WALL_GAP_MM, (maxX - minX) / 20, (maxY - minY) / 20)
  if (tile.shape === 'hexagon' || laid.pattern.kind === 'two-size') {
    const side = Math.min(tile.lengthMm, tile.widthMm)
    return {
      tile: { lengthMm: side, widthMm: side },
      jointMm,
      pattern: tile.shape === 'hexagon' ? { kind: 'hexagon' } : laid.pattern,
      angleDeg: laid.angleDeg,
      originMm: [0, 0],
      wallGapMm: gapMm,
    }
  }
  const stands = turnedTo === 'floor' ? maxY - minY > maxX - minX + 1 : turnedTo === 'stands'
  const upright = stands && tile.lengthMm > tile.widthMm && laid.angleDeg === 0
  // A quarter turn is told by swapping the sides for square rows, so that the closed form still serves.
  const turned = upright && laid.pattern.kind === 'stacked'
  return {
    tile: turned
      ? { lengthMm: tile.widthMm, widthMm: tile.lengthMm }
      : { lengthMm: tile.lengthMm, widthMm: tile.widthMm },
    jointMm,
    pattern:
      upright && !turned && laid.pattern.kind === 'offset'
        ? { ...laid.pattern, along: laid.pattern.along === 'width' ? 'length' : 'width' }
        : laid.pattern,
    angleDeg: upright && laid.pattern.kind === 'random' ? 90 : laid.angleDeg,
    originMm: [0, 0],
    wallGapMm: gapMm,
    ...(upright && laid.pattern.kind === 'offset' ? { tile: { lengthMm: tile.widthMm, widthMm: tile.lengthMm } } : {}),
  }
}
