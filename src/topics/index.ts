/** Every topic by its name. */
import type { Topic } from '../reply.ts'
import { convert } from './convert.ts'
import { cure } from './cure.ts'
import { fitness } from './fitness/index.ts'
import { grout } from './grout.ts'
import { help } from './help.ts'
import { job } from './job/index.ts'
import { layout } from './layout.ts'
import { levelling } from './levelling.ts'
import { log } from './log/index.ts'
import { mix } from './mix.ts'
import { mortar } from './mortar.ts'
import { order } from './order.ts'
import { shower } from './shower.ts'
import { tile } from './tile.ts'
import { joinTold, type TopicAnswer } from './topic.ts'
import { underlayment } from './underlayment.ts'

/** A message that names room and tile and asks for no single thing gets tile, mortar and grout at once. */
const everything: TopicAnswer = (brief) => {
  const main = tile(brief)
  const single = brief.has('how-many', 'tile', 'piece', 'box') && brief.has('how-many', 'how-much', 'piece', 'box')
  if (!main.ok || single) return main
  const others = [mortar(brief), grout(brief)].flatMap((o) => (o.ok ? [o.value] : []))
  const told = joinTold(main.value, ...others)
  // Rooms that take another mortar or grout are told beside the first.
  const more = others.flatMap((o) => (o.details ?? []).filter((d) => d.key === 'room.told'))
  return { ok: true, value: { ...told, details: [...(told.details ?? []), ...more] } }
}

/** "how many bags of thinset and how many of grout": both, where the tile is known. */
const mortarAndGrout: TopicAnswer = (brief) => {
  const main = mortar(brief)
  const asksBoth = brief.heard.has('mortar') && brief.heard.has('grout') && brief.heard.has('how-many', 'how-much')
  const other = main.ok && asksBoth && main.value.values?.['mortar_bags'] !== undefined ? grout(brief) : null
  return main.ok && other?.ok ? { ok: true, value: joinTold(main.value, other.value) } : main
}

export const TOPIC_ANSWERS: Partial<Record<Topic, TopicAnswer>> = {
  tile: everything,
  mortar: mortarAndGrout,
  grout,
  mix,
  cure,
  layout,
  convert,
  help,
  levelling,
  underlayment,
  shower,
  order,
  job,
  log,
  substrate: fitness,
  joints: fitness,
  contact: fitness,
  trouble: fitness,
}
