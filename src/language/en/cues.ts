/** English words that point to a rule, to its conditions, to trouble, and to what kind of answer is wanted.
 *  How a cue is written: language/cues.ts. The names are the subjects of config/rules.json. */
import type { CueTable } from '../cues.ts'

export const subjects: CueTable = {
  'seal-grout': [
    'seal|sealer|sealing|sealed + grout + need|have to|should|when|do i|must|required|epoxy|how soon|skip|ok + !caulk|joint sealant',
  ],
  waterproof: [
    '^waterproof|waterproofing + grout$|cement board|need|is$|tile|do i|shower|skip|have to|without|backer|behind + !how many|how much|coats|bags|gallons|how soon|how long|after',
    '^without|skip|no + waterproofing|waterproof membrane',
  ],
  'shower-board': [
    '^drywall|greenboard|green board|sheetrock|gypsum board|regular board|plywood + shower|tub|steam|wet + !pan$|pans|how many|screws|prime',
  ],
  'over-concrete': [
    'directly|direct|straight|right + on concrete|to concrete|over concrete|on the slab|on a slab|over a slab|to the slab|on slab|onto concrete + !paint|sealed|crack|wet|flat|out|moisture',
  ],
  lead: [
    'lead + paint|test|glaze|glazed|old tile|old|safe|dust|tile|sand + !lead time|lead man|lead guy|lead setter|leading',
  ],
  'epoxy-skin': [
    '^epoxy|hardener + toxic|skin|gloves|allergic|allergy|rash|dangerous|safe|fumes|smell|bad for|hands|breathe',
  ],
  acid: [
    'acid|muriatic|vinegar|sulfamic + haze|clean|grout|use|remove|thinset off|efflorescence|tile + !bleach|ammonia|mix',
  ],
  contact: [
    'cover|covered + thinset|mud|mortar|adhesive + how much|percent|%|has to|of the tile|back + !how many|bag|sf',
    'coverage + !bag|sack|per bag|sf|sq ft|square feet|bucket|pail|how many|sealer|box',
    'coverage + need|require|minimum|min$|enough|least|should',
    'contact + !contact number',
    'contact + mortar|mud|thinset|thin set|adhesive|tile|how much|required|minimum|percent|%',
    'percent|%|pct + ok|okay|enough|good|fine|pass|alright|legal|acceptable|allowed|cut it|fly|do|suffic|need|too low|code|spec + shower|wet|bed|floor|wall|patio|outside|exterior|pool|tub|dry|hall|entry|kitchen|stone|marble|coverage|contact|mud|thinset|mortar|porch|balcony|deck|living|panel + !rh$|humidity|offset|stagger|overlap|waste|spare|extra|overage|slope|grade|moisture|slab',
    'mud|thinset|thin set|mortar|adhesive|glue + percent|%|pct|how much + behind|under|on the back|back of|transfer + !bag|thick|gallon',
    'full coverage|fully bedded|solid bed|full bed|bedded',
    'how well|how full + bed|back + tile',
    '% + in a|in the|on a|on the|for a|for the + shower|steam|pool|tub|patio|balcony',
  ],
  'contact-check': [
    'how many + tile + pull|lift|check|pop|pry',
    'lift|pull|pop|pry + tile + check|coverage|contact|often|how many',
    'check|test|verify + coverage|contact|mud|bond + how|often|many|when',
    'one tile|single tile|1 tile + enough|check|pull|lift',
  ],
  voids: [
    'void|hollow|air pocket|bare spot|empty spot + corner|edge|size|big|large|how|inch|ok|allowed|square|coverage',
    'corner|edge + void|hollow|unsupported|not backed|no mud|bare|no thinset|empty',
  ],
  'spot-bonding': [
    'spot bond|spot set|five spot|5 spot|dab|dot and dab|dots|blobs|globs|balls of|donut|five dot|5 dot',
    'spot|spots|spotting + thinset|mortar|mud|adhesive|tile|wall + bond|set|five|5$|stick',
  ],
  'back-butter': [
    'back butter|backbutter|butter the back|buttering|burn the back|skim the back|back buttering|skim coat the back',
    'butter + tile|back',
  ],
  ridges: [
    'swirl|ridge direction|ridges',
    'ridge|comb|trowel line|lines|notch + direction|which way|straight|parallel|collapse|one way|swirl',
    'trowel + swirl|circle|direction|which way|pattern',
  ],
  bed: [
    '1/16|1/8|3/32|1/4|3/8|1/2|mm|3/16|5/16|2mm|3mm|5mm|6mm + bed$|beds$ + !how many|bags',
    '1/16|1/8|3/32|1/4|3/8|1/2|mm|inch|sixteenth|eighth + of thinset|of mortar|of mud|mortar bed|thinset bed|of bed|under the tile|under tile + mortar|thinset|mud|bed$|mortar bed + !how many|bags|how high|at the door|plus thinset|plus mortar',
    'thick|thickness|deep|build up|buildup|how thin|thin$ + thinset|thin set|mortar|mud|lft|lht|medium bed|large format|large and heavy|bed + !tile thick|grout|pan$|pans|cement board|how many|bags',
    'thick|build up|go + thinset|mortar|thin set + max|maximum|limit|too|can|how + !how high|at the door|plus thinset|plus mortar',
    'minimum|least|min$|max$|maximum + bed|mortar|thinset|mud + thick|thickness|under|bed',
    'bed|thinset|mortar + too thin|too thick',
  ],
  'notch-size': [
    'can i use|can you use|can we use|will a|will the|use a|use my + notch|trowel + !bag|bags|left|sf|how many|how much|membrane|thinset for',
    'what|which|right|correct|size + trowel|notch + !bag|cover|sf|how many|coverage|membrane|underlayment|cork',
    'trowel|notch + big enough|too small|enough|right|good for|ok for|ok on + !bags|left',
  ],
  flatness: [
    'flat$|flatness|flatter|out of flat|unflat|flat enough + !grout|flat trowel|flat rate|flatbed|ff$|level or flat',
    'how flat|flat enough|flatness',
    "out|off|dip|hump|belly|crown|low spot|high spot|bow|gap|variation|wave|wavy|hollow|sag|swale|ridge|bump|differ|deviation|drops|dips|hump + in 10|over 10|10ft|10 ft|10 foot|10feet|ten feet|ten foot|10'|in 2|2 ft|2ft|2 foot|in 3 m|3 m$|2 m$|2m$|3m$|under a|straightedge|straight edge|screed|in 8|in 6|8 ft|6 ft|4 ft|8 foot|6 foot|4 foot",
    'straightedge|straight edge|10 foot level|6 foot level',
    'dip|hump|low spot|high spot|belly|crown + floor|slab|subfloor|wall|tile|ok',
    'floor|slab|subfloor|substrate|wall|concrete + tolerance|out by|variation|wavy|uneven|out of plane|plane',
    "1/8|1/4|3/16|1/16|3/8|5/16 + in 10|over 10|in 2 ft|over 2 ft|in ten|over ten|in 10'",
  ],
  'flat-level': [
    'level + flat|have to be|has to be|need|must|out of level|does it|perfectly|dead + floor|tile|slab|have|it + !leveler|leveller|leveling|compound|self',
    'out of level|not level|unlevel|off level',
  ],
  'panel-edges': [
    'seam|joint|edge|sheet|panel|plywood|ply$|osb + proud|higher|step|lip|differ|offset|uneven|ledge + subfloor|plywood|ply$|osb|board|backer|sheet|panel',
  ],
  'slab-ff': [
    '^slab|concrete|floor|flat + ff 2|ff 3|ff 5|ff 4|ff2|ff3|ff4|ff5|ff/fl|f number|floor number',
    'ff$|f number|floor number|ff20|ff25|ff30|ff35|ff50|fl$|ff/fl|floor flatness number',
  ],
  'fill-with-mortar': [
    'thinset|mortar|mud|lft|thin set|back butter|backbutter + level|flatten|fill low|fill a low|fill the low|fill a dip|fill dip|fill the dip|fill in|build up|low spot|dip|float out|make up|fix the floor + !self level|leveler|leveller|leveling|underlayment',
  ],
  'least-joint': [
    'joint|grout line + calibrated + !sf|sq ft|how many|bags',
    'right joint|best joint|size joint|joint size|what joint|which joint + for|herringbone|tile|on|with + !movement|expansion|wall',
    'rectified|stacked|stack bond + 1/16|1/8|3/16|1/32|3/32|2mm|3mm|1.5mm|mm|sixteenth|eighth + ok|enough|fine|good|tight|can|allowed|small + !lippage|flat|out|dip|wall gap|offset|notch|trowel',
    'minimum|least|smallest|min$ + wall joint|floor joint|joint',
    'small|smallest|tight|tightest|minimum|min$|least|narrow|narrowest|skinny|thin$|how wide|what size|how big|size + joint|grout line|grout gap|gap between|spacing between|spacer + !movement|expansion|control|wall|perimeter|max|widest|caulk|sealant|tube',
    'joint|grout line|grout joint|spacer + !brick joint|running joint|cleaning + ok|fine|enough|too small|too tight|too narrow|too thin|minimum|allowed|work|good|legal|need|required|can i|can we|should + !sanded|unsanded|lippage|expansion|movement|control|bag|cold|crack|perimeter',
    '1/16|1/8|3/16|1/32|3/32|1.5 mm|2 mm|2mm|3mm|3 mm|1.5mm|sixteenth|eighth + joint|grout line|spacer|gap + ok|fine|enough|too|allowed|can|rectified|on|work|good|legal|with + !lippage|sanded|unsanded|wall|perimeter|movement|expansion|floor vary|how much|bag',
    'vary|varies|variation|size off|different size|sizes off|caliper|calipers|mic + tile|joint|grout',
    'rectified + joint|grout line|tight|gap + !lippage',
  ],
  'butt-joint': [
    '^butt$|butted|butting|no grout line|no grout joint|groutless|zero joint|no joint|no spacing|zero grout + tile|rectified|them|together|can|ok|plank|joint|grout',

    'butt$|butted|butting|no grout line|no grout joint|groutless|zero joint|no joint|without grout|no gap between|tight together|no spacer|credit card|touching|touch + tile|joint|grout|them|rectified|together|up + !mastic|wall',
  ],
  'widest-joint': [
    'wide|widest|biggest|max$|maximum|large|largest|big + joint|grout line|grout joint|gap between + !movement|expansion|wall|perimeter|small|minimum|min$|need|caulk|control|offset|stagger|lippage',
  ],
  lippage: [
    '^lippage|lip$|lipping',
    '^one tile|tile edge|tile edges|edges|edge|next tile + above|higher|different in height|height difference|different height|taller|lower + next|height|other|than|neighbor|adjacent',
    'lippage|lip$|lipping|lips|trip edge',
    'edge|edges|one tile|tile + higher|sticks up|proud|sit up|sits up|raised + than|next|other|neighbour|neighbor|1/32|1/16|mm|how much',
  ],
  offset: [
    'offset|stagger|brick|running bond|half bond|third bond|1/3 bond|50/50|overlap + !hole|toilet|drain|flange|grout brand|saw|wall is brick|brick wall',
    'half|50$|third|1/2$|33$|1/3$|quarter + offset|stagger|bond|lap|brick|overlap|pattern',
    'half|50 %|50 percent|50/50 + plank|8x48|6x36|12x24|6x24|9x48|wood look|8x36|6x48',
    'h joint|step pattern|stair step',
  ],
  'perimeter-gap': [
    '^how close|how near|how tight + wall|walls|cabinet|tub',
    '^perimeter + joint|gap',
    '^gap|joint|space|spacing|room + at the wall|at walls|at the walls|along the wall|along walls|around the room|against the wall|to the wall|and the wall|at the perimeter|around perimeter|at the base|between tile and wall|and wall|at cabinets|and cabinet|and the cabinet|at the tub|and the tub|around the post + !corner|inside corner|flatness',
    'gap at the wall|wall gap|perimeter gap|perimeter joint|gap around|gap along the wall|edge gap|expansion gap',
    'gap|space|room|clearance|expansion|joint + wall|perimeter|edge of the room|around the edge|edges of the room|cabinet|baseboard|post|column|tub + how|need|leave|much|big|tight|can|ok|do i|should|wide|require|minimum|up to|against|have to',
    'perimeter + gap|joint|expansion|space|tight|grout|how|leave',
  ],
  'tight-to-wall': [
    '^tight|right up|flush + to the tub|to the bathtub|to the cabinet|to the post|to cabinets',
    '^tight|right up|flush|grout|grouted|jam|butt$|run|touch|hit|push|go$ + to the wall|against the wall|up to the wall|at the wall|touch the wall|hit the wall|touching the wall|to the walls|against the walls|to the drywall|against the drywall|to the baseboard|to the wall + !shower|flatness|how much|gap',
  ],
  movement: [
    'bay size|bay|bays + heat|heated|underfloor|floor|size|how big|screed',
    'movement joint|expansion joint|control joint|soft joint|expansion gap|movement|ej171 + how often|how far|spacing|spaced|every|need|where|how many|do i|required|apart|feet|ft|sunroom|outside|big|long|run|when|in a|for a + !wide|width|how big|corner|tile over|crack',
    'expansion|movement + joint + !wide|width|tile over|over the|bridge',
    'go|tile|run|field|room + without + expansion|movement|soft joint|joint',
    'every + ft|feet|foot|meters|metres + joint|expansion|movement',
  ],
  'movement-width': [
    'wide|width|how big|size|thick + movement joint|expansion joint|soft joint|expansion|movement + !perimeter|at the wall',
  ],
  'change-of-plane': [
    '^what|which|how + floor meets|wall meets|meets the wall|meets the tub|walls meet|meets the floor',
    '^grout|caulk|sealant|silicone + floor meets|wall meets|meets the wall|meets the tub|walls meet|meets the floor',
    'grout|caulk|silicone|sealant|sanded caulk + corner|change of plane|plane|where the wall meets|inside corner|tub|wall meets|floor meets|wall to floor|wall to wall|niche|curb + !bags|gap',
    'corner + grout|caulk|crack|soft|silicone|sealant',
    'change of plane|changes of plane|inside corner',
  ],
  'slab-joints': [
    '^carry|carried|honor|honour|respect|come up|follow|continue|bring + control joint|slab joint|joint in the slab|joints in the slab|saw cut|expansion joint|cold joint',
    'over|across|cover|bridge|ignore|fill|skip|past|span + control joint|expansion joint|saw cut|sawcut|slab joint|cold joint|construction joint|contraction joint|saw joint',
    'control joint|saw cut|sawcut|cold joint|expansion joint + slab|concrete|tile over|line up|honor|honour|carry|under + !far|often|spacing|spaced|every',
  ],
  'grout-type': [
    'sanded|unsanded|non sanded|nonsanded|sand grout + !bag|bags|how many|how much|lbs|pounds|caulk',
    'sanded|unsanded|non sanded + joint|or|in|for|on|ok|can|will|use',
    'grout + glass|polished|marble|scratch + sanded|unsanded|kind|what|which|scratch',
    'what kind|what type|what|which|which type + grout$ + joint|for + !how much|how many|water|temperature|how long|bag|lb|cold|corner|when|minimum|min$|smallest|wide|size|small|tight|lippage|max|maximum|wide',
  ],
  'grout-depth': [
    'without cleaning|clean the joints|cleaning the joints|cleaning joints|clean out the joints|clean joints|dirty joints + grout|joint|need|ok|can',
    'grout + depth|deep|thinset in|mortar in|over thinset|squeezed up|two thirds|2/3|clean out|shallow|rake + joint|line|grout',
    'thinset|mortar|mud|full + full of thinset|full of mortar|in the joint|in joint|in the grout line|between the tile|oozed|squeezed|in my joints|up in the',
  ],
  'grout-temperature': [
    'grout|grouting + 35f|38f|40f|42f|45f|48f|50f|52f|55f|58f|95f|100f|45 f|50 f|55 f|40 f|cold|hot|temperature|temp|degrees|deg|too cold|too hot|warm|f$|outside at + !set at|when can|how long|wait|bag|water|went down|yesterday|laid|pm|am$|morning|noon',
  ],
  'grout-wait': [
    'grout + tonight|today|now|yet|same day|this afternoon|tomorrow|right away|how soon|early|too soon|next day|after lunch|morning + can|ok|is it|could|should|too|safe|when|we|i + !grout off|grouted',
  ],
  retemper: [
    'sat for|sat in|been sitting|sat out|sat over + thinset|mortar|mud|mix|bucket + use|still good|ok|can',
    'remix|re mix|started to set|starting to set|began to set + thinset|mortar|mud|grout|ok|can|it',
    'water + add|more|splash|thin$|loosen|bring back|wet|put|spray|little + thinset|mortar|mud|grout|bucket|mix|stiff|it|batch + !how much|per bag|epoxy|gallon|quart|for half|for a bag',
    'retemper|re temper|bring it back|bring back|loosen it|thin it out|remix stiff|stiff',
  ],
  slake: [
    'let|sit|sits|rest|stand + mix|thinset|mud|grout|bucket|mortar + how long|do i|need|before|after mixing + !set tile|pan$|pans|walk|grout joint|cold',

    'slake|let it sit|let it rest|let it stand|second mix|rest after mixing|sit 10|wait 10 + !pan$|pans|how many|long slake time',
    'slake',
  ],
  'mix-speed': [
    'rpm|drill speed|mixer speed|mixing speed',
    'fast|speed|how fast + mix|drill|paddle + !set|dry|setting',
  ],
  'epoxy-water': [
    'epoxy + water|thin$|half|half kit|part kit|split|partial|less hardener|measure|half batch|half a kit',
  ],
  'membrane-mortar': [
    'modified|unmodified|un modified|non modified|polymer + membrane|uncoupling|mat$|waterproof|sheet|orange|over|under|foam board|decoupling|crack iso|liquid|on',
    'what|which + thinset|mortar + membrane|uncoupling|mat$|over foam|decoupling + !how many|bags|trowel|notch',
  ],
  mastic: [
    'mastic|premix|pre mix|premixed|ready mix adhesive|bucket adhesive|tub adhesive|organic adhesive|in the bucket|acrylic adhesive + !black|cutback|old|remove|grind|scrape|asbestos|trowel for',
  ],
  'min-temperature': [
    'cold|coldest|freezing|freeze|temperature|temp$|degrees|degree|min temp|too cold|frost|how cold|40 f|35 f|45 f|38 f|below 40|below 50 + set|tile|lay|install|thinset|mortar|work|outside|slab|ok|start + !grout|when can|how long|pot life|walk|water|heat on|keep',
  ],
  'keep-warm': [
    'keep|leave|hold|run + heat|warm|heater|temp + after|how long|overnight|days|hours + !floor heat|radiant|heated floor|heat mat|cable',
  ],
  'slab-age': [
    'poured + days|day|weeks|week|month|ago|old|yesterday',
    'old|age|weeks|week|days|months|month|cure|new|fresh|green|how long|poured|wait + slab|concrete|screed|foundation + tile|ready|wait|ok|can|before|enough|set|lay|when|how + !rh|moisture|lb|reading|crack|vinyl|adhesive|paint|calcium sulfate|calcium sulphate|anhydrite|gypsum|heat|post tension|saw cut|control joint',
  ],
  'screed-sulfate': [
    'anhydrite|calcium sulfate|calcium sulphate|gypsum screed|anhydrous|sulphate screed|sulfate screed|hemihydrate|liquid screed',
  ],
  'slab-humidity': [
    'rh$|relative humidity|humidity|% rh|moisture|f2170|probe + slab|concrete|screed|reads|read|reading|limit|max|ok|tile|what|how|high|too|allowed|probe|percent|% + !holes|how many|anhydrite|sulfate|sulphate|depth|deep|calcium chloride|lb|lbs|pounds|meter on wood|how often',
  ],
  'slab-emission': [
    'calcium chloride|vapor emission|vapour emission|mver|f1869|emission|vapor test|lb per 1000|lbs per 1000|pounds per 1000|pounds per thousand|lb/1000|lbs/1000|lb dome|moisture dome',
    'moisture|vapor|mver + lb|lbs|pounds + slab|concrete|ok|tile|limit',
  ],
  'slab-holes': [
    'how many|how deep|number|depth|deep|where|how far + hole|probe|rh test|test hole|rh hole|f2170|moisture test|humidity test + !drill bit',
  ],
  deflection: [
    'deflection|l/360|l360|l/720|l720|l over|l/480|l/240|bounce|bouncy|flex|spring|springy|stiff enough',
    'joist|2x10|2x8|2x12|2x6|framing|span|joists + tile|stone|ok|enough|strong|marble|handle|hold|support|carry|oc$|o.c|centers|span + !i joist|ijoist|tji|truss|notch|drill|cantilever|sister',
  ],
  'dead-load': ['dead load|dead weight|psf dead|dead psf', 'psf + tile|dead|floor load|enough + dead|load'],
  'engineered-joists': [
    'i joist|ijoist|i joists|truss|trusses|web joist|lvl|engineered joist|notched joist|cantilever|cantilevered|notched',
    'joist + notch|notched|drilled|hole|cut|cracked|sister|rotten|split',
  ],
  'over-vinyl': [
    'vinyl|linoleum|lino|lvt|lvp|resilient|cushion floor|vct|sheet floor + over|on top|onto|tile on|leave|stay|go over|right on|under + !click|underlayment for vinyl|1970|1965|1955|1985|1990|old vinyl is it|asbestos|grind|scrape|sand|remove|rip',
    'over|on top + vinyl|linoleum|lvt|vct|lino|lvp',
  ],
  'over-tile': [
    'over|on top|onto|on + existing tile|old tile|tile over tile|existing ceramic|old ceramic|existing porcelain|terrazzo|existing floor tile|ceramic floor',
    'tile over tile|tile on tile|tile on top of tile',
  ],
  'over-cutback': [
    '^over|on|onto|on top + cutback|cut back|black mastic|black adhesive|black glue|black residue|tar + !grind|sand|scrape|remove|get off|chip|asbestos',

    'cutback|cut back|black mastic|black adhesive|black glue|tar adhesive|asphalt adhesive|black stuff|black residue + !grind|sand|scrape|remove|get off|chip|asbestos',
  ],
  'bond-breaker': [
    'paint|painted|sealer|sealed|curing compound|cure and seal|wax|overspray|drywall mud|epoxy coat|oil|grease|coating|varnish|polyurethane|stain + over|on|concrete|slab|ok|can|tile|stick|bond|removed|plywood|wall + !grout|seal the grout|colour|color seal|sealer for|after',
  ],
  'slab-crack': [
    'crack|cracks|cracked + slab|concrete|screed|foundation|in the floor|hairline|substrate + !tile cracked|tile is cracked|grout|control joint|saw cut',
  ],
  asbestos: [
    'asbestos + !sand|grind|scrape|remove|chip|rip|tear|drill|cut',
    'asbestos',
    '9x9|9 x 9|nine inch tile|9 inch tile|9in + old|vinyl|tile|floor|is|safe',
  ],
  'asbestos-age': [
    '^built|build|house|building|year|newer|from 19|from 20|19|20 + asbestos + so no|no asbestos|cant be|free|clear|safe|right|too new|after|fine|ok|wont|cannot|shouldnt',
    '^asbestos + no asbestos|asbestos free|cant be asbestos|free of|too new',
  ],
  'mortar-choice': [
    '^regular thinset|regular thin set|standard thinset|ordinary thinset|normal thinset|basic thinset|cheap thinset|plain thinset + under|on|for|with|use|ok|24|tile + !thick|build|max|maximum|membrane|how',
    '^what|which|kind|type + thinset|mortar + for + 2|tile|large|porcelain|plank + !membrane|bags|how many|sf|notch|trowel|thick|board|uncoupling|cement board',
  ],
  'need-membrane': [
    '^need|have to|must|should|required|require + membrane|uncoupling|crack isolation|decoupling|isolation + !thinset|mortar|modified|unmodified|how many|rolls|sheets|how much|hairline|crack in|shower|waterproof|sf',
  ],
  bouncy: [
    '^bounce|bouncy|bounces|springy|spongy|flexes|wobbly|gives when|moves when|squeak + floor|tile|subfloor|can|it|ok + !deflection|l/360|l/720',
  ],
  subfloor: [
    '^plywood|ply$|osb|subfloor|sheathing|decking + thick|thickness|enough|how thick|1/2|5/8|3/4|7/16|19/32|23/32|oc$|one layer|two layers|second layer|double + !tile over|over osb|over plywood|seam|flat|out of|level|screws|higher|proud|vinyl|in 10',
  ],
  'asbestos-sand': [
    'sand|grind|scrape|remove|chip|rip|tear|bust|break|demo|buff|bead blast|strip|pull up|take up|get off|scrap + cutback|black mastic|black adhesive|black glue|old vinyl|vinyl|asbestos|linoleum|9x9|felt|old sheet|old resilient|backing|old floor tile|vct|old adhesive|black stuff + !sanded grout',
  ],
  'heat-wait': [
    'heat|radiant|floor heat|heated floor|heat mat|warming|underfloor|in floor heat|heat cable + on|turn|wait|when|start|fire|how long|soon|use|cure|speed|dry + !how cold|overnight|cold|heater|space heater|resistance|ohm|test|screw|nail|drill|movement|bay|gun|hot',
  ],
  'heat-resistance': [
    '^check|test|read|measure|ohm|resistance|megger + heat cable|heat mat|heat wire|cable|heating mat|heating cable|heat',

    'resistance|ohm|ohms|megger|ohm test|test the cable|test the mat|test the wire|check the cable|check the heat|continuity + !slip|dcof',
  ],
  'heat-fastener': [
    'screw|nail|staple|drill|cut|fasten|anchor|bolt|toilet|doorstop|threshold + heat|heated|radiant|heat cable|heat mat|heat wire|warming',
  ],
  'shower-slope': [
    'slope|pitch|fall|drop|grade|pitched|sloped + shower|pan$|pans|drain|curb|bench|niche|preslope|pre slope|wet room|membrane|liner|per foot|how much|enough|wash up|floor drain',
  ],
  'over-wood': [
    'over|on|onto|on top + osb|plywood|ply$|hardwood|particle board|particleboard|wood floor|wood subfloor|luan|subfloor|planks|floorboards + !bags|flat|out|dip|seam|deflection|joist|screw|how thick|wood look|thickness|level|vinyl plank|in 10|bounce|plank tile|vinyl|lvp|transition|from|sheets',
  ],
  primer: [
    'primer|prime|priming + leveler|leveller|self level|slab|need|skip|do i|before|wait|slu|concrete|membrane|without + !paint primer|drywall|sheetrock',
  ],
  hot: [
    'hot|heat wave|100 degrees|95 degrees|scorching|in the sun|direct sun + set|tile|lay|too|thinset|mortar|install|work|ok + !grout|floor heat|heat mat|radiant|heated|hot tub|movement|expansion|hot mop|water|bucket|pot|joint|spacing',
  ],
  dcof: [
    '^polished|glossy|honed|shiny + bathroom|shower floor|wet floor|mudroom|entry|floor + !grout|sanded|scratch|seal|lippage|clean|concrete',
    'dcof|cof$|slip|slippery|slick|friction|coefficient|slip rating|slip resistance|slip resistant|r10|traction|0.42|.42 + !grout|slip sheet|sliding|slipped|slip on the wall|slipping',
  ],
  'flood-test': [
    'flood + test|pan$|pans|how long|shower|need|skip|do i|24',
    'water test|leak test + pan|shower|liner|membrane',
  ],
  'weep-holes': ['weep|weeps|weep hole'],
  'half-tile': [
    'cut$|cuts|piece + size|how small|smallest|minimum|min$|inch|too small|ok + !grout|joint|clip|blade|lippage|vinyl|board|cut it|cut tile with|cut in|post|asbestos|how many|clean cut|cut back|cable|heat|dry',

    'sliver|slivers|small cut|skinny cut|thin cut|half a tile|less than half|narrow cut|smallest cut|tiny cut|small piece|rip|2 inch piece|1 inch piece|2 inch cut|1 inch cut|two inch|skinny + !kneel|ripples|rip out|rip up|joint|grout|vinyl|small joint|groutline|void|level',
  ],
  spares: [
    'how much|what percent|percent|% + extra|waste|overage|spare|over + order|buy|tile|should|need|add|herringbone|diagonal|straight|normal|enough + !bags|sf|sq ft',
  ],
  'dry-cutting': [
    'ppe|goggles|safety glasses|eye protection|ear protection + cut|saw|grind|tile',
    'dry cut|cut dry|cutting dry|dry cutting|grind dry|dry grind|without water|no water|dry saw|grinder + cut|saw|grind|inside|indoors|tile|porcelain|concrete|mortar|grout|rake|dust',
    'silica|dust + bad|sweep|harm|danger|health|breath|grind|cut|mask|respirator|vacuum|limit|rake|saw|how|do i|need',
  ],
  'acid-bleach': [
    'bleach|acid|muriatic|vinegar|sulfamic|ammonia + mix|together|with|and + bleach|acid|muriatic|vinegar|ammonia|cleaner',
    'bleach|acid|muriatic + grout|haze|tile|use|clean|can|ok',
  ],
  'post-tension': ['post tension|posttension|pt slab|post tensioned|tensioned slab|tension cable'],
  'gas-electric': [
    'gas|electric|hardwire|hard wire|wiring|220|240 v|240v + range|stove|oven|dryer|line|hook|connect|disconnect|appliance|reconnect|outlet|move',
  ],
  gfci: ['gfci|gfi|ground fault'],
  'bag-lift': [
    'lift|carry|haul|hump|carrying|lifting|back hurts|how heavy + bag|bags|box|50 lb|pallet|one guy|alone|tile|mortar|panel|slab|person',
  ],
  respirator: [
    '^respirator|mask|n95|apf + rake|raking|grind|grinding|cut|saw|mix|mixing|dust|need|grout|wear|sweep|demo + !dry cut|cut dry|inside with grinder|mix|mixing',
  ],
  'mixing-dust': ['^respirator|mask|n95|apf + mix|mixing'],
  'niche-depth': ['^niche + deep|depth|deepness + !wide|across|tall'],
  'modified-mortar': [
    '^unmodified or|modified or|modified vs|unmodified vs|modified versus|unmodified versus|modified and unmodified|modified against|unmodified against + !how many bags|membrane|uncoupling|mat$',
    '^modified|unmodified + porcelain|dense tile|glass tile + need|which|difference|better|should|or not + !how many bags|membrane|uncoupling|mat$',
  ],
  'cement-skin': [
    'burning|burned|burnt|burns|burn + skin|knee|hand|eye|arm|leg|feet|foot|wrist|chemical + thinset|mortar|cement|grout|mud|concrete|wet',
    'burn$|burns$|skin$|gloves|hands|knees|knee|eyes|eye|chemical burn|rash|barehanded|bare hand|bare hands + thinset|mortar|cement|grout|mud|concrete|wet + !burning mud|burn mud|burn the back|sf',
  ],
}

/** What the message says of the place, the tile and the work, by condition and value. */
export const conditions: Readonly<Record<string, CueTable>> = {
  hands: {
    two: [
      'two people|2 people|two person|2 person|two man|2 man|two men|2 men|two guys|2 guys|two of us|2 of us|both of us|my partner|my helper|with a helper|team lift|buddy',
    ],
  },
  place: {
    wet: [
      'shower|tub surround|tub wall|steam|pool|spa|wet room|wet area|wetroom|wash up|washup|hot tub|fountain|wet + !wet bed|wet saw|wet mop|wet cement|wet dcof|wet mortar|wet thinset|wet grout',
      'submerged|sauna|gang shower',
    ],
    exterior: [
      'outside|outdoor|exterior|patio|porch|balcony|driveway|pool deck|deck|terrace|front steps|facade|veranda|walkway|outdoors|external|courtyard|lanai',
    ],
    dry: [
      'dry + !dry set|dry cut|dry out|to dry|dried|dryer|dry fit|dry tile|drys|dry yet|dry time|dryset',
      'bedroom|living|hallway|hall$|den$|closet|dining|kitchen|backsplash|entry|foyer|office|showroom|shop floor|shop|corridor|basement|great room|fireplace|hearth|interior floor|interior dry|lobby|store|stairs|family room|bonus room|sunroom|bakery|mudroom|laundry|attic|interior wall|indoors|inside floor',
    ],
  },
  surface: {
    wall: [
      'wall|walls|backsplash|surround|vertical|wainscot|shower wall|facade + !at the wall|to the wall|wall to wall|the wall|against the wall|wall gap|up to wall|gap at wall|near the wall|along the wall|from the wall|at wall|off the wall',
      'behind + panel|tile',
      'on the wall|on a wall|shower walls|the walls|wall tile|walls|wall flat|wall needs|wall need|wall be|should the wall|is the wall',
    ],
    floor: ['floor|slab|subfloor|patio|hallway|entry'],
  },
  material: {
    stone: [
      'stone|marble|granite|limestone|travertine|slate|onyx|sandstone|quartzite|basalt|soapstone|bluestone + !stone look|cast stone|marble look|keystone',
    ],
    panel: [
      'gauged|thin panel|porcelain panel|thin porcelain|large panel|5x10 panel|slab panel|gpt|gptp|thin tile panel|porcelain slab|panels + !cement board',
    ],
  },
  bond: {
    running: [
      'offset|stagger|running bond|brick|third|half|50/50|stair step|1/3$|33$ + !offset saw|brick wall|no offset|half inch|half bag|third coat|brickwork|1/2 "',
    ],
    stacked: ['stacked|stack bond|straight lay|grid|no offset|straight lay|straight set|soldier'],
  },
  facing: {
    rectified: [
      'rectified|ground edge|sawn edge|rectify + !non rectified|nonrectified|not rectified|un rectified|unrectified',
    ],
    calibrated: [
      'calibrated|pressed edge|cushion edge|non rectified|nonrectified|not rectified|cushioned|un rectified|unrectified',
    ],
  },
  exposure: {
    exterior: ['outside|outdoor|exterior|patio|porch|balcony|deck|terrace|driveway|external|pool deck|walkway|lanai'],
    sun: [
      'sun|sunny|sunroom|window wall|glass wall|sunlight|direct sun|conservatory|skylight|solarium|south facing|patio door|atrium|sliding door|big windows|storefront',
    ],
    wet: ['shower|wet|pool|moisture|steam|wash up|commercial kitchen|damp + !wet bed'],
    heated: ['heated|radiant|underfloor heat|floor heat|heat mat|heating|in floor heat'],
    suspended: [
      'above ground slab|above grade|elevated slab|second floor slab|upper floor|suspended|structural slab|second floor|2nd floor|third floor|upstairs|high rise',
    ],
    interior: [
      'interior|inside|indoor|indoors|living|kitchen|hall|shop floor|lobby|bedroom|basement|office|store|great room|open plan|big room|warehouse|corridor',
    ],
  },
  grout: {
    unsanded: ['unsanded|non sanded|nonsanded|un sanded|no sand|without sand|sandless'],
    sanded: ['sanded + !non sanded|un sanded', 'sand grout|with sand'],
  },
  face: {
    soft: ['polished|glass|marble|soft glaze|honed|onyx|mirror|metal|scratch + !fiberglass|glass wall|shower glass'],
  },
  mortar: {
    large: ['lft|lht|large format|large and heavy|medium bed|large & heavy|heavy tile mortar|large tile mortar'],
    thin: [
      'regular thinset|standard thinset|ordinary thinset|thin bed|thinbed|regular mortar|thinset|thin set + !lft|large format|medium bed|large and heavy|lht|mortar for large',
    ],
  },
  bound: {
    least: [
      'minimum|min$|least|how thin|too thin|enough|thin enough|at least|need to be|has to be|how much + !max|too thick|build up|how thick can|thick can',
    ],
    most: [
      'max|maximum|most|too thick|how thick|build up|buildup|up to|limit|can i go|can you go|can we go|go thicker|thickest|thick can|pack out|thick + !minimum|too thin|how thick does|at least|least|min$|thick must|thick should|thick do|thick need',
    ],
  },
  crack: {
    step: ['step|height difference|higher|lip$|one side|offset|vertical|proud|uneven|drop + crack|cracks'],
    moving: ['moving|moves|growing|opening|getting wider|opens'],
  },
  base: { screed: ['screed|screeds'], slab: ['concrete|slab'] },
}

/** Sizes by a word, where no figure was said. */
export const sizes: CueTable = {
  large: [
    'large format|large tile|big tile|large porcelain|large and heavy|lft|plank|wood look|wood plank|big format|slabs of tile|large tiles|big tiles + !large format mortar|lft mortar|large and heavy tile mortar|large format thinset|large format mud',
  ],
  small: ['mosaic|subway|small tile|penny|small format|hex|little tile'],
}

/** How it is asked: may it be so, must it, may it be left out, is it wrong; or nothing of the kind. */
export const stances: CueTable = {
  skip: [
    'skip|leave out|get away|without|dont need|no need|need not|avoid',
    'can|ok|alright|fine|could + skip|without|get away|leave out|omit|not',
  ],
  need: [
    'need|needs|have to|has to|must|required|require|necessary|supposed to|should|gotta|got to|mandatory|do i|do we|really|got$ to|or not + !too|how|what|which|when do|when should|can i skip|is that enough|where do|where should|do i do|do i have enough',
  ],
  may: [
    'ok|okay|fine|can i|can we|can you|alright|all right|allowed|legal|acceptable|good|pass|passes|enough|safe|cool|work|works|fly|could i|could we|may i|may we|possible|will it|would it|acceptible|good to go|cut it|do the trick|kosher|sufficient|will that|will that do|in spec|within spec|up to code|to code|within tolerance|meet|in tolerance|alrite|allright|right$|is it|is that|are|is + !how|what|which|when|not enough|too',
    'is|are|does|do|can|will|would|could|should|be + ok|fine|enough|good|allowed|safe|legal|right',
    'can|could|ok|okay|fine + how + !how much|how many|how flat|how big|how wide|how thick|how often|how far|how long|how deep|how small|how tight|how high|how cold|how fast',
  ],
  'too-much': [
    'too + much|big|large|high|wide|thick|hot|long|old|uneven|rough|steep|many|far|loose',
    'excessive|over the limit|over spec|out of spec|out of tolerance',
  ],
  'too-little': [
    'too + low|small|thin|tight|cold|soon|early|narrow|little|few|young|green|short|close|shallow|flat|wet',
    'not enough|isnt enough|arent enough|wont be enough',
  ],
  wrong: [
    'too bad|wrong|problem|bad$|reject|fail|fails|against code|illegal|against spec|violation|defect|defective|unacceptable|a callback|need to fix|have to fix|redo|need grinding|have to grind|need to grind|need to level|have to level|need to patch|worry|issue',
  ],
  ask: [
    'or$ + !or not|or so|or more|or less|or better|or no|or what',
    'where + !where the|where wall|where it|where my|where we|where i|where they|where two',
    'who|whose',
    'how much|how many|how flat|how big|how wide|how thick|how often|how far|how long|how deep|how small|how tight|how high|how cold|how fast|what|which|whats|when do|when should|when can|when is|how hot|how thin|how close|how soon|how old|how full|how dry|tell me|minimum|max allowed|tolerance for|limit|spec for|standard for',
  ],
}

/** Trouble in mid-job: the names are the entries of config/trouble.json. */
export const troubles: CueTable = {
  'stiff-mortar': [
    'setting up|going off|kicking|stiff|hardening + too fast|too quick|fast|in the bucket|on me|already + !add water|grout$',
    'stiff|stiffening|stiffened|thickening|going off|setting up|setting off|hardening|kicking|kicked|getting hard|firm + bucket|mud|mortar|thinset|mix|fast|pot|grout|already + !add water|can i add',
  ],
  skinned: [
    'drying|dries|dried + before i|before we|before the tile|before setting|too fast|on top + thinset|mud|mortar',
    'skinned|skinning|skins|skin over|skin on|dried on top|crusted|crust|dry on top|filmed over|wont stick|not sticky|skim over + !back',
  ],
  'hollow-sound': ['hollow|drummy|drumming|clunk|hollows|sounds empty|tap and it + !corner ok|void'],
  'ridges-showing': [
    'ridges|ridge|lines|trowel marks|trowel lines + still|show|showing|standing|not collapsed|didnt collapse|back of|pulled|lifted|werent',
  ],
  lippage: [
    'lippage|lipping|lips|uneven edges|edges sticking up|toe stubber + getting|got|seeing|have|bad|keep|keeps|fix|why|all over|showing|lot|cause|help|tile|planks|what',
    'tile|corner|edge|plank + sticking up|sits higher|higher than|proud',
  ],
  sliding: [
    'sliding|slipping|sagging|slide|slides|slid|slips|sags|slump|creeping|dropping down|falling down + wall|tile|down|tiles|shower|mosaic|row|rows',
  ],
  'blotchy-grout': [
    'grout + different color|different colour|two color|two different|color difference|lighter|darker|wrong color|different shades',
    'too dark|darker|lighter|dark in spots|different color|different colour|two colors + grout|grout lines + !thinset|which color',
    'blotchy|splotchy|uneven color|uneven colour|different shade|shaded|mottled|patchy|two tone|color is off|colour is off|discolored|light and dark|dark spots|light spots|spotty|streaky + grout|joint|dried|color|colour',
  ],
  'powdery-grout': [
    'powdery|powdering|dusting|crumbly|crumbling|crumble|crumbles|chalky|soft|sandy|flaking|rubs off|rubbing off|falling out|washes out|coming out|pinholes + grout|joint|joints',
  ],
  'cracked-grout': [
    'crack|cracking|cracked|cracks|hairline|splitting|separating|shrinking|shrank|pulling away + grout|joint|grout line|joints|corner + !tile cracked|cracked tile|slab|control|can i',
  ],
  'white-bloom': [
    '^white stuff|white powder|white haze|white film|white residue|white crust|whitish|chalky white + grout|joint|tile|coming|on|lines',
    'white|efflorescence|bloom|salts|salt|chalk + powder|haze|coming|grout|bloom|stuff|film|crust|residue|on|efflorescence|joints + !white grout|white tile|how many|bags|white thinset',
    'efflorescence|effloresence|efflorescense',
  ],
  'cracked-tile': [
    'tile|tiles|porcelain|plank + cracked|cracking|broke|broken|split|cracks|crack + !saw|cutting|cutter|slab|grout|cut it|boxes|box|arrived|over a crack|under|snap|when i cut|control joint|concrete',
  ],
  'slab-crack-row': [
    '^crack|cracked + next row|next course|right where|under the row|my row|right under|runs under',
    'crack + slab|concrete|screed + row|under|next|running|runs|found|there is|theres|is a|right where|through|moving|wider|step|opening',
  ],
  froze: [
    'froze|frozen|freezing overnight|hard freeze|got below freezing|dropped below freezing|freeze last night|frosted|got down to + last|night|overnight|tile|mortar|thinset|set|bucket|work|we|it|grout',
  ],
  'rained-on': [
    'rain|rained|rains|raining|got wet|downpour|storm|sprinkler|soaked + tile|patio|set|fresh|grout|on it|thinset|just|mortar|outside|last night|we|it',
  ],
  'mastic-large-tile': [
    '^mastic|premix|premixed|bucket adhesive|organic adhesive + never dried|never dry|still soft|still wet|wont dry|never set|gummy|not dry|didnt dry',
    'mastic|premix|premixed|pre mix|bucket adhesive|tub adhesive|organic adhesive|bucket of + used|they|under|already|still soft|previous|helper|found|set with|guy|someone|somebody + !can i|can we|ok|black|fine',
  ],
  'slippery-floor': ['slippery|slick|slip + tile|floor|bathroom|shower|is this|are these|too|wet|mudroom|entry'],
  'loose-tile': [
    'loose|popped|popping|came up|coming up|debonded|let go|lifting|unstuck|fell off|falling off|came off|coming off|delaminat|pulled off|wont stay|not bonded|rocking|moves when + tile|tiles|floor|wall|shower + !clips|wedge|how many|tenting|off the wall with mastic',
  ],
  'soft-mortar': [
    'thinset|mortar|mud|adhesive + never got hard|never hardened|never set|never cured|didnt harden|not hardening|wont harden|wont cure|not hard yet|rubbery',
    'thinset|mortar|mud|adhesive|mortar bed + soft|not set|not hard|still wet|wet|gummy|rubbery|hasnt set|didnt set|not setting|wont set|isnt setting|not curing|not dry|hasnt cured|squishy + !coverage|wet room|how wet',
  ],
  haze: [
    'haze|hazy|film|cloudy|smear|residue + grout|tile|off|porcelain|clean|left|get|wont|after + !bleach|white powder|acid and|muriatic and',
  ],
  tenting: [
    'tent|tenting|tented|buckling|buckle|buckled|heaving|heaved|humping up|peaking|peaked|lifting in the middle|hump in the middle|pushed up|raised up',
  ],
}

/** Words that ask for the cause or the cure, not for a verdict. */
export const whys: CueTable = {
  why: [
    'why|how come|what happened|what now|what do i do|what do we do|what should i do|help|cause|whats causing|how do i fix|how to fix|fix it|what gives|what went wrong|did i screw|what caused|how do i get|keeps|keep getting|getting',
  ],
}

/** Words that go with what was measured. */
export const measuring: CueTable = {
  humidity: ['rh$|humidity|probe|probes|readings|reads|read + slab|rh$|concrete|moisture'],
  width: [
    'expansion|movement joint|soft joint|expansion joint + wide|width|how big + exterior|outside|patio|deck|apart|spacing|range',
  ],
  tubes: ['^tube|tubes|sausage|sausages|cartridge + caulk|silicone|sealant|joint|perimeter|expansion'],
  joists: [
    '2x6|2x8|2x10|2x12|2 x 8|2 x 10|2 x 12|2 x 6|2 by 10|2 by 8|2 by 12 + joist|oc$|o.c|on center|centers|span|spf|fir$|df$|dfl|deflection|how far|16|24|12|19.2',
  ],
  sheathing: [
    'plywood|ply$|osb|subfloor|sheathing|t&g|decking + oc$|o.c|on center|centers|centres|joist|12 |16|19.2|24',
  ],
  gaps: ['gap|gaps|reading|readings|measured + edge|straightedge|level|under'],
  heights: ['heights|elevations|laser|shots|grid|readings + every|spacing|apart|spaced|16ths|sixteenths|mm'],
  square: ['diagonal|diagonals|diag|diags|corner to corner|cross corners|3 4 5|3-4-5|6-8-10|6 8 10|9-12-15'],
  voids: ['void|voids|hollows|bare spot|empty spot|air pocket + 1x|2x|3x|4x|x|by'],
  contacts: ['lifted|pulled|popped|tiles|pull|lift|coverage|contact + %|percent|pct|coverage|contact'],
  joint: [
    'warp|warpage|warped|bow + min|minimum|least|smallest + joint|grout line',
    'caliper|calipers|calipered|vary|varies|variation|varying|miked|out by + tile|tiles|joint|grout|size|sizes|in|mm',
  ],
  lippage: ['lippage|lip$ + warp|warpage|bow|bowed|cup|cupped|crown|warped'],
  holes: ['hole|holes|probe|probes|rh test|f2170 + slab|sf|sq|rh|deep|many|thick|m2'],
  screed: [
    'anhydrite|calcium sulfate|calcium sulphate|gypsum screed|anhydrous|sulfate screed|sulphate screed|liquid screed + mm|35mm|in$|inch|cm|thick|deep|how long|days|dry',
  ],
  bed: [
    'notch|trowel|sq notch|v notch|u notch|comb + bed|liters per|litres per|l/m2|how deep|leave|leaves|thickness|mean depth + !bag|bags|sf|sq ft|can i|ok$|enough|too|max|cover|tile',
  ],
  expansion: [
    'move|moves|expand|expansion|grow|grows|shrink|thermal + porcelain|ceramic|tile|run|floor + !joint wide|how wide|joint width',
  ],
  airflow: ['cfm|airflow|air flow|l/s + grinder|wheel|shroud|collector|vac|dust|in$|inch|mm'],
  ends: [
    'sliver|end cut|end cuts|cuts at the ends|cuts at each end|leftover|left over|balance|balanced|center it + tile|tiles|wall|leaves|leave|row|course + !joint be|grout joint|can i|ok$|story pole|courses',
  ],
  sag: ['sag|deflect|deflection|bend|bounce + how much|allowed|max|limit + span|joist|ft|feet|foot + !2x'],
  'floor-number': [
    'ff$|ff |ff2|ff3|ff5|ff4|fl$|fl |fl1|fl2|fl3 + flat|10ft|10 ft|local|minimum|min$|gap|how|what|whats|mean',
  ],
  notch: [
    'trowel|notch + enough|ok|work|good|what|which|big enough|right|size|too small|for|do it + !bag|cover|sf|sq ft|bags|how many|membrane|underlayment|cork|left|thinset for|mortar for|how much|build up|high',
  ],
}

/** Words that mean a sum is wanted, not a rule. */
export const sums: CueTable = {
  sum: [
    'how many|boxes|bundles|pieces|cost|price|order list|total|buy|everything|what do i load|load up|order$|picture|draw|show the math',
    'bags + !two bags at once|all day',
    'how much grout|how much mortar|how much thinset|how much mud|how much adhesive + !contact|coverage|covered|under|transfer|behind|back of|on the back',
    'how much water|quarts|gallons|how much do i need',
  ],
}

/** The trade's longer words, to mend slips by: "lipage", "coverge". */
export const trade: readonly string[] = [
  'coverage',
  'contact',
  'thinset',
  'mortar',
  'lippage',
  'offset',
  'stagger',
  'rectified',
  'calibrated',
  'unsanded',
  'sanded',
  'unmodified',
  'modified',
  'membrane',
  'uncoupling',
  'expansion',
  'movement',
  'perimeter',
  'deflection',
  'asbestos',
  'linoleum',
  'cutback',
  'mastic',
  'trowel',
  'porcelain',
  'ceramic',
  'travertine',
  'straightedge',
  'flatness',
  'subfloor',
  'concrete',
  'humidity',
  'moisture',
  'leveler',
  'percent',
  'shower',
  'exterior',
  'interior',
  'outside',
  'bathroom',
  'kitchen',
  'hallway',
  'minimum',
  'maximum',
  'allowed',
  'required',
  'tolerance',
  'acceptable',
  'backbutter',
  'backsplash',
  'efflorescence',
  'respirator',
  'temperature',
]
