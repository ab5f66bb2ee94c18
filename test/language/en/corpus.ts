/** What crews type, grouped by what it means: one meaning, many ways to say it. Figures in the units of the message, worked out by
 *  hand; the runner turns them into SI. No two lines differ only in their numbers. */

export type Meaning = {
  readonly topic?: string
  /** Area in square feet or square metres, outer walls in feet. */
  readonly sf?: number
  readonly m2?: number
  readonly perimeterFt?: number
  /** Tile sides in inches, or in mm. */
  readonly tileIn?: readonly [number, number]
  readonly tileMm?: readonly [number, number]
  readonly thickIn?: number
  readonly jointIn?: number
  readonly jointMm?: number
  readonly sparePct?: number
  readonly values?: Readonly<Record<string, number | readonly [low: number, high: number]>>
}

export const CORPUS: readonly (readonly [means: Meaning, ...said: string[]])[] = [
  [
    { topic: 'tile', sf: 168, tileIn: [12, 24], values: { tile_count: [84, 101] } },
    '12x14 room 12x24 tile how many',
    "room is 12' x 14' how many 12x24",
    '12ft by 14 ft kitchen with 12x24s',
    '144" x 168" floor 12x24 how many',
    'twelve by fourteen kitchen, twelve by twenty four tile, how many',
    'floor measures 12’ × 14’ , 12”x24” tile',
    'hey boss, so the client has a 12x14 kitchen and picked a 12x24, how many we need thx',
    'tile=12x24 room=12x14',
    '12x14....12x24.....how many',
    'room 14 by 12 ft how many 12 by 24 in tiles',
    '12 ft x 168 in 12x24',
    'need 12x24 tile for a twelve foot by fourteen foot space',
    'how many 12x24 tiles do I need for a 12 x 14 room',
    'kitchn 12x14 12x24 tlie how mny',
    'its 12ft one way 14ft the other, 12x24 tile how many',
    'room 12 wide 14 long, 12x24',
    'length 14 width 12 tile 12x24',
    "room's 12' strong by 14' 12x24",
    '🙂 12x14 12x24 how many',
  ],
  [
    { topic: 'tile', sf: 130, tileIn: [18, 18], jointIn: 3 / 16 },
    '10x13 shop floor, 18x18 tile, 3/16 joint',
    '18x18 with a 3/16 gap on the 10x13 shop floor',
    "shop floor 10' by 13', tile 18x18, three sixteenths joint",
    'joint 3/16 tile 18x18 room 10x13 how many',
    '10x13 wash-up 18x18 3/16 spacers what do I load?',
  ],
  [
    { topic: 'tile', sf: 137.5, tileIn: [18, 18] },
    "12'6\" x 11' mudroom 18x18",
    '12-6 x 11-0 with 18x18 how many',
    '12 ft 6 in by 11 ft 18x18 tile',
    '12.5 ft x 11 ft 18x18 pieces',
    '12½ x 11 room 18x18',
    "12'6 x 11' mudroom 18 inch tile",
    'twelve and a half feet by eleven feet, 18x18',
    '12 foot 6 by 11 foot, 18" tile how many',
  ],
  [
    { topic: 'tile', sf: 11.5 * (9 + 4 / 12), tileIn: [12, 12] },
    '11\'6" x 9\'4" bath floor, 12x12 tiles, how many?',
    '11-6 x 9-4 with 12x12',
    '11 1/2 x 9 1/3 ft, tile 12x12 how many pieces',
    '11ft 6in x 9ft 4in 12x12',
  ],
  [
    { topic: 'tile', m2: 14.7, tileMm: [600, 600] },
    '3.5m x 4.2m floor 600x600',
    '350 x 420 cm with 60x60 cm tiles',
    '3500mm by 4200mm 600x600',
    '4m20 x 3m50 60x60',
    '4.2 meters by 3.5 meters, 60x60 cm tile how many',
    '3.5 m by 4.2 m room, 600 x 600 mm porcelain',
  ],
  [
    { topic: 'tile', sf: 120, tileIn: [12, 24], values: { tile_count: [60, 75] } },
    '120 sf 12x24 how many',
    'how many 12x24 for 120sf',
    'about 120 sqr ft of 12x24',
    '120 square feet of 12x24 how many pieces',
    '120 sq. ft. 12x24',
    'HOW MANY 12X24 FOR 120SF???',
    '120 square foot 12 x 24 tile needed',
    '75 sf plus 45 sf 12x24',
    'kitchen 75 sf and bath 45 sf 12x24 total tile',
    'half of 240 sf 12x24',
  ],
  [
    { topic: 'tile', m2: 22, tileMm: [300, 600] },
    '22 m2 of 300x600',
    '22 m² 30x60 cm how many',
    '22 sqm 300 x 600',
    '22 square meters of 30x60cm tile',
  ],
  [
    { topic: 'tile', sf: 1200, tileIn: [24, 24] },
    '1,200 sf of 24x24',
    '24x24 for twelve hundred square feet'.replace('twelve hundred', '1200'),
    '1,200 sq ft 24 by 24 porcelain how many',
  ],
  [
    { topic: 'tile', sf: 40, tileIn: [3, 6] },
    '3x6 subway 40 sf backsplash how many',
    'backsplash 40 square feet of 3x6 subway',
  ],
  [
    { topic: 'tile', sf: 15, tileIn: [3, 6] },
    'backsplash 10 ft x 18 in, 3x6 subway, how many',
    'backsplash 18 inches high 10 feet long 3x6 subway how many',
    'splash 10\' x 18" in 3x6',
  ],
  [
    { topic: 'tile', sf: 80, tileIn: [12, 12] },
    'two baths 5x8 with 12x12',
    '2 bathrooms 5x8 each 12x12 how many total',
    '5x8 bath and 5x8 bath, 12x12',
    '5x8 x 2 rooms 12x12 how many',
  ],
  [
    { topic: 'tile', sf: 240, tileIn: [12, 24] },
    'kitchen 12 x 14 and hall 4 x 18, 12x24 tile',
    '12x14 (kitchen) + 4x18 (hall) 12x24',
    "hall 4' x 18' and kitchen 12' x 14', 12x24 how many pieces total",
  ],
  [
    { topic: 'tile', sf: 153, tileIn: [12, 24] },
    '12x14 less a 3x5 closet, 12x24, what do I load?',
    '12x14 minus 3x5 island 12x24',
    '12x14 without the 3x5 cabinets 12x24 how many',
    '12x14 - 3x5 12x24 tile',
    'kitchen 12x14 not counting a 3x5 hearth, 12x24',
    '12x14 except a 3x5 corner, 12x24 tile',
  ],
  [
    { topic: 'tile', sf: 144, tileIn: [18, 18] },
    'L 12x14 less 4x6, 18x18',
    'L shaped room 12x14 with a 4x6 bite out of the corner, 18x18 how many',
    'corners 0,0 12,0 12,8 8,8 8,14 0,14 18x18 tile how many',
    'walls: 12 right, 8 up, 4 left, 6 up, 8 left, 14 down 18x18 tile',
  ],
  [{ topic: 'layout', sf: 135 }, '12x10 + 4x6 - 3x3 how many sq ft', '12x10 plus 4x6 less a 3x3 area?'],
  [
    { topic: 'layout', sf: 168, perimeterFt: 52 },
    'whats the perimeter on a 12x14',
    "what's the area of 12x14",
    '12x14',
    'how many square feet is 12x14',
    'how many sf in a 12 by 14 room',
    '12x14 perimeter?',
    "sq ft of 12' x 14'",
  ],
  [{ topic: 'layout', sf: 263 }, 'two rooms 10x12 and 11x13 total sf', '10x12 and 11x13 rooms total square feet'],
  [{ topic: 'layout', sf: 252 }, 'U shape 20x15 less 8x6 how many square feet', '20x15 less 8x6 area'],
  [
    { topic: 'tile', sf: 180, tileIn: [24, 24], thickIn: 3 / 8 },
    '24x24x3/8 tile 180sf how many',
    '180 sf of 24x24 3/8 thick',
    '24 x 24, 3/8 inch thick, 180 square feet',
  ],
  [
    { topic: 'tile', sf: 168, tileIn: [12, 24], values: { tile_boxes: 12 } },
    '12x24, 8 per box, 168 sf, boxes?',
    '168 sf 12x24 boxes of 8',
    '12x24 8 a box 168 sf how many boxes',
    'box has 8, 12x24, need 168 sf',
  ],
  [
    { topic: 'tile', sf: 168, tileIn: [12, 24], values: { tile_boxes: [11, 13] } },
    '12x24 at 15.5 sf per box, 168 sf, how many boxes',
    '12x24 tile box covers 15.5 sf, need 168 sf, how many boxes',
  ],
  [
    { topic: 'tile', sf: 168, tileIn: [12, 24], sparePct: 15 },
    'how many 12x24 for 168 sf with 15% waste',
    '168 sf 12x24 15 percent extra',
    '12x24 168 sf plus 15% overage',
  ],
  [
    { topic: 'tile', sf: 168, tileIn: [12, 24], sparePct: 0 },
    '168 sf 12x24 no waste how many',
    '12x24 for 168 sf zero extra',
  ],
  [
    { topic: 'tile', sf: 200, tileIn: [12, 12] },
    '12 inch tile 200 sf how many',
    '200 sf of 12" tile',
    '12in tiles for 200 square feet',
  ],
  [{ topic: 'tile', sf: 150, tileIn: [8, 48] }, '8x48 plank 150 sf how many', '150 sq ft of wood look plank 8x48'],
  [
    { topic: 'tile', sf: 100, tileIn: [12, 24], sparePct: 15 },
    '12x24 on the diagonal 100 sf how many',
    '12x24 herringbone 100 sf how many',
    '100 sf 12x24 on a 45',
  ],
  [
    { topic: 'tile', sf: 168, tileIn: [12, 24], values: { spare_pct: 10 } },
    '12x24 1/3 offset 168 sf',
    '168 sf of 12x24 running bond',
    '12x24 half offset 168 sf how many',
  ],

  [
    { topic: 'grout', sf: 120, tileIn: [12, 24], jointIn: 1 / 8, values: { grout_kg: [1.4, 4.6] } },
    'grout for 120 sf of 12x24 1/8',
    '12x24 with 1/8 joint 120 sf how much grout',
    'need to no how much grot for 120sf 12x24 1/8 jnt',
    'eighth inch joints 12x24 120sf grout',
    '120 square feet of 12x24, 1/8 gap, lbs of grout?',
    'how much sanded grout 12x24 120 sf 1/8 inch spacers',
  ],
  [
    { topic: 'grout', sf: 100, tileIn: [12, 24], jointIn: 1 / 16 },
    '1/16 grout lines 12x24 rectified 100 sf grout',
    'sixteenth inch joint 12x24 100 sf how much grout',
  ],
  [
    { topic: 'grout', m2: 15, tileMm: [300, 600], jointMm: 3 },
    'grout joints are 3mm, 300x600 tile 15 m2, how much grout',
    '15 m2 300x600 3 mm spacers grout',
    'grout for 15 sqm of 30x60 cm, 3mm joint',
  ],
  [
    { topic: 'grout', sf: 130, tileIn: [16, 16], jointIn: 3 / 8, thickIn: 1 / 2 },
    'half inch thick slate 16x16 3/8 joint 130 sf how much grout',
    '16x16 slate 1/2 thick, 3/8 gap, 130 sf, grout?',
  ],
  [
    { topic: 'grout', sf: 12, tileIn: [2, 2], thickIn: 1 / 4, jointIn: 1 / 8 },
    '2x2 mosaic shower pan 12 sf 1/8 joint 1/4 thick how much grout',
  ],
  [{ topic: 'grout', jointIn: 3 / 16 }, 'sanded or unsanded for 3/16 joint', 'what grout for a 3/16 joint'],
  [
    { topic: 'grout', sf: 80, tileIn: [6, 6], jointIn: 1 / 4 },
    'epoxy grout for 80 sf 6x6 1/4 joint',
    'how many kits of epoxy, 80 sf of 6x6, quarter inch joint',
  ],
  [
    { topic: 'grout', sf: 120, values: { area_m2: 120 * 0.09290304 } },
    'grout for 10x12 bath with 12x24 1/8 joint',
    'how much grout 10x12 room 12x24 tile 1/8',
  ],

  [
    { topic: 'mortar', sf: 168, values: { mortar_bags: [3, 8], notch_width_mm: 12.7 } },
    '1/2x1/2 notch 168sf bags?',
    'thinset for 12x14 room 1/2 notch',
    'half inch notch thin set 12 x 14 how many 50 pound bags',
    'bags of mortar 12x14 room 1/2 trowel',
    'yo what up, need thinst for 168 sf, half inch notch',
  ],
  [
    { topic: 'mortar', sf: 180, values: { mortar_bags: [2, 5], notch_width_mm: 6.35, notch_depth_mm: 9.525 } },
    '1/4 x 3/8 sq notch, 180 sf, thinset bags?',
    '180 sf quarter by three eighths notch how many bags of mud',
    'how much thinset 180 sf w/ 1/4x3/8 trowel',
  ],
  [
    { topic: 'mortar', m2: 22, values: { mortar_bags: [3, 9] } },
    '20kg bags for 22 m2 with 10mm notch',
    'how many 20 kg bags of adhesive for 22 m2 10 mm trowel',
  ],
  [
    { topic: 'mortar', values: { mortar_coverage_m2_per_bag: [1.78, 5.95] } },
    'whats a bag cover w 1/2 trowel if i backbutter',
    'what does a bag cover with 1/2x1/2 notch',
    'how far does a 50 lb bag go with a 1/2 notch back buttered',
    'coverage of 50lb thinset 1/2 notch',
  ],
  [
    { topic: 'mortar', sf: 60, values: { bags_to_finish: [1, 2.4] } },
    '2 bags left 60 sf to go enough?',
    'got 2 bags on hand and 60 square feet left to set, will it do',
    'have 2 bags need to do the last 60 sf am i good',
  ],
  [
    { topic: 'mortar', sf: 160, values: { bags_to_finish: [3.6, 3.8], mortar_coverage_m2_per_bag: [4, 4.05] } },
    'used 3 bags on 130 sf, 160 to go',
    '3 bags did 130 sf, got 160 sf more to go',
    'we went through 3 bags on 130 square feet, 160 sf left how many bags',
  ],
  [
    { topic: 'mortar', sf: 120, values: { bags_to_finish: [3.8, 3.9] } },
    'getting 31 sf a bag, 120 left, how many bags'.replace('120 left', '120 sf left'),
    '31 square feet per bag, 120 sf to go, bags?',
  ],
  [
    { topic: 'mortar', sf: 200, values: { mortar_bags: [5, 8] } },
    'will 5 bags do 200 sf with 1/2 notch',
    'is 5 bags enuf for 200 square feet half inch trowel',
  ],
  [
    { topic: 'mortar', sf: 130, tileIn: undefined },
    'bags of thinset to tile 10x13 with 18x18',
    'morter for a 10x13 shop floor 18x18 tile',
  ],

  [
    { topic: 'mix', values: { mix_powder_kg: 22.6796, mix_water_l: [4.1, 7.7] } },
    'quarts of water per 50# thinset?',
    'how much water for a 50 lb bag of thinset',
    'mix ratio for 50lb thinset',
    'water for one 50 pound bag of mortar',
  ],
  [
    { topic: 'mix', values: { mix_powder_kg: 11.34, mix_water_l: [2, 3.9] } },
    'water for half a bag of thinset',
    'how much water half bag mortar',
    'water in 25 lb of thinset powder',
  ],
  [
    { topic: 'mix', values: { mix_powder_kg: 4.536, mix_water_l: [0.8, 1.95] } },
    '10 lb unsanded grout how much water',
    'how many quarts of water for 10 pounds of unsanded',
  ],
  [
    { topic: 'mix', values: { slake_min: [5, 15] } },
    'how long to slake thinset',
    'slake time?',
    'how long does the mud slake',
  ],
  [
    { topic: 'mix', values: { pot_life_min: [30, 120] } },
    'pot life at 90F',
    'how long is a bucket of thinset good for at 90',
    'thinset pot life when its 90 degrees',
  ],

  [
    { topic: 'cure', values: { grout_after_h: [33, 37] } },
    'set at 2pm, 58F, when can we grout',
    'tile went down at 2 this afternoon, 58 degrees, when can i grout',
    'how long before grouting at 58 degrees',
    'laid it at 2pm its 58F in here when can we grout',
  ],
  [
    { topic: 'cure', values: { grout_after_h: [23, 25] } },
    'set at 3 pm tday 70f wen can we grout',
    'can we grout tonight, set at 8am 75F',
    'its 90F out how long before grout',
    'set 7:30 this morning, 21C, grout?',
  ],
  [
    { topic: 'cure', values: { walk_after_h: [12, 30] } },
    'grouted at noon when can i walk on it',
    'how long does grout take to dry before walking',
    'finished grouting 2pm when can people walk on it',
  ],
  [
    { topic: 'cure', values: { heavy_after_h: [100, 200] } },
    'how long till the oven can go back on, tile set today 3pm',
    'when can we put the fridge back, set monday 8am 70F',
  ],
  [
    { topic: 'cure', values: { water_after_h: [24, 700] } },
    'grouted the shower at 11am when can they use it',
    'when can the shower get wet grouted 9am 70F',
  ],
  [
    { topic: 'cure', values: { grout_after_h: [34, 50] } },
    'set at 3pm high 70 low 45 when can we grout',
    'set at noon, 65 day 45 night',
    'tile set yesterday 3pm slab 52F night low 48',
  ],

  [
    { topic: 'convert', values: { value: 236.806 } },
    '22 m2 to sq ft',
    'what is 22 sqm in square feet',
    'how many sq ft in 22 m2',
  ],
  [{ topic: 'convert', values: { value: 10.7156 } }, '27/64 in mm', '27/64 to mm', '27/64 inch in millimeters'],
  [{ topic: 'convert', values: { value: 190.5 } }, "12'6 + 3'4 1/2", '12\'6" plus 3\'4 1/2"'],
  [{ topic: 'convert', values: { value: 16.6667 } }, '62F in celsius', '62 degrees fahrenheit to c'],
  [
    { topic: 'convert', values: { value: 5.678 } },
    'how many liters is 6 quarts',
    '6 qt in liters',
    'convert 6 quarts to litres',
  ],
  [{ topic: 'convert', values: { value: 22.68 } }, '50 lb in kg', 'what is 50 pounds in kilos'],
  [{ topic: 'grout' }, 'do i use sanded in a 3/16 inch joint'],
  [{ topic: 'mortar', sf: 130, values: { notch_width_mm: 9.525 } }, 'thin set bags 18x18 10x13 3/8 notch 25kg bags'],
  [{ topic: 'mix', values: { mix_powder_kg: 7.56 } }, 'water for a third of a 50 lb bag of mortar'],
  [{ topic: 'tile', sf: 132, tileIn: [18, 18] }, 'two closets 3x4 and a 9x12, 18x18 tile'],
  // Seven in the evening: at half past four the next day it is not a full day yet.
  [{ topic: 'cure', values: { grout_after_h: [23, 25] } }, 'tile went down last night at 7, 70F, can we grout'],
  [{ topic: 'help' }, 'help', 'what can you do', 'thanks', 'hello'],
]

/** Chat that asks nothing of tile: never answered with numbers. */
export const NOT_ASKED = ["what's the capital of france", 'lol ok', 'who won last night', '???', 'see you monday']
