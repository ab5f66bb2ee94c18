/** The crew's own words. */
export const ownWordPhrases = {
  'words.kept': 'From here on “{word}” is {means}.',
  'words.removed': '“{word}” is no word of ours any more.',
  'words.none': 'No words of our own yet. Tell me one: when we say "mud" we mean our mortar.',
  'words.list': '{n} {n|word|words} of our own:',
  'words.row': '“{word}”: {means}',
  'problem.word-taken':
    '“{said}” is taken: numbers, units and the words I read questions by can’t mean something else. Pick another word.',
  'problem.word-unclear':
    'I can’t tell what “{said}” is. Say it with something I know, like large-format mortar 50 lb.',
  'problem.word-unknown': '“{said}” is no word of ours. Type our words to see them.',
  'problem.word-too-many': '{limit} words are all I keep. Take one back first: forget the word …',
}
