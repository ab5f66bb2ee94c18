/** Colours of our own choice. Nothing is told by hue alone: cuts are hatched and differ in lightness, lines differ in
 *  their dashes, so that the picture reads for the colour-blind and in full sun. */
export type Theme = 'light' | 'dark'

export type Palette = {
  readonly page: string
  readonly ink: string
  readonly whole: string
  readonly cut: string
  readonly hatch: string
  readonly joint: string
  readonly wall: string
  readonly start: string
  readonly movement: string
  readonly door: string
}

export const PALETTES: Readonly<Record<Theme, Palette>> = {
  light: {
    page: '#ffffff',
    ink: '#0b0f14',
    whole: '#fbf8f0',
    cut: '#a9cbe8',
    hatch: '#3f77a6',
    joint: '#6a6f75',
    wall: '#0b0f14',
    start: '#a3200d',
    movement: '#5b1a8c',
    door: '#00584e',
  },
  dark: {
    page: '#0c1014',
    ink: '#ffffff',
    whole: '#252d36',
    cut: '#50687f',
    hatch: '#a9cbe8',
    joint: '#96a1ac',
    wall: '#ffffff',
    start: '#ffb64d',
    movement: '#e3b8ff',
    door: '#6ff0d8',
  },
}
