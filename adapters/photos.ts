/** Files that came with a platform's message: only pictures count, and no more than a reading can hold. */
import type { Photo } from '../src/message.ts'

export type SentFile = {
  readonly id?: string | undefined
  readonly name?: string | null | undefined
  readonly type?: string | null | undefined
  readonly url?: string | null | undefined
}

const MOST_PHOTOS = 10
const MOST_NAME = 120
const MOST_URL = 2000
const PICTURE_NAME = /\.(?:jpe?g|png|gif|webp|heic|heif|avif)$/i

/** A file of which only the id was sent (Slack, without the right to see files) may be a photo. */
const mayBePhoto = ({ type, name }: SentFile): boolean =>
  type ? type.startsWith('image/') : !name || PICTURE_NAME.test(name)

/** The photos among the files, by id, name and place. */
export const photosOf = (files: readonly SentFile[] | undefined): readonly Photo[] =>
  (files ?? [])
    .filter((file) => file.id && mayBePhoto(file))
    .slice(0, MOST_PHOTOS)
    .map(({ id, name, url }) => ({
      id: id as string,
      ...(name ? { name: name.slice(0, MOST_NAME) } : {}),
      ...(url && url.length <= MOST_URL ? { url } : {}),
    }))
