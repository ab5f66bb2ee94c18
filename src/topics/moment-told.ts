/** The time a message tells, by the words of the language it is written in. */
import { type Moment, momentIn } from '../language/moments.ts'
import type { Brief } from './topic.ts'

/** As `momentIn`: something done where `past`, else something to come. Null where no time is told. */
export const momentTold = (brief: Brief, past: boolean, about: string | null = null): Moment | null =>
  momentIn(
    brief.heard,
    () => brief.libraries.times(brief.heard.reader.lexicon.locale.code),
    brief.now,
    brief.zone,
    past,
    about,
  )
