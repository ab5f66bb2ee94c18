/** Whether a message steers the job or logs work, by its words: asked before any other topic. */
import type { Memory } from '../../jobs/memory.ts'
import type { Concept } from '../../language/concepts.ts'
import type { Heard } from '../../language/heard.ts'
import { mentionsTime } from '../../language/moments.ts'
import { readLog } from '../log/read.ts'
import { GOES_BY_SITE, statesSite } from '../site.ts'
import { asksSomething } from './asks.ts'

/** Words that a wait is asked with: "remind me when we can grout" is worked out as that wait. */
const WAITS: readonly Concept[] = ['grout', 'walk', 'heavy', 'wet-use', 'grouted-verb', 'slake', 'pot-life']

/** "in 3 hours", "tomorrow at 8": the reminder's own time, so that what is waited for is only its text. */
const tellsWhen = (heard: Heard): boolean => heard.durationsH.length > 0 || mentionsTime(heard)

const statesNothing = (heard: Heard): boolean =>
  Object.keys(heard.facts).every((key) => ['surface', 'wet', 'done'].includes(key))

/** What kind of message for the job this is; null for one that asks something of the trade. */
export function steers(heard: Heard, memory: Memory): 'job' | 'log' | null {
  if (heard.problem) return null
  // A wait or a mix asked before is told again with it.
  if (statesSite(heard)) return memory.talk !== null && GOES_BY_SITE.includes(memory.talk.topic) ? null : 'job'
  if (commands(heard, memory)) return 'job'
  // "4 bags and 60 tiles on hand, what's missing?" asks for a list.
  if (heard.has('missing') && heard.commands.command === null) return null
  return readLog(heard, memory) === null ? null : 'log'
}

/** "mixed a bag", "just mixed at 2:10": its slake and its life run. */
export const startsBucket = (heard: Heard): boolean =>
  heard.has('mixed-verb') &&
  !asksSomething(heard) &&
  !heard.has('water', 'set-verb') &&
  !heard.commands.log.has('binned')

/** "we're in Germany": where the job is, and nothing else. */
export const tellsCountry = (heard: Heard): boolean =>
  heard.facts.country !== undefined &&
  heard.quantities.length === 0 &&
  heard.commands.command === null &&
  Object.keys(heard.facts).every((key) => ['country', 'surface'].includes(key)) &&
  !asksSomething(heard) &&
  heard.rules.subjects.length === 0

/** "go back to wash-up": a job that was put aside, by its name. */
export const namesParked = (heard: Heard, memory: Memory): boolean => {
  // The name is looked for last: few channels have put a job aside.
  if (memory.parked.length === 0 || !statesNothing(heard)) return false
  const { name } = heard.commands
  return name !== null && memory.parked.some(({ job }) => job.name?.toLowerCase() === name)
}

function commands(heard: Heard, memory: Memory): boolean {
  if (startsBucket(heard)) return true
  const { command, zone, yes } = heard.commands
  // "the grout one" counts nothing.
  const bare = heard.quantities.every((q) => q.token.spelled && q.n === 1 && q.unit === null)
  if (memory.asked?.question === 'forget' && yes && bare) return true
  if (tellsCountry(heard)) return true
  if (zone !== null && bare && !heard.has('set-verb', 'grouted-verb') && !asksSomething(heard)) return true
  switch (command) {
    case null:
      return memory.asked?.question === 'forget' ? bare && heard.has('no-correction') : namesParked(heard, memory)
    case 'remind':
      return !heard.has(...WAITS) || (tellsWhen(heard) && !heard.has('when', 'can-we', 'set-verb', 'grouted-verb'))
    case 'snooze':
      return true
    case 'switch-job':
    case 'reopen':
    case 'name-job':
      return bare && statesNothing(heard) && !heard.has('tile-kind', 'porcelain', 'ceramic', 'stone', 'glass', 'trowel')
    case 'new-job':
    case 'start-over':
    case 'point':
    case 'sign-off':
    case 'change-order':
      return true
    case 'keep':
      return heard.facts.rooms === undefined && !heard.has('wet-use', 'walk')
    // "who said 18x18"
    case 'history':
      return !heard.has('how-many', 'how-much')
    case 'undo':
    case 'so-far':
    case 'forget':
    case 'list-jobs':
    case 'reminders':
    case 'cancel':
    case 'cancel-last':
      return bare
  }
}
