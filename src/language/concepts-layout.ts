/** Meanings of floors told in other ways than by two sides, and of what a crew asks of a layout. */
export const LAYOUT_CONCEPTS = [
  // outlines
  'turn-verb',
  'sides-word',
  'one-diagonal',
  'round-shape',
  'half-round',
  'quarter-round',
  'rounded-corner',
  'oval-word',
  'radius',
  'diameter',
  'bump-out',
  'alcove-word',
  'triangle',
  // patterns
  'stair-step',
  'along-width',
  'measured-size',
  // wishes
  'which-way',
  'appliance',
  'story-pole',
  'sliver-word',
  'cut-list',
  'directional',
  'left-over',
  'slab-joint',
  'movement-word',
  // rooms tiled differently
  'laid-in',
  'all-rooms',
  // pictures
  'dark-word',
  // walls
  'rough-opening',
  'ledger',
  'out-of-level',
  'off-level',
  'first-course',
  'tub-word',
  'carry-round',
  'stood-up',
  'on-joints',
  'where-put',
  'valve-word',
] as const
