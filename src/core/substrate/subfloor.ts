/** Sheathing between joists: how far it bends, and the least thickness for the spacing. */
import { fine, type Outcome, type Range, within } from '../../problem.ts'

/** A panel by thickness, with its bending stiffness along the strong direction, for a strip one metre wide. */
export type Panel = { readonly thicknessMm: number; readonly stiffnessNmm2PerM: number }

export const PANEL_SPAN: Range = { field: 'joist-spacing', unit: 'mm', min: 150, max: 1219.2 }
export const PANEL_THICKNESS: Range = { field: 'subfloor', unit: 'mm', min: 6, max: 60 }

/** Deflection of a panel continuous over three equal spans: 0.0069 w L^4 / EI. [mm]
 *  @param loadKpa uniform [kPa]; @param spanMm centre to centre of the joists [mm], PANEL_SPAN
 *  @source elementary theory of continuous beams (three equal spans, end span: 0.0069) */
export function panelDeflectionMm(panel: Panel, spanMm: number, loadKpa: number): Outcome<number> {
  const good = within(PANEL_SPAN, spanMm)
  return good.ok ? fine((0.0069 * loadKpa * spanMm ** 4) / panel.stiffnessNmm2PerM) : good
}

/** The thickest panel of the table that is no thicker than the one measured, so that a guess errs on the safe side.
 *  Two layers count as the thicker one alone: they act together only where they are glued. */
export function panelFor(table: readonly Panel[], layersMm: readonly number[]): Panel | null {
  const thickest = Math.max(0, ...layersMm)
  const fits = table.filter((p) => p.thicknessMm <= thickest + 0.5)
  return fits.toSorted((a, b) => b.thicknessMm - a.thicknessMm)[0] ?? null
}
