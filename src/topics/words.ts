/** The crew's own words: kept, listed, taken back. */
import type { Memory } from '../jobs/memory.ts'
import { readCommands } from '../language/command-words.ts'
import type { Languages } from '../language/languages.ts'
import { isUnderstood, MOST_OWN_WORDS, mayBeOwn, type OwnWordAsked } from '../language/own-words.ts'
import { count, quote, say } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import type { Told } from './topic.ts'

/** Answers a message about the crew's words. Refuses a word that would shadow a number, a unit or a word that reading
 *  needs (`word-taken`), a meaning nothing is made of (`word-unclear`), a hundred and first word (`word-too-many`). */
export function ownWordsTold(asked: OwnWordAsked, memory: Memory, languages: Languages, spoken: string): Outcome<Told> {
  const { words } = memory
  const keep = (word: string, means: string | null): Told['entries'] => [
    { kind: 'word', version: 1, body: { word, means } },
  ]
  if (asked.is === 'list')
    return fine({
      topic: 'job',
      answer: words.length === 0 ? say('words.none') : say('words.list', { n: count(words.length) }),
      details: words.map(({ word, means }) => say('words.row', { word: quote(word), means: quote(means) })),
    })
  const word = quote(asked.word)
  if (asked.is === 'remove')
    return words.some((own) => own.word === asked.word)
      ? fine({ topic: 'job', answer: say('words.removed', { word }), entries: keep(asked.word, null) })
      : refuse('word-unknown', { said: asked.word })
  const commands =
    languages.pinned(asked.word) ??
    languages.ownWordAsked(asked.word) ??
    languages.codes
      .map((code) => readCommands(asked.word, languages.locale(code).commands).command)
      .find((c) => c !== null) ??
    null
  if (commands !== null || !mayBeOwn(asked.word, languages.codes.map(languages.lexicon)))
    return refuse('word-taken', { said: asked.word })
  const means = words.find((own) => own.word === asked.means)?.means ?? asked.means
  if (!isUnderstood(means, languages.lexicon(spoken))) return refuse('word-unclear', { said: asked.means })
  if (words.length >= MOST_OWN_WORDS && !words.some((own) => own.word === asked.word))
    return refuse('word-too-many', { limit: MOST_OWN_WORDS })
  return fine({
    topic: 'job',
    answer: say('words.kept', { word, means: quote(means) }),
    entries: keep(asked.word, means),
  })
}
