/** Questions of our own for the rule book, with what must come of them.
 *  `verdict` null: the rule is told without a verdict. A rule of several is enough where `rule` is a list. */
import type { Verdict } from '../../src/rules/book.ts'

export type RuleCase = {
  readonly say: string
  readonly rule: string | readonly string[]
  readonly verdict: Verdict | null
  readonly values?: Readonly<Record<string, number>>
}

const of = (rule: string | readonly string[], rows: readonly (readonly [string, Verdict | null])[]): RuleCase[] =>
  rows.map(([say, verdict]) => ({ say, rule, verdict }))

export const RULE_CASES: readonly RuleCase[] = [
  ...of('contact-dry', [
    ['how much mortar contact under tile on a bedroom floor', null],
    ['is 85% coverage ok in a hallway', 'yes'],
    ['75 percent coverage in the kitchen good enough?', 'no'],
    ['minimum thinset coverage for a dry interior floor', null],
    ['what % mud contact on a living room floor', null],
    ['pulled a tile in the shop floor, about 80% covered with mud, fine?', 'yes'],
  ]),
  ...of('contact-wet', [
    ['is 80 percent ok in a shower', 'no'],
    ['how much coverage on shower walls', null],
    ['96% mud contact in the steam room ok', 'yes'],
    ['90% coverage in a shower too low?', 'yes'],
    ['what coverage do i need in a wet area', null],
    ['shower floor coverage 95 percent, is that enough', 'yes'],
  ]),
  ...of('contact-exterior', [
    ['85 pct contact on the patio alright?', 'no'],
    ['how much coverage outside on a porch', null],
    ['exterior tile min mortar contact?', null],
  ]),
  ...of('contact-stone', [
    ['marble in an entry, 85% contact enough?', 'no'],
    ['coverage required under travertine in a hallway', null],
  ]),
  ...of(
    ['contact-dry', 'contact-wet'],
    [
      ['is 85% coverage ok', 'depends'],
      ['is 70 percent mud contact ok', 'no'],
      ['97% contact good enough?', 'yes'],
      ['how much thinset coverage do i need under tile', null],
    ],
  ),
  ...of('contact-panel-floor', [['gauged porcelain panel on the floor, 80% contact ok?', 'no']]),
  ...of('contact-panel-wall', [['thin panel on a wall, contact 82 percent ok', 'yes']]),
  ...of('contact-au-floor', [['85% adhesive contact on a kitchen floor in australia ok?', 'no']]),
  ...of('contact-uk', [['how much adhesive contact on a floor in the UK', null]]),
  ...of('contact-check', [
    ['how many tiles should i pull to check coverage', null],
    ['how often do we lift a tile to check contact', null],
  ]),
  ...of('voids', [
    ['hollow corner ok if coverage is 90?', 'no'],
    ['is a 3 inch void at the edge allowed', 'no'],
  ]),
  ...of('spot-bonding', [
    ['can i five spot wall tile', 'no'],
    ['is dot and dab ok for big tile', 'no'],
    ['dabs of thinset behind the shower tile fine?', 'no'],
  ]),
  ...of('back-butter', [
    ['do i have to backbutter 18x36', 'yes'],
    ['can i skip back buttering on 24x24', 'no'],
    ['back butter 12x24 or not', 'yes'],
    ['should i butter the backs on 8x48 planks', 'yes'],
  ]),
  ...of('back-butter-small', [['do i need to back butter 6x6', 'depends']]),
  ...of('ridges', [
    ['which way should the trowel ridges run', null],
    ['swirls with the trowel ok?', 'no'],
  ]),
  ...of('bed-least', [
    ['how thick does the thinset need to be under the tile', null],
    ['minimum mortar bed under tile?', null],
    ['is 1/16 of thinset under the tile enough', 'no'],
  ]),
  ...of('bed-most-thin', [
    ['can i go 1/2 thick with regular thinset', 'no'],
    ['max thickness for standard thinset', null],
  ]),
  ...of('bed-most-large', [
    ['how thick can lft mortar go', null],
    ['3/8 build up with large format mortar ok?', 'yes'],
  ]),
  ...of('notch', [['what trowel for 18x18', null]]),
  ...of('flat-large', [
    ['slab is out 3/16 in 10 ft, ok for 24x48?', 'no'],
    ['how flat for 24x48', null],
    ['floor flatness for 8x48 planks', null],
    ['1/8 in 10 ft ok for 18x18?', 'yes'],
    ['dip of 1/4 over 10 feet, 24x24 tile, too much?', 'yes'],
    ['is 1/8 under a 6 ft level good for 24x24', 'depends'],
    ['1/8 dip in 2 ft ok for 24x24', 'no'],
    ['whats the flatness tolerance for 12x24', null],
    ['5/16 out of flat under a 10ft straightedge for 18x36 planks alright?', 'no'],
  ]),
  ...of('flat-small', [
    ['how flat does the floor have to be for 12x12', null],
    ['3/16 in 10 ft ok for 6x6?', 'yes'],
    ['floor has a 3/8 dip in 10ft, ok for 12x12', 'no'],
    ['quarter inch in ten feet fine for 8x8 tile', 'yes'],
  ]),
  ...of(
    ['flat-large', 'flat-small'],
    [
      ['how flat does my slab need to be', null],
      ['is 3/16 in 10 ft flat enough', 'depends'],
      ['is 1/2 in 10 ft ok', 'no'],
    ],
  ),
  ...of('flat-wall-large', [['how flat should the wall be for 24x24', null]]),
  ...of('flat-uk', [
    ['how flat must the floor be in the uk', null],
    ['5mm under a 2m edge ok in the uk?', 'no'],
  ]),
  ...of('flat-not-level', [
    ['does the floor have to be level for tile', 'no'],
    ['is it ok if the floor is out of level but flat', 'yes'],
  ]),
  ...of('panel-edges', [['plywood seam 1/16 higher than the next sheet ok?', 'no']]),
  ...of('slab-ff', [['is an FF 25 slab flat enough for large tile', 'no']]),
  ...of('filling-with-mortar', [
    ['can i level a low spot with extra thinset', 'no'],
    ['ok to fill a dip with mortar as i go', 'no'],
  ]),
  ...of('joint-three-times', [
    ['how small a grout joint can i go', null],
    ['is a 1/32 joint ok', 'no'],
  ]),
  ...of('joint-rectified', [
    ['smallest grout line for rectified tile', null],
    ['is a 1/16 joint ok with rectified 24x24', 'depends'],
    ['1/8 joint on rectified 24x24 fine?', 'yes'],
  ]),
  ...of('joint-bond-rectified', [
    ['is 1/8 joint enough for rectified 8x48 at a third offset', 'yes'],
    ['rectified 12x24 running bond, 1/16 joint ok?', 'no'],
    ['minimum joint rectified 24x48 staggered', null],
  ]),
  ...of('joint-bond-calibrated', [['1/8 joint on non rectified 6x36 staggered fine?', 'no']]),
  ...of('joint-zero', [
    ['can i butt rectified tile with no grout line', 'no'],
    ['is it ok to butt the tiles together', 'no'],
  ]),
  ...of('joint-uk-floor', [['is a 2 mm floor joint ok in the uk', 'no']]),
  ...of('joint-widest-uk', [['how wide can a grout joint be', null]]),
  ...of('lippage-narrow', [
    ['how much lippage is allowed with 1/8 joints', null],
    ['is 1/16 lippage ok with a 1/8 joint', 'no'],
    ['1/32 lippage acceptable?', 'yes'],
    ['how much lippage is ok', null],
  ]),
  ...of('lippage-wide', [
    ['lippage allowed with a 3/8 joint', null],
    ['1/16 lippage ok with 1/4 grout joint', 'yes'],
  ]),
  ...of('lippage-uk-narrow', [['1.5mm lippage with a 3mm joint ok in the uk', 'no']]),
  ...of('offset-long', [
    ['half offset on 8x48', 'no'],
    ['half offset on 8x48 plank fine?', 'no'],
    ['is a 1/3 offset ok on 12x24', 'yes'],
    ['50% stagger on 6x36 wood look ok?', 'no'],
    ['max offset for 9x48', null],
    ['can i run 12x24 in a brick pattern at 50/50', 'no'],
    ['is 50 percent offset too much for 6x24', 'yes'],
    ['how much stagger on plank tile 8x48', null],
  ]),
  ...of('offset-short', [
    ['half offset on 3x6 fine?', 'yes'],
    ['brick bond 50% with 4x12 ok', 'yes'],
  ]),
  ...of(
    ['offset-long', 'offset-short'],
    [
      ['is half offset ok', 'depends'],
      ['third offset ok?', 'yes'],
    ],
  ),
  ...of('perimeter-gap', [
    ['how much gap at the wall for a 12x24 floor', null],
    ['do i need a gap at the walls', 'yes'],
    ['expansion gap around the perimeter?', null],
    ['is 1/16 gap at the wall enough', 'no'],
    ['can i skip the perimeter joint', 'no'],
  ]),
  ...of('tight-to-wall', [
    ['can i go tight to the wall with tile', 'no'],
    ['is it ok to grout right up to the wall', 'no'],
  ]),
  ...of('movement-inside', [
    ['how often do i need expansion joints indoors', null],
    ['movement joint spacing for interior floor', null],
    ['is 40 ft without a movement joint ok inside', 'no'],
  ]),
  ...of('movement-sun', [['how far apart movement joints in a sunroom', null]]),
  ...of('movement-outside', [
    ['expansion joint spacing on a patio', null],
    ['are exterior movement joints every 16 ft ok', 'no'],
  ]),
  ...of('movement-uk-inside', [['movement joint spacing inside in the uk', null]]),
  ...of('movement-uk-outside', [['external movement joints every how many metres uk', null]]),
  ...of('movement-width-outside', [['how wide should exterior expansion joints be', null]]),
  ...of('movement-width-inside', [['how wide does an interior movement joint have to be', null]]),
  ...of('change-of-plane', [
    ['grout or caulk in the corners', null],
    ['can i grout the inside corners', 'no'],
    ['do i have to caulk where the wall meets the tub', 'yes'],
  ]),
  ...of('slab-joints', [
    ['can i tile over a control joint', 'no'],
    ['is it ok to tile across an expansion joint in the slab', 'no'],
  ]),
  ...of('grout-sanded-narrow', [
    ['sanded in 1/16?', 'no'],
    ['can i use sanded grout in a 1/16 joint', 'no'],
  ]),
  ...of('grout-sanded-wide', [
    ['sanded grout in 3/16 ok', 'yes'],
    ['sanded or unsanded for 3/16 joint', null],
    ['sanded for 1/8 joint?', 'yes'],
  ]),
  ...of('grout-unsanded-narrow', [['unsanded grout for a 1/16 joint ok', 'yes']]),
  ...of('grout-unsanded-wide', [['can i use unsanded in a quarter inch joint', 'no']]),
  ...of('grout-soft-face', [['is sanded grout ok on polished marble', 'no']]),
  ...of('grout-soft-unsanded', [['unsanded on glass tile ok?', 'yes']]),
  ...of('grout-depth', [['thinset squeezed up in the joints, ok to grout over it?', 'no']]),
  ...of('grout-temperature', [
    ['is 50F too cold to grout', 'yes'],
    ['ok to grout at 70 degrees', 'yes'],
  ]),
  ...of('grout-wait', [
    ['can we grout tonight', 'depends'],
    ['ok to grout same day?', 'depends'],
  ]),
  ...of('retemper', [
    ['can i add water to stiff thinset', 'no'],
    ['mud is getting thick, splash of water ok?', 'no'],
  ]),
  ...of('slake', [
    ['do i really have to let thinset slake', 'yes'],
    ['can i skip the slake', 'no'],
  ]),
  ...of('mix-speed', [['what rpm to mix thinset', null]]),
  ...of('epoxy-water', [['can i thin epoxy grout with a little water', 'no']]),
  ...of('unmodified-membrane', [
    ['unmodified under a membrane?', 'depends'],
    ['can i use modified thinset over an uncoupling membrane', 'depends'],
  ]),
  ...of('mastic-large', [['is mastic ok under 24x24 porcelain', 'no']]),
  ...of('mastic-wet', [['can i use premixed adhesive in a shower', 'no']]),
  ...of('mastic-floor', [['bucket adhesive on a kitchen floor ok?', 'no']]),
  ...of('min-temperature', [
    ['how cold is too cold to set tile', null],
    ['can i set tile at 35 degrees', 'no'],
    ['minimum temperature for thinset', null],
  ]),
  ...of('slab-age', [
    ['slab is 2 weeks old can we tile', 'no'],
    ['how old does a slab have to be before tile', null],
    ['concrete poured 6 weeks ago ok to tile?', 'yes'],
  ]),
  ...of('slab-age-uk', [['is a 5 week old concrete slab ready to tile in the uk', 'no']]),
  ...of('screed-sulfate', [['how dry must an anhydrite screed be', null]]),
  ...of('slab-humidity', [
    ['slab reads 85% RH, ok to tile?', 'no'],
    ['what rh is ok for tile over a slab', null],
    ['slab at 78 rh good to go?', 'depends'],
    ['moisture reading 70% rh in the concrete fine?', 'yes'],
  ]),
  ...of('slab-holes', [['how many rh test holes do i need', null]]),
  ...of('deflection-tile', [
    ['what deflection do i need for porcelain tile', null],
    ['is L/480 ok for tile', 'yes'],
    ['is L/240 stiff enough for tile', 'no'],
  ]),
  ...of('deflection-stone', [
    ['L/480 good enough for marble floor?', 'no'],
    ['what deflection for travertine floor', null],
  ]),
  ...of('dead-load', [['is 10 psf dead load ok for tile', 'no']]),
  ...of('engineered-joists', [
    ['are my i-joists ok for tile', 'depends'],
    ['floor trusses 24 oc ok for tile?', 'depends'],
  ]),
  ...of('over-vinyl', [
    ['can i tile over sheet vinyl', 'depends'],
    ['ok to go over old linoleum?', 'depends'],
  ]),
  ...of('over-tile', [['can i tile over existing tile', 'depends']]),
  ...of('over-cutback', [['can i thinset right over black mastic', 'no']]),
  ...of('over-paint', [
    ['can i tile over painted concrete', 'no'],
    ['tile over sealed concrete ok?', 'no'],
  ]),
  ...of('over-crack', [['hairline crack in the slab, ok to tile over', 'depends']]),
  ...of('crack-step', [['slab crack with one side higher, ok to tile over?', 'no']]),
  ...of('respirator', [['do i need a mask to rake grout', 'yes']]),
  ...of('asbestos-age', [['house was built in 1988 so no asbestos in the vinyl right?', 'no']]),
  ...of('asbestos-any', [
    ['do i need to test for asbestos', 'yes'],
    ['is there asbestos in old 9x9 tile?', 'depends'],
  ]),
  ...of('asbestos-sand', [
    ['can i grind off the old cutback', 'no'],
    ['ok to sand old black adhesive smooth?', 'no'],
  ]),
  ...of('heat-wait', [['can we turn on the radiant heat tomorrow to help it dry', 'no']]),
  ...of('heat-fastener', [['can i screw a threshold into a heated floor', 'no']]),
  ...of('heat-resistance', [['when do i test the heat cable resistance', null]]),
  ...of('slope', [
    ['how much slope in a shower pan', null],
    ['is 1/8 per foot enough slope for a shower floor', 'no'],
    ['1/4 per foot shower pitch ok?', 'yes'],
  ]),
  ...of('dcof', [
    ['what dcof for a bathroom floor', null],
    ['is dcof 0.38 ok for a bathroom floor', 'no'],
    ['dcof .50 good for a mudroom?', 'yes'],
  ]),
  ...of('flood-test', [
    ['can i skip the flood test', 'no'],
    ['how long to flood test a pan', null],
  ]),
  ...of('weep-holes', [['ok to cover the weep holes with mud', 'no']]),
  ...of('half-tile', [['is a 2 inch sliver at the wall ok', 'no']]),
  ...of('dry-cutting', [['can i dry cut porcelain with a grinder inside', 'no']]),
  ...of('acid-bleach', [['can i mix muriatic acid and bleach', 'no']]),
  ...of('post-tension', [['can i drill into a post tension slab', 'no']]),
  ...of('gas-line', [['can i hook the gas range back up', 'no']]),
  ...of('gfci', [['do i need a gfci for the wet saw', 'yes']]),
  ...of('mortar-large', [['can i use regular thinset under 24x48', 'no']]),
  ...of('need-membrane', [['do i need a crack isolation membrane under tile', 'depends']]),
  ...of('bouncy', [['my floor bounces can i tile it', 'no']]),
  ...of('subfloor', [['is 5/8 plywood enough under tile', 'depends']]),
  ...of('lippage-narrow', [
    ['whats the max lipage on 12x24 with 1/8 grout joint', null],
    ['tile edges are 1/16 different in height, ok with 1/8 joint?', 'no'],
  ]),
  ...of('contact-wet', [
    ['minimum coverge in a shower', null],
    ['is 90 precent contact ok in a showr', 'no'],
  ]),
  ...of('movement-inside', [
    ['do i need an expansion joint in a 40 ft hallway', 'yes'],
    ['do i need an expansion joint in a 12 ft hallway', 'depends'],
  ]),
  ...of('retemper', [['can i use thinset that sat for 3 hours', 'no']]),
  ...of('tight-to-wall', [['can i grout tile tight to the bathtub', 'no']]),
]
