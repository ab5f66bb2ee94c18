/** Messages about what lies around the tile, with what must come back. Ranges are worked out by hand from area, size and
 *  rule, not by the program: sheets and rolls from area / piece to a tenth or so over it, clips from 1.4 to 7 a tile. */
export type Want = number | readonly [least: number, most: number]
export type Row = readonly [say: string, topic: string, values?: Readonly<Record<string, Want>>]

const FT2 = 0.09290304
const FT3_L = 28.316846592
const LB = 0.45359237
/** Pieces for an area in sf: at least the area's own, at most 15 % and one more. */
const pieces = (sf: number, each: number): Want => [
  Math.ceil(sf / each - 1e-9),
  Math.ceil((1.15 * sf) / each) + (sf / each < 5 ? 1 : 0),
]
const clips = (tiles: number): Want => [1.4 * tiles, 7 * tiles]
const near = (n: number, share = 0.02): Want => [n * (1 - share), n * (1 + share)]

export const UNDERLAYMENT: readonly Row[] = [
  ['cork sheets 2x4 ft for 300 sf how many', 'underlayment', { sheets: pieces(300, 8), area_m2: near(300 * FT2) }],
  ['how many 3x5 cement board sheets for a 5x9 bath', 'underlayment', { sheets: pieces(45, 15) }],
  ['4x4 cork sheets for a 10x12 room', 'underlayment', { sheets: pieces(120, 16) }],
  ['cork adhesive for 150 sf', 'underlayment', { adhesive_l: [150 * FT2 * 0.5, 150 * FT2 * 0.9] }],
  ['how much glue for 300 sq ft of cork', 'underlayment', { adhesive_l: [300 * FT2 * 0.5, 300 * FT2 * 0.9] }],
  // 3 lines of 16 ft between rows of 4 ft and 16 ft of ends at each row: 48 + about 48 ft.
  ['how much seam tape for 4x4 cork in a 16x16', 'underlayment', { seam_tape_m: [90 * 0.3048, 125 * 0.3048] }],
  ['screws for 3x5 backer boards 9x10', 'underlayment', { fasteners: [6 * 54, 10 * 60] }],
  ['when can i tile over the cork', 'underlayment', { tile_after_h: [12, 72] }],
  ['mortar to fill the membrane 150 sf', 'underlayment', { fill_l: [150 * FT2 * 0.8, 150 * FT2 * 3] }],
  ['thinset under 1/2 cement board 5x8', 'underlayment', { area_m2: near(40 * FT2), mortar_bags: 1 }],
  ['how many 4x8 sheets for 12x16', 'underlayment', { sheets: 6 }],
  ['backer board 3x5 for a 9x11 bathroom floor', 'underlayment', { sheets: pieces(99, 15) }],
  ['roll of crack membrane 3ft x 100 ft for 250 sq ft', 'underlayment', { rolls: 1 }],
  ['cork roll 200 sf per roll for 650 sf', 'underlayment', { rolls: 4 }],
  ['how much cork underlay for 14x20', 'underlayment', { area_m2: near(280 * FT2), sheets: [10, 50] }],
  ['CBU how many sheets 3x5 120 sf', 'underlayment', { sheets: pieces(120, 15) }],
  ['foam underlayment 2x4 sheets 10x10', 'underlayment', { sheets: pieces(100, 8) }],
  ["4' x 50' cork rolls for 600 sf", 'underlayment', { rolls: pieces(600, 200) }],
  ['sheets of 1/2 backerboard 36x60 for 11x14 kitchen', 'underlayment', { sheets: pieces(154, 15) }],
  ['1200x600 foam boards for 15 m2', 'underlayment', { sheets: [21, 25] }],
  ['membrane rolls 1m x 30m, 45 m2', 'underlayment', { rolls: 2 }],
  ['uncoupling mat 12x15 room how many rolls', 'underlayment', { rolls: [1, 5] }],
  [`how many sheets of cement board for 5'6" x 8'`, 'underlayment', { sheets: pieces(44, 15) }],
  ['10x12 less 3x4, 3x5 cement board how many', 'underlayment', { area_m2: near(108 * FT2), sheets: pieces(108, 15) }],
  ['do i have enough cork, 240 sf, sheets are 2x4 ft', 'underlayment', { sheets: pieces(240, 8) }],
  ['cement board screws 3x5 for 10x12', 'underlayment', { fasteners: [8 * 50, 10 * 60] }],
  ['cork 250 sf', 'underlayment', { area_m2: near(250 * FT2) }],
  ['underlayment for 12x15', 'underlayment', { area_m2: near(180 * FT2) }],
  ['16x20 cork 4x4', 'underlayment', { sheets: pieces(320, 16) }],
  ['membrane 54sf/roll, 10x15', 'underlayment', { rolls: 4 }],
  [`1/4 cement board 3x5 sheets 8'x10' how many`, 'underlayment', { sheets: pieces(80, 15) }],
  ['how many 3 x 5 backer boards do i need for shower walls 96 sf', 'underlayment', { sheets: pieces(96, 15) }],
  ['tape for cement board joints 10x12', 'underlayment', { seam_tape_m: [8, 22] }],
  ['membrane comes in 323 sf rolls, floor is 700 sf', 'underlayment', { rolls: 3 }],
  ['cork shets 2x4 ft 160 sqft how many', 'underlayment', { sheets: pieces(160, 8) }],
  ['3.5m x 4.2m room, membrane 1m x 15m how many rolls', 'underlayment', { area_m2: near(14.7), rolls: [1, 2] }],
  ['two rooms 10x10 and 8x9, cork 2x4 sheets how many', 'underlayment', { area_m2: near(172 * FT2), sheets: [22, 27] }],
  ['foam underlay 1m x 10m rolls 35 m2', 'underlayment', { rolls: [4, 4] }],
  ['membrane for 300 sf, rolls are 323', 'underlayment', { rolls: [1, 2] }],
  ['cork 6mm 915x610 for 4m x 5m', 'underlayment', { sheets: [36, 42] }],
  ['are 12 sheets of 3x5 enough for 10x16', 'underlayment', { sheets: pieces(160, 15) }],
  ['4x8 1/4 inch plywood underlayment 12x14', 'underlayment', { sheets: pieces(168, 32) }],
  [
    '1/2 in cement board 3x5 for walls 120 sf less a 3x4 window',
    'underlayment',
    { area_m2: near(108 * FT2), sheets: pieces(108, 15) },
  ],
  // Walls 60 + 30 + 30 in by 5 ft.
  [
    'backerboard for tub surround 60x30 walls 5 ft high',
    'underlayment',
    { area_m2: near(50 * FT2), sheets: pieces(50, 15) },
  ],
  [
    'how much cork underlayment adhesive for 240 sf with a 1/16 trowel',
    'underlayment',
    { adhesive_l: [240 * FT2 * 0.5, 240 * FT2 * 0.9] },
  ],
  ['waterproof membrane rolls 108 sf each for 96 sf of shower walls', 'underlayment', { rolls: 1 }],
  ['cement board for 5x7 and 4x6 baths 3x5 sheets', 'underlayment', { sheets: [4, 6], area_m2: near(59 * FT2) }],
  ['uncoupling membrane 161 sf roll for 14x22', 'underlayment', { rolls: [2, 3] }],
  ['200 sq foot roll foam, 13x17', 'underlayment', { rolls: 2 }],
  ['how many 1200 x 800 boards for 20 m2', 'underlayment', { sheets: [21, 24] }],
  ['thinset for under membrane 168 sf', 'underlayment', { mortar_bags: [2, 5] }],
  ['feet of seam tape for 2x3 cork sheets 240 sf', 'underlayment', { seam_tape_m: [40, 65] }],
  ['cork rolls 3ft x 66ft 400 sf', 'underlayment', { rolls: 3 }],
  ['3x5 cement board, 10% waste, 200 sf', 'underlayment', { sheets: 15 }],
  ['rolls of 200 sf for 18x24', 'underlayment', { rolls: 3 }],
  ['rolls @ 54 sf, 3 baths 5x8', 'underlayment', { rolls: [3, 3] }],
  ['plywood 4x8 sheets for 16x20', 'underlayment', { sheets: 10 }],
  ['sheets 1.2 x 0.6 m for 18 m2', 'underlayment', { sheets: [25, 29] }],
  ['roll covers 150 sf, floor 12x30', 'underlayment', { rolls: 3 }],
  ['sheets of 3x5 for two 5x8 baths', 'underlayment', { area_m2: near(80 * FT2), sheets: pieces(80, 15) }],
  ['10 x 10 uncopling membrane how many rols 54sf', 'underlayment', { area_m2: near(100 * FT2), rolls: [2, 3] }],
  ['membrane 1x5 rolls, 20 square meters', 'underlayment', { rolls: [4, 5] }],
  ['do we need to wait for the cork glue to dry, how long', 'underlayment', { tile_after_h: [12, 72] }],
]

/** Asked without a floor. */
export const ABOUT: readonly Row[] = [
  ['how far apart do screws go in cement board', 'underlayment'],
  ['gap between cement boards', 'underlayment', { gap_mm: near(3.175) }],
  ['how thick should backer board be', 'underlayment'],
  ['do i tape cement board seams with mesh or paper', 'underlayment'],
  ['can i use clips on 12x12', 'levelling'],
  ['how many coats of waterproofing', 'shower'],
  ['how deep is the mud bed at the drain', 'shower', { slope_mm_per_m: near(20.833) }],
  ['what ratio for deck mud', 'shower'],
]

export const LEVELLING: readonly Row[] = [
  ['clips for 10x13 shop floor in 18x18', 'levelling', { clips: clips(130 / 2.25), wedges: [20, 400] }],
  ['lippage clips for 25 m2 of 600x600, how many', 'levelling', { clips: clips(25 / 0.36) }],
  ['10x13 less 3x4 island 18x18 leveling clips', 'levelling', { clips: clips(118 / 2.25), area_m2: near(118 * FT2) }],
  ['clips for 200 sf of 24x48', 'levelling', { clips: clips(25) }],
  ['how many clips per 24x24 tile', 'levelling', { clips: [2, 8] }],
  ['leveling clips 8x48 plank 180 sf', 'levelling', { clips: clips(180 / 2.667) }],
  ['clips and wedges for a 10x13 with 18x18', 'levelling', { clips: clips(58) }],
  ['lippage system for 30 m2 600x1200', 'levelling', { clips: clips(30 / 0.72) }],
  ['how many leveling clips for 120 tiles 24x24', 'levelling', { clips: clips(120) }],
  ['wedges for 10x13 18x18', 'levelling', { wedges: [50, 250] }],
  ['tile leveling spacers 15x20 room 12x24', 'levelling', { clips: clips(150) }],
  // 24 in edges, corners 2 in: 20 in between at 6 in is 4 gaps, 5 clips, both ways: 10 a tile.
  ['clips every 6 in 24x24 for 400 sf', 'levelling', { clips: [100 * 10, 100 * 11] }],
  [
    'how many wedges for 400 sf of 24x24 at 100 sf a day',
    'levelling',
    { area_m2: near(400 * FT2), wedges: [25 * 2, 25 * 8] },
  ],
  ['when do the clips come off', 'levelling', { grout_after_h: 24 }],
  // References 13.8: a 24 h wait at 50 F takes 41 to 47 h.
  ['when do the clips come off at 50F', 'levelling', { grout_after_h: [41, 48] }],
  ['tile clips 12x12 room 18x18', 'levelling', { clips: clips(64), area_m2: near(144 * FT2) }],
  ['wedges needed if I do 80 sf a day 24x24 500 sf', 'levelling', { area_m2: near(500 * FT2), wedges: [40, 160] }],
  ['levelling clips for a 4.5m x 6m floor with 800x800', 'levelling', { clips: clips(27 / 0.64) }],
  ['clip count 16x20 less 4x6 island 12x24', 'levelling', { clips: clips(148), area_m2: near(296 * FT2) }],
  ['how many bags of 250 clips for 500 sf 24x24', 'levelling', { clips: clips(125), clip_packs: [1, 4] }],
  ['do I need clips for 24x48', 'levelling', { clips: [2, 10] }],
  ['500 clips enough for 200 sf 12x24?', 'levelling', { clips: clips(100) }],
  ['can we pull the wedges tomorrow, its 70F', 'levelling', { grout_after_h: near(24) }],
]

const PAN = 15 * FT2
export const SHOWER: readonly Row[] = [
  // References 13.10: 2.17 ft³.
  ['36 x 60 shower pan mud, drain in the center', 'shower', { mud_l: near(2.17 * FT3_L, 0.01), area_m2: near(PAN) }],
  [
    'mud for a 36 x 60 shower pan, center drain, 1/4 per foot, 1-1/4 at the drain',
    'shower',
    { mud_l: near(2.17 * FT3_L, 0.01), slope_mm_per_m: near(20.833) },
  ],
  ['pan mud for 3x5 shower', 'shower', { mud_l: near(2.17 * FT3_L, 0.01) }],
  // 4 x 4 ft: rise sqrt(8)/4 in = 0.707 in; 16 x (1.25 + 0.4714)/12 ft³.
  [
    'how many bags of deck mud for a 4x4 shower',
    'shower',
    { mud_l: near(((16 * (1.25 + 0.4714)) / 12) * FT3_L, 0.01), mortar_bags: [4, 6] },
  ],
  // 1200 x 900, rise 0.02083 x 750 = 15.6: 1.08 x (31.75 + 10.4).
  ['pan 1.2 m x 0.9 m mud how much', 'shower', { mud_l: near(1.08 * (31.75 + 10.417), 0.01) }],
  // 4 x 6 ft, 2 %: run 1.0989 m, rise 21.98 mm: 2.2297 x (38.1 + 14.65).
  [
    'mud bed 4x6 shower 1.5 in thick at drain 2% slope',
    'shower',
    { mud_l: near(24 * FT2 * (38.1 + 14.65), 0.01), slope_mm_per_m: near(20) },
  ],
  // Falls the long way, 5 ft: rise 31.75 mm, half of it on the mean.
  ['linear drain shower 4x5 how much mud', 'shower', { mud_l: near(20 * FT2 * (31.75 + 15.875), 0.01) }],
  [
    'L shaped shower 5x6 less 2x3 pan mud',
    'shower',
    { area_m2: near(24 * FT2), mud_l: [24 * FT2 * 33, 24 * FT2 * 60] },
  ],
  ['3x5 shower pan with drain 12 in from the left wall, mud?', 'shower', { mud_l: [2.17 * FT3_L, 2.5 * FT3_L] }],
  ['what slope for a shower floor', 'shower', { slope_mm_per_m: near(20.833) }],
  ['does the liner need slope too', 'shower', { slope_mm_per_m: near(20.833) }],
  ['what pitch on a shower curb', 'shower', { slope_mm_per_m: near(20.833) }],
  ['rise over 30 in to the drain', 'shower', { slope_mm_per_m: near(20.833) }],
  ['flood test 4x5 shower how much water', 'shower', { fill_l: near(20 * FT2 * 50.8) }],
  ['how long is a flood test', 'shower'],
  ['weep holes what do i put around them', 'shower'],
  ['2 coats waterproofing on 120 sf', 'shower', { membrane_l: [120 * FT2 * 0.8, 120 * FT2 * 1.4] }],
  // Floor 15 sf, three walls: 3 + 5 + 3 ft x 8 ft.
  ['waterproofing for a 3x5 shower 8 ft walls', 'shower', { area_m2: near(103 * FT2) }],
  ['waterproofing for 3x5 shower with niche and curb', 'shower', { area_m2: [93 * FT2, 106 * FT2] }],
  ['gallons of liquid membrane for 90 sf shower walls', 'shower', { membrane_l: [90 * FT2 * 0.8, 90 * FT2 * 1.4] }],
]

export const ORDER: readonly Row[] = [
  // 9.5 tile + 6.35 cork + half of a 1/2 in notch at 45 to 90 degrees (4.5 to 6.35) + 0.6 to 0.8 under the cork.
  ['build up with 1/4 cork, 3/8 tile, 1/2 notch', 'order', { build_up_mm: [20.9, 23.1] }],
  ['18x18 porcelain 3/8, 1/4 cement board: how high does the floor come up', 'order', { build_up_mm: [22, 26] }],
  ['floor height with 1/2 plywood 1/4 cork 3/8 tile', 'order', { build_up_mm: [31, 36] }],
  ['what will 3/8 porcelain with 1/2 notch build up to', 'order', { build_up_mm: [14, 16] }],
  ['toilet flange is 1/4 above the old floor, new floor 3/8 tile 1/4 board', 'order', { build_up_mm: [19, 26] }],
  ['transition to 3/4 hardwood from 3/8 tile on 1/2 cement board', 'order', { build_up_mm: [26, 32] }],
  ['door gap 1/2, tile 3/8 on 1/4 cork, how much to cut off the door', 'order', { build_up_mm: [18, 23] }],
  [
    'will the dishwasher fit: 34 1/2 under the counter, dishwasher is 33 3/4, floor comes up 3/8 tile on 1/4 board',
    'order',
    { build_up_mm: [19, 26] },
  ],
  // 200 sf x 3/8 in x 2.35.
  ['how much does 200 sf of 18x18 porcelain weigh', 'order', { weight_kg: near(200 * FT2 * 9.525 * 2.35, 0.03) }],
  ['weight of 30 bags of thinset', 'order', { weight_kg: near(30 * 50 * LB) }],
  ['60 boxes at 45 lb, 1 ton payload, trips?', 'order', { weight_kg: near(2700 * LB), trips: 2 }],
  ['40 bags of 50 lb, payload 1500 lb, how many trips', 'order', { trips: 2, weight_kg: near(2000 * LB) }],
  ['how many trips for 300 sf 24x24 3/8 porcelain, payload 1200 lb', 'order', { trips: 2 }],
  ['trailer rated for 2000 lb, 80 bags thinset how many loads', 'order', { trips: 2, weight_kg: near(4000 * LB) }],
  ['tongue weight for 1500 lb on a trailer', 'order', { weight_kg: near(1500 * LB) }],
  ['can one guy lift an 80 lb bag', 'order', { weight_kg: near(80 * LB) }],
  // 3/8 in tile 22.4 kg/m², 6.35 mm board 7.6, beds 4 to 12: 0.34 to 0.5 kPa.
  ['psf of 3/8 tile on 1/4 cement board', 'order', { floor_load_kpa: [0.34, 0.52] }],
  ['dead load of tile on 1-1/4 mud bed', 'order', { floor_load_kpa: [0.85, 1.1] }],
  ['floor load of 12 mm porcelain on 6 mm cement board', 'order', { floor_load_kpa: [0.38, 0.6] }],
  ['10x13 shop floor 18x18 3/16 joint order list', 'order', { tile_count: [58, 75], mortar_bags: [3, 8] }],
  ['material list for 10x13 shop floor 18x18 3/16 joint with cork 2x4 sheets', 'order', { sheets: pieces(130, 8) }],
  ['what do i need to buy for 12x20 wash-up 8x48 plank 1/8 joint, everything', 'order', { tile_count: [90, 110] }],
  ['csv of the order for 10x13 18x18', 'order', { tile_count: [58, 75] }],
  ['168 sf at $4.50 a foot, cost?', 'order', { cost: [168 * 4.5, 168 * 4.5 * 1.15] }],
  [
    'tile is $3.29/sf, 10% waste, 240 sf, 7.5% tax what does it cost',
    'order',
    { cost: near(240 * 1.1 * 3.29 * 1.075, 0.001) },
  ],
  ['5 bags mortar at $31, cost', 'order', { cost: 155 }],
  ['10x13 18x18 at $62 a box, 8 per box, cost', 'order', { cost: [8 * 62, 10 * 62] }],
  ['missing for 10x13 18x18? have 9 boxes tile, 5 bags mortar', 'order', { bags_to_buy: 0 }],
  ['whats missing for 10x13 18x18 3/16: have 2 bags mortar, 1 bag grout', 'order', { bags_to_buy: [1, 6] }],
  // 56 bags on a pallet (48 to 64, common practice).
  ['how much does a pallet of thinset weigh', 'order', { weight_kg: [48 * 50 * LB, 64 * 50 * LB] }],
  ['weight of 24x24x3/8 porcelain tile each', 'order', { weight_kg: near(0.6096 ** 2 * 9.525 * 2.35, 0.03) }],
  [
    'truck payload 1400, 20 bags 50lb and 30 boxes 40lb, ok in one trip?',
    'order',
    { weight_kg: near(2200 * LB), trips: 2 },
  ],
  ['can my half ton carry 60 bags of thinset, 1500 lb payload', 'order', { weight_kg: near(3000 * LB), trips: 2 }],
  ['how many bags can i carry with 1200 lb payload', 'order', { bags_a_load: 24 }],
  ['what threshold height is ok for wheelchair', 'order'],
  ['how much to cut off the door, floor comes up 3/4 in and door gap is 3/8', 'order', { build_up_mm: near(19.05) }],
  ['how heavy is a floor 10x13 of 18x18 on 1/4 backer', 'order', { weight_kg: [130 * FT2 * 35, 130 * FT2 * 55] }],
  ['cost of 12 sheets of backer at $14', 'order', { cost: 168 }],
  ['total with 8.25% tax: 10 bags thinset at $32.50', 'order', { cost: near(325 * 1.0825, 0.0001) }],
  ['how much is 250 sf of tile at 2.79 a foot', 'order', { cost: [250 * 2.79, 250 * 2.79 * 1.15] }],
  ['tile $41 a box covers 15.5 sf, 168 sf', 'order', { cost: [11 * 41, 13 * 41] }],
  ['split the 20x30 into days, 18x18, 130 sf a day', 'order', { days: [5, 6] }],
  ['schedule for 20x30 with 18x18, 120 sf a day, door on the north wall', 'order', { days: [5, 7] }],
  ['how many days to set 600 sf of 12x24', 'order', { days: [3, 9] }],
]

/** Strips of the run by the tile's length and joint, two a tile, and a spare or two. */
export const TRIM: readonly Row[] = [
  ['46 lf of base 4 in from 18x18 tile', 'order', { tile_count: [16, 18], perimeter_m: near(46 * 0.3048) }],
  ['how many 18x18 for 4 in base around a 10x13', 'order', { tile_count: [16, 18] }],
  ['bullnose 3x12 for 30 ft how many', 'order', { tile_count: [30, 33] }],
  ['edge profile for 3/8 tile, 24 ft', 'order', { profiles: 3, tile_thickness_mm: near(9.525) }],
  ['metal edge 40 lf 1/2 in tile how many lengths', 'order', { profiles: 5, tile_thickness_mm: near(12.7) }],
  // 2 across each tread and riser of 18 in tile: 24 on the treads, 12 on the risers (two strips a tile), a tenth over.
  ['treads and risers for 12 steps 36 wide 18x18 tile', 'order', { tile_count: [36, 41] }],
  [
    '8 steps 40 in wide 11 deep 7 high, 12x24 tile how many',
    'order',
    { tile_count: [24, 36], area_m2: near((8 * 40 * 18 * 25.4 ** 2) / 1e6) },
  ],
  ['base for the bakery 20x30 with 12x24', 'order', { perimeter_m: near(100 * 0.3048), tile_count: [25, 28] }],
]

export const ALL: readonly Row[] = [...UNDERLAYMENT, ...LEVELLING, ...SHOWER, ...ORDER, ...TRIM, ...ABOUT]
