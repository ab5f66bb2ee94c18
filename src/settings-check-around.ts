/** The strict check of config/around.json. */
import { z } from 'zod'
import { AROUND, type Around, type LayerKind, type StockSize, type Underlayment } from './settings-around.ts'

const words = z.string().min(1).max(300)
const positive = z.number().positive()
const mm = positive.max(100_000)
const percent = z.number().min(0).max(50)

/** The parts that this file shares with the other checks. */
type Parts = {
  readonly id: z.ZodType<string>
  readonly spread: z.ZodType
  readonly notch: z.ZodType
  readonly figure: z.ZodType
}

export function aroundSchema({ id, spread, notch, figure }: Parts): z.ZodType<Around> {
  const size = z.strictObject({ name: words, lengthMm: mm, widthMm: mm }) satisfies z.ZodType<StockSize>
  const underlayment = z.strictObject({
    name: words,
    thicknessMm: spread,
    kgPerL: positive.max(5),
    sheets: z.array(size),
    rolls: z.array(size),
    usual: z.enum(['sheet', 'roll']),
    gapMm: z.number().min(0).max(20),
    stagger: z.number().min(0).max(0.99),
    lapMm: z.number().min(0).max(300),
    allowancePct: percent,
    kerfMm: z.number().min(0).max(10),
    taped: z.boolean(),
    bond: z.strictObject({ kind: z.enum(['adhesive', 'mortar']), material: id, trowel: notch }),
    fasteners: z
      .strictObject({ edgeMm: mm.min(50).max(600), fieldMm: mm.min(50).max(600), insetMm: z.number().min(0).max(100) })
      .optional(),
    cavityLPerM2: spread.optional(),
    source: words,
  }) as unknown as z.ZodType<Underlayment>
  const layer = z.strictObject({
    name: words,
    thicknessMm: positive.max(500),
    kgPerL: positive.max(10),
    source: words,
  }) satisfies z.ZodType<LayerKind>
  const groups = Object.fromEntries(
    Object.entries(AROUND).map(([name, figures]) => [
      name,
      z.strictObject(Object.fromEntries(figures.map((key) => [key, figure]))),
    ]),
  )
  return z.strictObject({
    ...groups,
    underlayments: z.record(id, underlayment),
    layers: z.record(id, layer),
    profileHeightsMm: z.array(positive.max(200)).min(1),
    profileSource: words,
  }) as unknown as z.ZodType<Around>
}

/** What one entry says about another. */
export function aroundFaults(
  around: Around,
  kindOf: (material: string) => string | undefined,
): { path: string; expected: string; found: unknown }[] {
  return Object.entries(around.underlayments).flatMap(([name, u]) => {
    const faults = []
    if (kindOf(u.bond.material) !== u.bond.kind)
      faults.push({
        path: `underlayments.${name}.bond.material`,
        expected: `the id of a material of kind "${u.bond.kind}" of config/materials.json`,
        found: u.bond.material,
      })
    if (!(u.usual === 'sheet' ? u.sheets : u.rolls).length)
      faults.push({ path: `underlayments.${name}.usual`, expected: 'a form that has a size listed', found: u.usual })
    return faults
  })
}
