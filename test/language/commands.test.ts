/** Each command in both languages, as crews type it: the words find the command before any topic is looked for. */
import { describe, expect, test } from 'vitest'
import { COMMANDS, type Command, readCommands } from '../../src/language/command-words.ts'
import { commands as english } from '../../src/language/en/commands.ts'
import { commands as spanish } from '../../src/language/es/commands.ts'
import { plainText } from '../../src/language/text.ts'

type Said = Readonly<Record<Command, { readonly en: readonly string[]; readonly es: readonly string[] }>>

const SAID: Said = {
  'so-far': {
    en: ['what do we have so far', 'where are we', 'recap', 'what did I tell you', 'how are we doing'],
    es: ['qué tenemos hasta ahora', 'en qué quedamos', 'resumen', 'qué te dije', 'cómo vamos'],
  },
  undo: { en: ['undo', 'take that back', 'scratch that', 'oops'], es: ['deshaz', 'borra eso', 'un paso atrás', 'ups'] },
  history: {
    en: ['who changed the joint', 'history', 'what changed'],
    es: ['quién cambió la junta', 'historial', 'qué ha cambiado', 'quién le puso 3/16'],
  },
  'start-over': {
    en: ['start over', 'from scratch', 'reset'],
    es: ['empezar de nuevo', 'desde cero', 'borrón y cuenta nueva'],
  },
  'new-job': { en: ['new job called cafe', 'start a new job'], es: ['obra nueva llamada café', 'empezamos otra obra'] },
  'switch-job': {
    en: ['switch to the cafe job', 'back to the cafe job'],
    es: ['cámbiate a la obra café', 'volvamos al trabajo café'],
  },
  reopen: { en: ['reopen', 'bring back the old job'], es: ['reabre', 'trae de vuelta la obra anterior'] },
  'list-jobs': { en: ['what jobs we got', 'list the jobs'], es: ['qué obras hay', 'lista los trabajos'] },
  'name-job': {
    en: ['call it bakery', 'name this job bakery'],
    es: ['llámalo panadería', 'esta obra se llama panadería'],
  },
  keep: { en: ['keep it', 'save that', 'put it in the job'], es: ['guárdalo', 'déjalo así', 'mételo a la obra'] },
  forget: {
    en: ['forget this job', 'delete our data'],
    es: ['olvida esta obra', 'borra nuestros datos', 'olvídate de todo'],
  },
  point: {
    en: ['mark this as the bid', 'this is what we bid'],
    es: ['marca esto como presupuesto', 'esto es lo que cotizamos'],
  },
  'change-order': {
    en: ['change order', 'what changed since the bid'],
    es: ['orden de cambio', 'qué ha cambiado desde el presupuesto'],
  },
  'sign-off': { en: ['sign off', 'job record'], es: ['acta de entrega', 'cerrar la obra'] },
  remind: {
    en: ['remind me at 6', 'ping me when I can grout'],
    es: ['recuérdame a las 6', 'avísame cuando pueda lechar', 'hazme acordar a las 6'],
  },
  reminders: { en: ['what reminders', 'any reminders'], es: ['qué recordatorios hay', 'hay avisos'] },
  cancel: { en: ['cancel', 'cancel all', 'stop reminding me'], es: ['cancela', 'cancela todo', 'ya no me avises'] },
  'cancel-last': { en: ['cancel that', 'cancel it'], es: ['cancela eso', 'cancélalo'] },
  snooze: { en: ['snooze 20 min', 'push it back an hour'], es: ['pospón 20 min', 'avísame más tarde'] },
}

const found = (said: string, locale: typeof english): Command | null =>
  readCommands(plainText(said).text, locale).command

describe.each(COMMANDS)('%s', (command) => {
  test.each(SAID[command].en)('%s', (said) => expect(found(said, english)).toBe(command))
  test.each(SAID[command].es)('%s', (said) => expect(found(said, spanish)).toBe(command))
})

test.each([
  'cuántas losetas para 10x13',
  'puesto a las 2pm, 21 grados',
  'qué llana para loseta de 18x18',
  'cuánta agua para un bulto',
  'cambia la junta a 1/4',
  'quita el closet',
])('no command: %s', (said) => expect(found(said, spanish)).toBeNull())
