import type { OwnWordPatterns } from '../own-words.ts'

export const ownWords: OwnWordPatterns = {
  define: [
    `cuando (?:decimos|digo|dicen|digamos|dice) "?(?<word>[^",]+?)"?,? (?:queremos decir|quiero decir|quiere decir|quieren decir|es|son|nos referimos a|me refiero a|hablamos de) (?<means>.+)`,
    `"(?<word>[^"]+)" (?:es|son|significa|quiere decir|=) (?<means>.+)`,
    `(?:a|al) (?<means>.+?) (?:le|les) (?:decimos|llamamos|digo|dicen) "?(?<word>[^"]+?)"?`,
    `(?:le|les) (?:decimos|llamamos|digo|dicen) "?(?<word>[^"]+?)"? (?:a|al) (?<means>.+)`,
    `(?!que|eso|esto|cual|como)(?<word>[a-z][a-z '-]{1,30}?) significa (?<means>.+)`,
  ],
  remove: [
    `(?:olvida|borra|quita|elimina) (?:la|nuestra) palabra "?(?<word>[^"]+?)"?`,
    `(?:olvida|borra|quita|elimina) "(?<word>[^"]+)"`,
  ],
  list: [
    `(?:muestra |muestrame |lista |dime |cuales son |ver )?(?:todas )?nuestras (?:propias )?palabras`,
    `(?:que palabras tenemos|lista de palabras|palabras de la cuadrilla)`,
  ],
  articles: ['el', 'la', 'los', 'las', 'un', 'una', 'nuestro', 'nuestra', 'nuestros', 'nuestras', 'mi', 'esa', 'ese'],
}
