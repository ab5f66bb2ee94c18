/** What a picture of a floor shows, in millimetres (x to the right, y up). Every word in it is handed in as it is to be read. */
export type Point = readonly [xMm: number, yMm: number]
export type Ring = readonly Point[]

/** A piece of a tile on the floor. */
export type DrawnTile = { readonly ring: Ring; readonly cut: boolean }

/** A wall from corner to corner. `door` is one that the floor goes through, `hidden` one that nobody sees. */
export type DrawnWall = {
  readonly from: Point
  readonly to: Point
  readonly kind: 'plain' | 'door' | 'hidden'
  /** Its length, where it is to be shown. */
  readonly label?: string
}

/** A line to snap, and the distance it is measured by: from a real wall to the line. */
export type StartLine = {
  readonly from: Point
  readonly to: Point
  readonly measured?: { readonly from: Point; readonly to: Point; readonly label: string }
}

/** What a row of the legend explains. */
export type Mark = 'whole' | 'cut' | 'start' | 'movement' | 'door' | 'hidden' | 'hole' | 'none'

export type Drawing = {
  readonly title: string
  readonly floor: Ring
  readonly holes: readonly { readonly ring: Ring; readonly label?: string }[]
  readonly tiles: readonly DrawnTile[]
  readonly walls: readonly DrawnWall[]
  readonly starts: readonly StartLine[]
  readonly movement: readonly { readonly from: Point; readonly to: Point }[]
  /** A round length for the scale bar, with its words. */
  readonly scale: { readonly mm: number; readonly label: string }
  readonly legend: readonly { readonly mark: Mark; readonly text: string }[]
}

export type Extent = { readonly x: number; readonly y: number; readonly w: number; readonly h: number }

/** The box round the floor [mm]; at least 1 mm each way. */
export function extentOf(drawing: Drawing): Extent {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [x, y] of drawing.floor) {
    x0 = Math.min(x0, x)
    y0 = Math.min(y0, y)
    x1 = Math.max(x1, x)
    y1 = Math.max(y1, y)
  }
  return { x: x0, y: y0, w: Math.max(1, x1 - x0), h: Math.max(1, y1 - y0) }
}
