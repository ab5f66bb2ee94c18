/** The heavy libraries, loaded when a message first needs one. */
import { createRequire } from 'node:module'
import type { Libraries, MathFraction, MathLibrary, TimeFound, TimeLibrary } from '../src/units/libraries.ts'

const require = createRequire(import.meta.url)

type Chrono = {
  parse(text: string, reference: object): { text: string; index: number; start: Omit<TimeFound, 'text' | 'index'> }[]
}

let math: MathLibrary | undefined
const times = new Map<string, TimeLibrary>()

function loadMath(): MathLibrary {
  // The single-file build: the package's entry would load some 900 modules.
  const all = require('mathjs/lib/browser/math.js') as {
    unit: MathLibrary['unit']
    fraction: (t: string | number) => MathFraction
  }
  return { unit: (n, name) => all.unit(n, name), fraction: (text) => all.fraction(text) }
}

function loadTimes(language: string): TimeLibrary {
  const name = language === 'es' ? 'chrono-node/es' : 'chrono-node/en'
  const chrono = require(name) as { casual: Chrono }
  return {
    find: (text, reference) =>
      chrono.casual.parse(text, reference).map((r) => ({
        text: r.text,
        index: r.index,
        isCertain: (c) => r.start.isCertain(c),
        get: (c) => r.start.get(c),
      })),
  }
}

export const libraries: Libraries = {
  math: () => {
    math ??= loadMath()
    return math
  },
  times: (language) => {
    let found = times.get(language)
    if (!found) {
      found = loadTimes(language)
      times.set(language, found)
    }
    return found
  },
}
