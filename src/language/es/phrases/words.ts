/** The crew's own words. */
export const ownWordPhrases = {
  'words.kept': 'De aquí en adelante “{word}” es {means}.',
  'words.removed': '“{word}” ya no es palabra nuestra.',
  'words.none': 'Todavía no hay palabras nuestras. Dime una: cuando decimos "lodo" queremos decir nuestra mezcla.',
  'words.list': '{n} {n|palabra nuestra|palabras nuestras}:',
  'words.row': '“{word}”: {means}',
  'problem.word-taken':
    '“{said}” ya está tomada: los números, las unidades y las palabras con que leo las preguntas no pueden ser otra cosa. Escoge otra palabra.',
  'problem.word-unclear': 'No sé qué es “{said}”. Dilo con algo que conozca, como mezcla de gran formato de 50 libras.',
  'problem.word-unknown': '“{said}” no es palabra nuestra. Escribe nuestras palabras para verlas.',
  'problem.word-too-many': 'Guardo hasta {limit} palabras. Quita una primero: olvida la palabra …',
}
