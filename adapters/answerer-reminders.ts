/** Reminders that are due, from the store to the platform they belong to. */
import type { Tools } from '../src/answer/brief.ts'
import type { Memory } from '../src/jobs/memory.ts'
import type { Backing, Deliver } from './contract.ts'
import { brief, type Log } from './logging.ts'
import { type AboutReminder, ReminderClock } from './reminders.ts'
import type { Json, Store } from './stores/store.ts'

/** What is kept of a reminder: the sentence to post, and the language it is in. */
type ReminderBody = { readonly text: string; readonly late?: string; readonly language?: string }

export function reminderText(body: Json, { late }: Pick<AboutReminder, 'late'>, tools: Tools): string {
  const { text, language, late: whenLate } = body as ReminderBody
  if (!late) return text
  if (whenLate !== undefined) return whenLate
  const { phrases } = tools.languages.locale(language ?? tools.settings.defaults.language)
  return `${phrases['shell.late']} ${text}`
}

export function remindWith(
  store: Store<Memory>,
  tools: Tools,
  log: Log,
  now: () => number,
): NonNullable<Backing['remind']> {
  return (deliver: Deliver) => {
    const reminders = new ReminderClock({
      store,
      now,
      deliver: (channel, body, about) => deliver(channel, reminderText(body, about, tools), about.id),
      onTrouble: (trouble) => log.error({ trouble: troubleText(trouble) }, 'a reminder has to wait'),
    })
    reminders.start()
    return () => reminders.stop()
  }
}

const troubleText = (trouble: unknown): string =>
  trouble !== null && typeof trouble === 'object' && 'detail' in trouble ? String(trouble.detail) : brief(trouble)
