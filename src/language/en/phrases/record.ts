/** Readings and photos of a job. */
export const recordPhrases = {
  'job.reading-text': '{text}',
  'job.reading-photo': 'photo {names}',
  'job.reading-with-photo': '{text} (photo {names})',
  'log.contact-dry': '{value} holds on a dry floor, {least} at least; wet or outside takes {wet}.',
  'log.contact-wet': '{value} holds where it gets wet, {least} at least.',
  'log.contact-low-wet': '{value} is under the {least} that wet places need: lift the next one, and see the trowel.',
  'log.with-photos': '{n} {n|photo|photos} kept with it.',
  'log.photos-kept': '{n} {n|photo|photos} kept with this message.',
  'log.photo-asks':
    '{n} {n|photo|photos} kept. What {n|does it|do they} show? For example: flatness 1/8 in 10, or lot 4471.',
  'log.photo-too': '{n} more kept. Say what they show, all at once.',
}
