/** The channel's job: which of its answers a message is for. */
import { say } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { statesSite } from '../site.ts'
import type { Brief, Told } from '../topic.ts'
import { changeOrder, markPoint } from './change-order.ts'
import { history } from './history.ts'
import { soFar } from './holds.ts'
import { keep } from './keep.ts'
import { setCountry, setZone } from './place.ts'
import { signOff } from './record.ts'
import { bucket, cancelLast, cancelReminders, listReminders, remind, snooze, upcoming } from './remind.ts'
import { namesParked, startsBucket, tellsCountry } from './route.ts'
import { listJobs, nameIn, open, rename, start } from './several.ts'
import { keepSite } from './site.ts'
import { undo } from './undo.ts'

export function job(brief: Brief): Outcome<Told> {
  const { command, zone, yes } = brief.heard.commands
  if (startsBucket(brief.heard)) return bucket(brief)
  if (statesSite(brief.heard)) return fine(keepSite(brief))
  const { asked } = brief.memory
  if (asked?.question === 'forget' && asked.person === brief.person && (yes || (command === 'forget' && yes)))
    return fine({ topic: 'job', answer: say('job.forgotten'), forget: true })
  if (asked?.question === 'forget' && command === null && brief.heard.has('no-correction'))
    return fine({ topic: 'job', answer: say('job.not-forgotten') })
  if (command === null && namesParked(brief.heard, brief.memory)) return fine(open(brief, nameIn(brief)))
  switch (command) {
    case 'undo':
      return undo(brief)
    case 'history':
      return fine(history(brief))
    case 'start-over':
    case 'new-job':
      return fine(start(brief, command === 'new-job' ? nameIn(brief) : null))
    case 'switch-job':
      return fine(open(brief, nameIn(brief)))
    case 'reopen':
      return fine(open(brief, nameIn(brief) ?? ''))
    case 'list-jobs':
      return fine(listJobs(brief))
    case 'name-job':
      return fine(rename(brief))
    case 'keep':
      return fine(keep(brief))
    case 'forget':
      return refuse('question', { question: 'forget' })
    case 'point':
      return fine(markPoint(brief, nameIn(brief)))
    case 'change-order':
      return fine(changeOrder(brief, nameIn(brief)))
    case 'sign-off':
      return fine(signOff(brief))
    case 'remind':
      return remind(brief)
    case 'reminders':
      return fine(listReminders(brief))
    case 'cancel':
      return fine(cancelReminders(brief))
    case 'cancel-last':
      return upcoming(brief).length > 0 ? fine(cancelLast(brief)) : undo(brief)
    case 'snooze':
      return fine(snooze(brief))
    default:
      if (tellsCountry(brief.heard)) return fine(setCountry(brief))
      return fine(zone === null ? soFar(brief) : setZone(brief, zone))
  }
}
