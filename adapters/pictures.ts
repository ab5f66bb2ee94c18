/** Pictures as PNG. The renderer and its two fonts are loaded with the first picture, not at start; fonts of the machine
 *  are left out, so that a floor looks the same everywhere. */
import { createRequire } from 'node:module'
import path from 'node:path'
import type { ResvgRenderOptions } from '@resvg/resvg-js'
import { fine, type Outcome, refuse } from '../src/problem.ts'

/** As wide as the drawing says it is: a floor about two dots for each of a phone's pixels, a page enough for print. [px] */
const ownWidth = (svg: string): number => Number(/^<svg[^>]* width="(\d+)"/.exec(svg)?.[1] ?? USUAL_WIDTH)
const USUAL_WIDTH = 800

type Renderer = typeof import('@resvg/resvg-js')
let loaded: { renderer: Renderer; fontFiles: string[] } | undefined

function load() {
  const require = createRequire(import.meta.url)
  const fonts = path.join(path.dirname(require.resolve('dejavu-fonts-ttf/package.json')), 'ttf')
  const fontFiles = ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf'].map((file) => path.join(fonts, file))
  loaded = { renderer: require('@resvg/resvg-js') as Renderer, fontFiles }
  return loaded
}

const optionsOf = (fontFiles: readonly string[], widthPx: number): ResvgRenderOptions => ({
  fitTo: { mode: 'width', value: widthPx },
  font: { fontFiles: [...fontFiles], loadSystemFonts: false, defaultFontFamily: 'DejaVu Sans' },
})

/** The PNG of an SVG from src/pictures, `widthPx` wide, drawn on another thread: a bot's sockets go on meanwhile.
 *  @throws where the renderer is not there for this machine, or refused the picture */
export async function pngLater(svg: string, widthPx = ownWidth(svg)): Promise<Uint8Array> {
  const { renderer, fontFiles } = loaded ?? load()
  const image = await renderer.renderAsync(svg, optionsOf(fontFiles, widthPx))
  return image.asPng()
}

/** The PNG of an SVG from src/pictures, `widthPx` wide.
 *  @problem internal the renderer is not there for this machine, or refused the picture: the reply goes out without it */
export function pngOf(svg: string, widthPx = ownWidth(svg)): Outcome<Uint8Array> {
  try {
    const { renderer, fontFiles } = loaded ?? load()
    const picture = new renderer.Resvg(svg, optionsOf(fontFiles, widthPx))
    return fine(picture.render().asPng())
  } catch (error) {
    return refuse('internal', { why: error instanceof Error ? error.message : String(error) })
  }
}
