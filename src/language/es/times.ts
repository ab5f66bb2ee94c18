import type { TimeWords } from '../moments.ts'

/** What chrono-node's Spanish does not know, in words it does. Patterns over plain text (no accents), tried in order. */
export const times: TimeWords = {
  clock: String.raw`\d\s?[ap]\.?\s?m?\b|\d:\d\d|\bhrs?\b|\ba la (?:1|una)\b`,
  spans: {
    alone: [
      ['media hora', 30],
      ['(?:una )?hora', 60],
    ],
    added: [
      ['y media', 30],
      ['y (?:un )?cuarto', 15],
    ],
    beforeHour: [
      ['(?:un )?cuarto para las?', -15],
      ['(?:un )?cuarto (?:pasad[ao]s? )?(?:despues )?de las?', 15],
    ],
    afterHour: [
      ['y media', 30],
      ['y cuarto', 15],
      ['menos cuarto', -15],
    ],
    every: [
      ['un dia si y (?:un dia|otro) no|cada tercer dia|cada (?:dos|2) dias', 'other-day'],
      [
        '(?:todos los|cada) dias? (?:laborables?|laborales?|habil(?:es)?|de trabajo)|de lunes a viernes|entre semana',
        'workday',
      ],
      ['(?:todos los|cada) (?:lunes|martes|miercoles|jueves|viernes|sabados?|domingos?)', 'week'],
      ['cada semana|todas las semanas|semanal(?:mente)?', 'week'],
      [
        'todos los dias|cada dia|todas las (?:mananas|tardes|noches)|cada (?:manana|tarde|noche)|diario|diariamente',
        'day',
      ],
      ['cada(?= (?:una |media |[a-z]+ |[\\d.,/]+ ?)?(?:horas?|hrs?|h|minutos?|mins?)\\b)', 'span'],
    ],
    timely: '(?:al? )?medio ?dia',
  },
  replace: [
    [String.raw`\ba la una y media\b`, 'a la 1:30'],
    [String.raw`\ba la una\b`, 'a la 1'],
    [String.raw`\b(\d{1,2})(?::(\d\d))? ?(?:en punto )?(?:de|en|por) la tarde(?: noche)?\b`, '$1:$2pm'],
    [String.raw`\b(\d{1,2})(?::(\d\d))? ?(?:en punto )?(?:de|en|por) la noche\b`, '$1:$2pm'],
    [String.raw`\b(\d{1,2})(?::(\d\d))? ?(?:en punto )?(?:de|en|por) la (?:manana|madrugada)\b`, '$1:$2am'],
    [String.raw`\b(\d{1,2})(?::(\d\d))? ?(?:del? )?medio ?dia\b`, '$1:$2pm'],
    [String.raw`:(am|pm)\b`, '$1'],
    [String.raw`\banoche a las? (\d{1,2})(:\d\d)?(?: ?pm)?(?! ?am)`, 'ayer a las $1$2pm'],
    [String.raw`\banoche\b`, 'ayer a las 9pm'],
    [String.raw`\b(?:antier|antes de ayer|anteayer|antiayer)\b`, '#-2'],
    [String.raw`\bhace (\d{1,2}) dias?\b`, '#-$1'],
    [String.raw`\bpasado manana\b`, '#2'],
    [String.raw`\besta manana a las? (\d{1,2})(:\d\d)?(?: ?am)?`, 'hoy a las $1$2am'],
    [String.raw`\b(?:esta|hoy en la|hoy por la) manana\b`, 'hoy a las 8am'],
    [String.raw`\besta tarde a las? (\d{1,2})(:\d\d)?(?: ?pm)?`, 'hoy a las $1$2pm'],
    [String.raw`\besta tarde\b`, 'hoy a las 3pm'],
    [String.raw`\bayer (?:en|por) la manana\b`, 'ayer a las 8am'],
    [String.raw`\bayer (?:en|por) la tarde\b`, 'ayer a las 3pm'],
    [String.raw`\bayer (?:en|por) la noche\b`, 'ayer a las 9pm'],
    [String.raw`\bmanana (?:en|por) la manana\b`, 'manana a las 8am'],
    [String.raw`\b(?:al? )?medio ?dia\b`, 'a las 12pm'],
  ],
}
