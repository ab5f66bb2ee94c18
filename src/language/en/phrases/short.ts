/** Running short: what the rest takes, how far the tiles reach, the ways out. */
export const shortPhrases = {
  'log.use-rows': '{rows} {rows|row|rows} set',
  'log.rows': '{rows} {rows|row|rows} set so far.',
  'log.rest-short':
    '{short} {short|tile|tiles} short: the {rows} {rows|row|rows} to go {rows|takes|take} {need}, you have {have}.',
  'log.rest-enough':
    'Yes, enough: the {rows} {rows|row|rows} to go {rows|takes|take} {need} {need|tile|tiles}, you have {have}; {spare} over.',
  'log.rest-takes':
    'The {rows} {rows|row|rows} to go {rows|takes|take} {need} {need|tile|tiles}. How many are left? For example: 9 boxes left.',
  'log.rest-short-places': '{short} {short|tile|tiles} short: what is not set takes {need}, you have {have}.',
  'log.rest-enough-places':
    'Yes, enough: what is not set takes {need} {need|tile|tiles}, you have {have}; {spare} over.',
  'log.rest-takes-places':
    'What is not set takes {need} {need|tile|tiles}. How many are left? For example: 9 boxes left.',
  'log.rest-just':
    'Just: the {rows} {rows|row|rows} to go {rows|takes|take} {need} {need|tile|tiles}, you have {have}. None to break.',
  'log.rest-just-places': 'Just: what is not set takes {need} {need|tile|tiles}, you have {have}. None to break.',
  'log.all-set': 'By what is logged all {of} {of|row is|rows are} set. Not so? Say how many: set 9 rows so far.',
  'log.area-short': '{short} {short|tile|tiles} short: {rest} to go takes about {need}, you have {have}.',
  'log.area-enough': 'Yes, enough: {rest} to go takes about {need} {need|tile|tiles}, you have {have}.',
  'log.area-takes': '{rest} to go takes about {need} {need|tile|tiles}. How many are left? For example: 9 boxes left.',
  'log.reach': 'You reach row {row} of {of}.',
  'log.reach-none': 'Not one more row comes out full.',
  'log.rows-beyond': 'By this layout the floor has {of} {of|row|rows} in all: check the rows, or the way they run.',
  'log.no-rows': 'no rows in this pattern: reckoned tile by tile from the {side} wall',
  'log.assumed-room': 'in {room}',
  'log.assumed-first-row': 'row 1 at the {side} wall',
  'log.assumed-large': 'only the large tile counted',
  'log.assumed-slanted': 'rows on the slant of the pattern, from corner to corner',
  'log.assumed-none-set': 'nothing set yet',
  'log.assumed-offcuts': 'off-cuts lying about not counted',
  'log.assumed-bought': '{n} tiles bought, as planned',
  'log.assumed-by-area': 'by the area, {spare} spares, no rows: give me the sides of the room for a count by rows',
  'log.missing': '{short} {short|tile|tiles} short and no more of the lot. In this order:',
  'log.way-number': '{n}.',
  'log.saves': 'saves {saves}',
  'log.saves-all': 'saves {saves}, enough',
  'log.before-row': 'before row {row}',
  'log.before-left': 'while {n} {n|tile is|tiles are} still to set',
  'log.way-kept': '{n} Off-cuts kept from the rows that are set: {saving} at best.',
  'log.way-any-offcut': '{n} Looser off-cuts, a sawn edge stoned and set to a joint: {saving}. Begin {until}.',
  'log.way-factory-edge': '{n} Use the off-cuts, factory edge to the joint: {saving}. Begin {until}.',
  'log.way-start':
    '{n} Another start line, first whole tiles {x} from the left wall and {y} from the bottom wall: {saving}. Before row 1 only.',
  'log.way-start-turned': '{n} Another start line: {saving}. Before the first tile only.',
  'log.way-hidden':
    '{n} Another lot by the {side} wall where it is hidden, {pieces} {pieces|piece|pieces}: {saving}. Decide {until}.',
  'log.way-hidden-end':
    '{n} Another lot for the {pieces} {pieces|piece|pieces} by the {side} wall, if the oven, fridge or a cabinet hides them: {saving}. Decide {until}.',
  'log.no-way': 'Nothing to gain: {list}.',
  'log.no-way-loose': 'looser off-cuts',
  'log.no-way-start': 'another start line',
  'log.no-way-start-held': 'the start line (the rows set hold it)',
  'log.no-way-hidden': 'another lot by the {side} wall',
  'log.no-way-hidden-late': 'another lot by the {side} wall (all set there)',
  'log.way-yard': '{n} Ask the yard for the lot number: a few boxes may stand at another branch.',
  'log.ways-enough': 'Looser off-cuts and the other lot together: enough.',
  'log.ways-short': 'Looser off-cuts and the other lot together: still {short} short.',
  'log.way-offcuts': '{n} Look through the off-cuts: a sawn edge may go to the wall or under the base.',
  'log.way-start-any': '{n} Another start line, where nothing is set yet.',
  'log.way-hidden-any':
    '{n} Another lot where nobody looks: under the oven, in the closet, behind the door. Mix the boxes first.',
}
