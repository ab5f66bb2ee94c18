import type { TimeWords } from '../moments.ts'

export const times: TimeWords = {
  clock: String.raw`\d\s?[ap]\.?\s?m?\b|\d:\d\d|o'?clock`,
  replace: [
    ['tday', 'today'],
    [String.raw`\b(?:tmrw|tmw)\b`, 'tomorrow'],
    [String.raw`\b(?:yday|yest)\b`, 'yesterday'],
  ],
}
