import { common } from './common.ts'
import { quantities } from './quantities.ts'
import { shell } from './shell.ts'

/** The whole Spanish catalogue. A topic with many phrases has a file of its own, joined here. */
export const phrases = { ...common, ...shell, ...quantities }
