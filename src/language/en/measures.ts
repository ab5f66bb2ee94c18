/** English words of what is measured on a floor. How they are used: language/rule-measures.ts. */
import type { MeasureWords } from '../measure-words.ts'

export const measures: MeasureWords = {
  joist: 'joist|joists|framing|floor joist',
  onCentre: 'on center|on centre|on centers|oc|o\\.?c|centers|centres|apart',
  psf: 'psf|lbs? per square foot|lb/sf',
  live: 'live',
  dead: 'dead',
  species: {
    spf: 'spf|s p f|spruce pine fir|spruce',
    dfl: 'douglas fir|doug fir|dfl|df l|df-l|df|douglas fir larch',
    other:
      'southern pine|southern yellow pine|syp|yellow pine|hem fir|hem-fir|hf|redwood|cedar|pine|oak|ponderosa|larch',
  },
  grades: {
    '1': '#1|no\\.? ?1|number 1|number one|grade 1',
    '2': '#2|no\\.? ?2|number 2|number two|grade 2|#2\\+?btr',
    other: '#3|no\\.? ?3|number 3|number three|stud grade|select structural|economy|construction grade',
  },
  gaps: 'gaps|gap|readings|reading|under the edge|dips|measured|reads',
  heights: 'heights|height|elevations|elevation|grid|laser|readings|levels|shots',
  spacing: 'every|spacing|spaced|apart|grid of|grid',
  sixteenths: 'sixteenths|16ths|in 16ths|1/16s',
  eighths: 'eighths|8ths|1/8s',
  diagonals: 'diagonals|diagonal|corner to corner|cross corners|crosses|diags|diag',
  marks: '3-4-5|3 4 5|6-8-10|6 8 10|9-12-15|9 12 15',
  voids: 'voids|void|hollows|bare spots|bare spot|empty spots|air pockets',
  vary: 'vary|varies|varying|variation|out by|off by|difference|differ',
  calipers: 'caliper|calipers|calipered|measured|measure|mic|miked|tape says|come out|sizes',
  warp: 'warp|warped|warpage|cup|cupped|cupping|bow|bowed|crown|crowned|bowing',
  lifted: 'lifted|pulled|popped|lift|pull|pried',
  holes: 'holes|hole|probes|probe|test holes|tests|rh tests',
  thick: 'thick|slab|deep|screed|anhydrite|calcium sulfate|calcium sulphate|gypsum',
  sheathing: 'plywood|ply|osb|sheathing|subfloor|t&g|decking',
  range: 'range|swing|yearly|summer to winter|between',
  tube: 'tube|tubes|sausage|sausages|cartridge|cartridges',
  to: 'to|-',
}
