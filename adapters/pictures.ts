/** Pictures as PNG. The renderer and its two fonts are loaded with the first picture, not at start; fonts of the machine
 *  are left out, so that a floor looks the same everywhere. */
import { createRequire } from 'node:module'
import path from 'node:path'
import { fine, type Outcome, refuse } from '../src/problem.ts'

/** About two dots for each of a phone's pixels [px]. */
const PNG_WIDTH = 800

type Renderer = typeof import('@resvg/resvg-js')
let loaded: { renderer: Renderer; fontFiles: string[] } | undefined

function load() {
  const require = createRequire(import.meta.url)
  const fonts = path.join(path.dirname(require.resolve('dejavu-fonts-ttf/package.json')), 'ttf')
  const fontFiles = ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf'].map((file) => path.join(fonts, file))
  loaded = { renderer: require('@resvg/resvg-js') as Renderer, fontFiles }
  return loaded
}

/** The PNG of an SVG from src/pictures, `widthPx` wide.
 *  @problem internal the renderer is not there for this machine, or refused the picture: the reply goes out without it */
export function pngOf(svg: string, widthPx = PNG_WIDTH): Outcome<Uint8Array> {
  try {
    const { renderer, fontFiles } = loaded ?? load()
    const picture = new renderer.Resvg(svg, {
      fitTo: { mode: 'width', value: widthPx },
      font: { fontFiles, loadSystemFonts: false, defaultFontFamily: 'DejaVu Sans' },
    })
    return fine(picture.render().asPng())
  } catch (error) {
    return refuse('internal', { why: error instanceof Error ? error.message : String(error) })
  }
}
