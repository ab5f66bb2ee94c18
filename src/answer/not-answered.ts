/** Messages no topic can be asked: words nothing was made of, figures that are none. */
import type { Heard } from '../language/heard.ts'
import { type Outcome, refuse } from '../problem.ts'
import type { Told } from '../topics/topic.ts'

/** A figure that is no number, or one below nothing. */
export function unreadableIn(heard: Heard): Outcome<Told> | null {
  const [bad] = heard.unreadable
  if (bad) return refuse('not-a-number', { said: bad.text }, [bad.from, bad.to])
  const negative = heard.quantities.find((q) => q.negative && q.dimension !== 'temperature')
  return negative
    ? refuse('not-a-number', { said: `-${negative.token.text}` }, [negative.token.from - 1, negative.token.to])
    : null
}

export const SHOWN = 60

/** Words nothing was made of: say so, and what to type instead. */
export function notUnderstood(heard: Heard): Outcome<Told> {
  const text = heard.plain.text.trim()
  if (text === '') return refuse('empty')
  return (
    unreadableIn(heard) ??
    refuse('not-understood', { said: text.length > SHOWN ? `${text.slice(0, SHOWN - 3)}...` : text }, [
      0,
      heard.plain.text.length,
    ])
  )
}
