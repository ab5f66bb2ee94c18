/** The layout and its picture. */
export const layout = {
  'layout.area': '{area}.',
  'layout.perimeter': 'Outer walls {perimeter}.',
  'layout.rooms': '{rooms}.',
  'layout.work': 'Area {area} m²: length x width of each part, cut-outs taken off',
  'layout.first-two': 'First lines: {one}, {two}.',
  'layout.first-one': 'First line: {one}.',
  'layout.from-left': '{mm} from the left wall',
  'layout.from-bottom': '{mm} from the bottom wall',
  'layout.middle': 'Start with a tile corner {left} from the left wall and {bottom} from the bottom wall.',
  'layout.anywhere': 'Start anywhere: no wall needs a cut.',
  'layout.counts': '{tile}: {cells} places, {whole} whole, {cut} cut.',
  'layout.worst': 'Narrowest cut {cut}.',
  'layout.room-lines': '{room}: {lines}',
  'layout.rule-factory-edge':
    'Cuts by the trade’s rule (factory edge to the neighbour): {stock} tiles, {reused} {reused|cut|cuts} out of off-cuts.',
  'layout.rule-factory-edge-fewest':
    'Cuts by the trade’s rule (factory edge to the neighbour): {stock} tiles, the fewest there can be, {reused} {reused|cut|cuts} out of off-cuts.',
  'layout.rule-any-offcut-fewest':
    'Any off-cut anywhere: {stock} tiles for the cuts, the fewest there can be, {reused} {reused|cut|cuts} out of off-cuts.',
  'layout.rule-any-offcut':
    'Any off-cut anywhere: {stock} tiles for the cuts, {reused} {reused|cut|cuts} out of off-cuts.',
  'layout.rule-fresh-tile': 'A fresh tile for each cut: {stock} tiles.',
  'layout.measure-x': 'Measure the room across again: {margin} off and the cuts change.',
  'layout.measure-y': 'Measure the room up and down again: {margin} off and the cuts change.',
  'layout.soft-perimeter':
    'Leave 1/4 in soft joint at every wall: {perimeter} of backer rod, {tubes} {tubes|tube|tubes} of sealant.',
  'movement.alone': '{few} soft {few|joint|joints} inside, no stretch over {high}; and all round the walls.',
  'movement.alone-range':
    '{few} to {many} soft joints inside, every {low} to {high} each way; and all round the walls.',
  'movement.alone-walls':
    'Sun, wet or heat brings them closer, every 8 to 12 ft; the slab’s own joints come through. Tell me the tile and I put them on grout lines.',
  'layout.movement':
    '{lines} movement {lines|joint|joints} inside ({inside}), and 1/4 in at every wall ({perimeter}): {rod} of backer rod, {tubes} {tubes|tube|tubes} of sealant. Sources say every {low} to {high}; spaced by {high}.',
  'layout.assumed-gap': '1/4 in gap at the walls',
  'layout.work-room': '{room}: {cells} places = {whole} whole + {cut} cut, {joints} of joint',
  'layout.work-axis': '{span} across with {tile} tile: worst cut {worst}',
  'word.piece-rectangle': 'straight',
  'word.piece-shaped': 'shaped',
  'table.room': 'room',
  'table.length': 'length',
  'table.width': 'width',
  'table.shape': 'shape',
  'table.count': 'pieces',
  'ask.room': 'What shape is the floor? Give me its sides, for example 10x13, or L 12x14 less 4x6.',
  'picture.wall': 'Wall {n}, {room}',
  'picture.title': '{room}',
  'picture.alt': 'Layout of {room}: {cells} tile places, {cut} of them cut.',
  'picture.length': '{length}',
  'picture.distance': '{mm}',
  'picture.whole': 'whole tile',
  'picture.cut': 'cut tile',
  'picture.start': 'line to snap',
  'picture.movement': 'movement joint',
  'picture.hidden': 'cuts hidden here',
  'picture.hole': 'no tile here',
}
