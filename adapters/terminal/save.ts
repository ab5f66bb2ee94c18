/** Files of a reply on the disk: a picture as SVG and PNG, the rest as it is. */
import { mkdirSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import type { ReplyFile } from '../../src/reply.ts'

export type Saved = { readonly name: string; readonly media_type: string; readonly path: string }

export const isPicture = ({ media_type }: ReplyFile): boolean => media_type.startsWith('image/')

/** Gives each name once: `floor.svg`, then `floor-2.svg`. */
export function namesOnce(): (name: string) => string {
  const given = new Map<string, number>()
  return (name) => {
    const { name: stem, ext } = path.parse(path.basename(name))
    const times = (given.get(`${stem}${ext}`) ?? 0) + 1
    given.set(`${stem}${ext}`, times)
    return times === 1 ? `${stem}${ext}` : `${stem}-${times}${ext}`
  }
}

/** Writes a file into the folder, which is made where it is missing; beside an SVG its PNG, where that can be made.
 *  @throws the file system's error */
export async function save(file: ReplyFile, folder: string, nameOf: (name: string) => string): Promise<Saved[]> {
  mkdirSync(folder, { recursive: true })
  const name = nameOf(file.name)
  const saved = [{ name, media_type: file.media_type, path: path.join(folder, name) }]
  writeFileSync(saved[0].path, file.text)
  if (file.media_type !== 'image/svg+xml') return saved
  const { pngOf } = await import('../pictures.ts')
  const png = pngOf(file.text)
  if (!png.ok) return saved
  const pngName = `${path.parse(name).name}.png`
  const target = path.join(folder, pngName)
  writeFileSync(target, png.value)
  return [...saved, { name: pngName, media_type: 'image/png', path: target }]
}
