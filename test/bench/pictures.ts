/** A picture of a room of 300 tiles: SVG, and PNG as a phone gets it. */
import { pngOf } from '../../adapters/pictures.ts'
import { svgOf } from '../../src/pictures/svg.ts'
import { bakehouse } from '../pictures/rooms.ts'

export default async function pictures(): Promise<void> {
  const runs = Array.from({ length: 12 }, () => {
    const start = performance.now()
    const svg = svgOf(bakehouse)
    const drawn = performance.now()
    const png = pngOf(svg)
    return { svg: drawn - start, png: performance.now() - drawn, ok: png.ok }
  })
  const median = (list: number[]) => list.sort((a, b) => a - b)[Math.floor(list.length / 2)]!
  const [svg, png] = [median(runs.map((r) => r.svg)), median(runs.map((r) => r.png))]
  const first = runs[0]!
  console.log(
    `  ${bakehouse.tiles.length} tiles: SVG ${svg.toFixed(1)} ms and PNG ${png.toFixed(1)} ms (median), ` +
      `${(first.svg + first.png).toFixed(0)} ms the first time, fonts loaded${runs.every((r) => r.ok) ? '' : ' - FAILED'}`,
  )
}
