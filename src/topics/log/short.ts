/** Running short of tile: how far what is left reaches, how many pieces are missing, and the ways out in order. */
import type { Tile } from '../../facts.ts'
import { count, type Phrase, say } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { WALL_GAP_MM } from '../plan.ts'
import { knownTile, usualJointMm } from '../stuff.ts'
import type { Brief, Told } from '../topic.ts'
import type { LogRead } from './read.ts'
import { logValues } from './values.ts'

type Short = Extract<LogRead, { is: 'short' }>

/** Row by row on the largest room of the job: the pieces a row takes from the box, off-cuts reused as the pattern allows. */
type Rows = { readonly perRow: number; readonly strictPerRow: number; readonly rows: number }

export function runningShort(brief: Brief, read: Short): Outcome<Told> {
  const tile = knownTile(brief.facts)
  const perBox = brief.facts.boxTiles ?? boxPieces(brief, tile)
  if (read.missing !== null && read.rows === null) return fine(missing(brief, read.missing, perBox))
  if (!tile) return refuse('question', { question: 'tile' })
  const rows = rowsOf(brief, tile)
  if (rows === null) return refuse('question', { question: 'area' })
  if (read.boxes !== null && perBox === null) return refuse('question', { question: 'box' })
  const have = (read.boxes ?? 0) * (perBox ?? 0) + (read.tiles ?? 0)
  const toGo = read.rows ?? rows.rows
  const need = Math.ceil(toGo * rows.strictPerRow - 1e-9)
  const loose = Math.ceil(toGo * rows.perRow - 1e-9)
  const short = Math.max(0, need - have)
  const reached = Math.min(toGo, Math.floor(have / rows.strictPerRow + 1e-9))
  const lastRow = Math.max(0, rows.rows - toGo) + reached
  const numbers = {
    have: count(have),
    need: count(need),
    short: count(short),
    rows: count(toGo),
    reached: count(reached),
    row: count(lastRow),
    perRow: count(Math.round(rows.strictPerRow * 10) / 10),
    spare: count(Math.max(0, have - need)),
  }
  const saves = need - loose
  return fine({
    topic: 'log',
    answer: say(short > 0 ? 'log.rows-short' : 'log.rows-enough', numbers),
    details: [
      say('log.per-row', numbers),
      ...(short > 0 ? [say('log.last-row', numbers), ...waysOut(short, saves, brief, toGo)] : []),
    ],
    assumed: [say('log.rows-along')],
    values: {
      tiles_short: short,
      ...(perBox ? { boxes_short: Math.ceil(short / perBox) } : {}),
      last_row: lastRow,
      ...logValues(brief.memory.job),
    },
    entries: [
      {
        kind: 'use',
        version: 1,
        body: {
          stuff: 'tile',
          ...(read.boxes === null ? {} : { leftBoxes: read.boxes }),
          ...(read.tiles === null ? {} : { leftTiles: read.tiles }),
        },
      },
    ],
  })
}

/** "lot's gone, 6 short": the pieces are known; only the ways out are asked. */
function missing(brief: Brief, tiles: number, perBox: number | null): Told {
  return {
    topic: 'log',
    answer: say('log.missing', { short: count(tiles) }),
    details: waysOut(tiles, null, brief, null),
    values: {
      tiles_short: tiles,
      ...(perBox ? { boxes_short: Math.ceil(tiles / perBox) } : {}),
      ...logValues(brief.memory.job),
    },
  }
}

/** In the order a crew would try them.
 *  @param saves pieces a looser rule for off-cuts saves, null where it was not worked out */
function waysOut(short: number, saves: number | null, brief: Brief, toGo: number | null): Phrase[] {
  const pattern = brief.facts.pattern?.name ?? 'stacked'
  return [
    saves === null
      ? say('log.way-offcuts')
      : saves > 0
        ? say('log.way-offcuts-save', { n: count(Math.min(saves, short)) })
        : say('log.way-offcuts-none'),
    say(pattern === 'stacked' ? 'log.way-start' : 'log.way-start-offset'),
    say('log.way-hidden', { short: count(short) }),
    say('log.way-yard'),
    ...(toGo !== null && toGo > 1 ? [say('log.decide-now', { rows: count(Math.max(1, toGo - 2)) })] : []),
  ].slice(0, 5)
}

function boxPieces(brief: Brief, tile: Tile | null): number | null {
  const { boxM2 } = brief.facts
  return boxM2 !== undefined && tile ? Math.round((boxM2 * 1e6) / (tile.lengthMm * tile.widthMm)) : null
}

/** Rows run along the longer wall of the largest room, the tile's long side with them. */
function rowsOf(brief: Brief, tile: Tile): Rows | null {
  const pieces = (brief.facts.rooms ?? []).flatMap((room) => room.pieces.filter((p) => p.sign === 1))
  const largest = pieces.toSorted((a, b) => b.lengthMm * b.widthMm - a.lengthMm * a.widthMm)[0]
  if (!largest) return null
  const jointMm = brief.facts.jointMm ?? usualJointMm(brief)
  const long = Math.max(largest.lengthMm, largest.widthMm)
  const short = Math.min(largest.lengthMm, largest.widthMm)
  const across = tile.widthMm + jointMm
  const rows = Math.ceil((short - 2 * WALL_GAP_MM + jointMm) / across - 1e-6)
  const perRow = (long - 2 * WALL_GAP_MM + jointMm) / (tile.lengthMm + jointMm)
  const strictPerRow = Math.max(1, Math.ceil(perRow - 1e-6))
  return { perRow, strictPerRow, rows }
}
