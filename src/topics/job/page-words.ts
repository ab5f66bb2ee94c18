/** Words that every page of a job has. */
import type { Job } from '../../jobs/job.ts'
import { count, type Phrase, say } from '../../phrase.ts'
import type { Page } from '../../pictures/page.ts'
import { jobName } from './tell.ts'

export const jobTitle = (job: Job): Phrase => jobName(job)

/** Lines to sign, and what is said where lines do not fit. */
export const signatures = (text: (phrase: Phrase) => string): Pick<Page, 'signatures' | 'date' | 'leftOut'> => ({
  signatures: [text(say('page.sign-crew')), text(say('page.sign-owner'))],
  date: text(say('page.date')),
  leftOut: (n) => text(say('page.left-out', { n: count(n) })),
})
