/** Lecturas y fotos de una obra. */
export const recordPhrases = {
  'job.reading-text': '{text}',
  'job.reading-photo': 'foto {names}',
  'job.reading-with-photo': '{text} (foto {names})',
  'log.contact-dry': '{value} sirve en piso seco, {least} por lo menos; mojado o afuera pide {wet}.',
  'log.contact-wet': '{value} sirve donde se moja, {least} por lo menos.',
  'log.contact-low-wet': '{value} es menos de {least}, lo que pide lo mojado: levanta la siguiente y revisa la llana.',
  'log.with-photos': '{n} {n|foto guardada|fotos guardadas} con eso.',
  'log.photos-kept': '{n} {n|foto guardada|fotos guardadas} con este mensaje.',
  'log.photo-asks':
    '{n} {n|foto guardada|fotos guardadas}. ¿Qué {n|muestra|muestran}? Por ejemplo: planeza 3 mm en 3 m, o lote 4471.',
  'log.photo-too': '{n} más. Di qué muestran, todas juntas.',
}
