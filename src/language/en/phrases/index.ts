import { aroundPhrases } from './around.ts'
import { common } from './common.ts'
import { fields } from './fields.ts'
import { quantities } from './quantities.ts'

/** The whole English catalogue. A topic with many phrases has a file of its own, joined here. */
export const phrases = { ...aroundPhrases, ...common, ...fields, ...quantities }
