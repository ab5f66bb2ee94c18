/** The messages of the bench, and what answers them. */
import { loadTools } from '../../../adapters/tools.ts'
import { work } from '../../../adapters/working.ts'
import { emptyMemory } from '../../../src/jobs/memory.ts'
import { NOW } from '../../support/now.ts'

const loaded = loadTools()
if (!loaded.ok) throw new Error(loaded.message)
const tools = loaded.value

/** A small generator of its own, so that runs are alike (mulberry32 by its common form, from memory). */
function numbers(seed: number): () => number {
  let a = seed
  return () => {
    a = (a + 0x6d2b79f5) | 0
    let t = Math.imul(a ^ (a >>> 15), 1 | a)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}
const random = numbers(20261124)
const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1))
const one = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!
const tile = () => one(['18x18', '8x48', '12x12', '6x24', '24x24', '3x6', '16x16'])
const joint = () => one(['1/8', '3/16', '1/4', '1/16'])
const notch = () => one(['1/2x1/2', '1/4x3/8', '1/4x1/4', '1/2 u-notch'])
const feet = () => `${whole(5, 30)}'${whole(0, 11)}"`

/** Questions of each kind that need no search; what is asked is the same, the figures hardly ever. */
export const PLAIN: Readonly<Record<string, () => string>> = {
  'room, tile, joint': () => `${whole(5, 30)}x${whole(5, 30)} shop floor, ${tile()} tile, ${joint()} joint`,
  'room in feet and inches': () => `${feet()} x ${feet()} mudroom ${tile()} ${joint()} gap`,
  'metric room': () =>
    `${(whole(20, 80) / 10).toFixed(1)}m x ${(whole(20, 80) / 10).toFixed(1)}m, 60x60cm, 2mm spacers`,
  'bare area': () => `${whole(40, 900)} sf of ${tile()}, how many boxes at ${whole(8, 16)} sf a box`,
  mortar: () => `how many bags of thinset for ${whole(40, 900)} sf with a ${notch()} notch`,
  'bags left': () => `${whole(1, 6)} bags left ${whole(20, 300)} sf to go enough?`,
  grout: () => `grout for ${whole(40, 900)} sf of ${tile()}, ${joint()} joint, 3/8 thick`,
  mix: () => `water for ${one(['half', 'a quarter of', 'a third of'])} a ${one(['50 lb', '25 kg'])} bag`,
  cure: () => `thinset down at ${whole(50, 85)}F, when can we grout`,
  area: () => `area of ${whole(5, 40)}x${whole(5, 40)} plus ${whole(2, 9)}x${whole(2, 9)}`,
  rule: () => `is ${whole(60, 99)} percent coverage ok in a shower`,
  joists: () => `joists 2x10 at ${one([12, 16, 24])} spanning ${whole(8, 15)} ft, ok for porcelain?`,
  contact: () => `pulled a tile, ${whole(50, 99)}% contact, wet area, ok?`,
  offset: () => `is half offset ok on 8x48 plank, warp 1/${one([16, 32])}`,
}
/** These load a library with the first of their kind. */
export const HEAVY: Readonly<Record<string, () => string>> = {
  'clock times': () => `set at ${whole(1, 11)}pm, ${whole(50, 85)}F, when can we grout?`,
  convert: () => `${whole(2, 900)} sf in m2`,
}
export const SEARCHED: Readonly<Record<string, () => string>> = {
  'room less a counter': () =>
    `${whole(9, 20)}x${whole(9, 20)} shop floor less a ${whole(2, 5)}x${whole(2, 5)} counter, ${tile()}, 3/16 joint`,
  'L-shape': () => `L ${whole(10, 20)}x${whole(10, 20)} less ${whole(3, 8)}x${whole(3, 8)}, 18x18, 1/8 joint`,
  'third offset': () => `${whole(8, 16)}x${whole(8, 16)} mudroom, 8x48 plank, third offset, 1/8 joint`,
  diagonal: () => `${whole(8, 16)}x${whole(8, 16)} wash-up, 18x18 on the diagonal, 3/16`,
  herringbone: () => `${whole(6, 10)}x${whole(6, 10)} wash-up in herringbone, 6x24, 1/8`,
}

let asked = 0
export function answer(text: string) {
  const message = { text, id: `m${++asked}`, person: 'lead', now: NOW, zone: null }
  return work(message, emptyMemory, tools)
}
