/** The instant at which the clock of tests stands still. */
export const NOW = '2026-03-10T16:30:00-05:00'
