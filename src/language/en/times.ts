import type { TimeWords } from '../moments.ts'

export const times: TimeWords = {
  clock: String.raw`\d\s?[ap]\.?\s?m?\b|\d:\d\d|o'?clock|\d ?ish\b|\b(?:around|about|bout) \d{1,2}\s*(?:$|[,?!])`,
  spans: {
    alone: [
      ['half an? (?:hour|hr)', 30],
      ['(?:an? |one )?(?:hour|hr)', 60],
    ],
    added: [
      ['and (?:an? )?half', 30],
      ['and (?:an? )?quarter', 15],
    ],
    beforeHour: [
      ['half past', 30],
      ['(?:an? )?quarter (?:past|after)', 15],
      ['(?:an? )?quarter (?:to|till?|of|before)', -15],
    ],
    afterHour: [],
    every: [
      ['every (?:other|second|2nd) day', 'other-day'],
      ['(?:every|each) (?:weekday|week day|workday|work day|working day)s?', 'workday'],
      ['(?:every|each) (?:monday|tuesday|wednesday|thursday|friday|saturday|sunday)', 'week'],
      ['every week|weekly|once a week', 'week'],
      ['(?:every|each) (?:single )?(?:day|morning|afternoon|evening|night)|daily|everyday|once a day', 'day'],
      [
        '(?:every|each)(?= (?:an? |half |couple |few |[a-z]+ |[\\d.,/]+ ?)?(?:hours?|hrs?|h|minutes?|mins?)\\b)',
        'span',
      ],
      ['hourly', 'span'],
    ],
    timely: 'at noon',
  },
  replace: [
    ['tday', 'today'],
    [String.raw`\b(\d{1,2})(:\d\d)? ?ish\b`, '$1$2'],
    [
      String.raw`\b(?:around|about|bout) (\d{1,2})(:\d\d)?(?=\s*(?:$|[,?!]|[ap]m|o'?clock|this|yesterday|last|today))`,
      'at $1$2',
    ],
    [String.raw`\b(?:at )?(\d{1,2})(:\d\d)? (this|yesterday|tomorrow) morning\b`, '$3 morning at $1$2am'],
    [String.raw`\b(?:at )?(\d{1,2})(:\d\d)? (this|yesterday|tomorrow) (afternoon|evening)\b`, '$3 at $1$2pm'],
    [String.raw`\bthis at\b`, 'today at'],
    [String.raw`\b(?:at )?(\d{1,2})(:\d\d)? last night\b`, 'last night at $1$2'],
    [String.raw`\bfirst thing\b(?!.*\d)`, 'at 7am'],
    [String.raw`\bin the morning\b(?!.*\b(?:tomorrow|today|yesterday)\b)(?<!\d.*)`, 'tomorrow at 7am'],
    [String.raw`\b(?:tmrw|tmw)\b`, 'tomorrow'],
    [String.raw`\b(?:yday|yest)\b`, 'yesterday'],
  ],
}
