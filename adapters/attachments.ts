/** What a reply carries, as bytes to upload: pictures become PNG, long answers a text file. */
import type { Reply, ReplyFile } from '../src/reply.ts'
import { type Backing, fill, type Words } from './contract.ts'
import { brief, type Log } from './logging.ts'

export type Attachment = {
  readonly name: string
  readonly bytes: Uint8Array
  readonly type: string
  readonly alt: string
}

export const OVERFLOW_NAME = 'answer.txt'

/** A file name that no platform or file system trips over. */
export const safeName = (name: string): string =>
  name
    .normalize('NFKD')
    .replace(/[^\w.-]+/g, '-')
    .replace(/^[-.]+/, '')
    .slice(-80) || 'file'

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text)

const plainAlt = (file: ReplyFile, words: Words): string =>
  file.media_type.startsWith('image/') ? fill(words.pictureAlt, { name: file.name }) : file.name

async function attachment(file: ReplyFile, alt: string, backing: Backing, log: Log): Promise<Attachment> {
  const name = safeName(file.name)
  if (file.media_type === 'image/svg+xml') {
    try {
      const bytes = await backing.picture(file.text)
      return { name: name.replace(/(\.svg)?$/i, '.png'), bytes, type: 'image/png', alt }
    } catch (error) {
      log.error({ file: name, error: brief(error) }, 'no picture could be made, sending the drawing itself')
    }
  }
  return { name, bytes: bytesOf(file.text), type: file.media_type, alt }
}

/** The files of a reply that are at most `limit` bytes each, and how many were too large. */
export async function attachments(
  reply: Reply,
  overflow: string | null,
  limit: number,
  backing: Backing,
  log: Log,
): Promise<{ files: Attachment[]; left: number }> {
  const words = backing.words(reply.language)
  const made = await Promise.all(
    reply.files.map((file) => attachment(file, file.alt ?? plainAlt(file, words), backing, log)),
  )
  if (overflow !== null)
    made.push({ name: OVERFLOW_NAME, bytes: bytesOf(overflow), type: 'text/plain', alt: words.moreAlt })
  const files = made.filter((file) => file.bytes.length <= limit)
  return { files, left: made.length - files.length }
}
