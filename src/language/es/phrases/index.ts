import { joinPhrases } from '../../join-phrases.ts'
import { aroundPhrases } from './around.ts'
import { cautions } from './cautions.ts'
import { common } from './common.ts'
import { fields } from './fields.ts'
import { fitness } from './fitness.ts'
import { jobs } from './jobs.ts'
import { layout } from './layout.ts'
import { layoutExtras } from './layout-extras.ts'
import { names } from './names.ts'
import { outlines } from './outlines.ts'
import { quantities } from './quantities.ts'
import { readings } from './readings.ts'
import { recordPhrases } from './record.ts'
import { rules } from './rules.ts'
import { shell } from './shell.ts'
import { shortPhrases } from './short.ts'
import { trouble } from './trouble.ts'
import { walls } from './walls.ts'
import { ownWordPhrases } from './words.ts'

/** The whole Spanish catalogue. A topic with many phrases has a file of its own, joined here. */
export const phrases = joinPhrases(
  aroundPhrases,
  cautions,
  common,
  fields,
  fitness,
  jobs,
  layout,
  layoutExtras,
  names,
  outlines,
  quantities,
  readings,
  recordPhrases,
  rules,
  shortPhrases,
  shell,
  trouble,
  walls,
  ownWordPhrases,
)
