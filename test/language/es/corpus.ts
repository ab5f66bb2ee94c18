/** Spanish and mixed messages beside their English twins: both must come to the same figures, to the digit.
 *  Messages of our own; the figures themselves are checked against their sources elsewhere. */

export type Twin = {
  readonly es: string
  readonly en: string
  /** What the reply is in; a mixed message in the language of most of its words. */
  readonly language?: 'es' | 'en'
  /** Where the English twin is known to read otherwise: what the figures must be. */
  readonly values?: Readonly<Record<string, number>>
}

const twin = (es: string, en: string, more: Partial<Twin> = {}): Twin => ({ es, en, ...more })
const mixed = (es: string, en: string, language: 'es' | 'en'): Twin => ({ es, en, language })

export const ROOMS: readonly Twin[] = [
  twin('piso de 10x13 pies', '10x13 ft floor'),
  twin('área de un cuarto de 12 por 14 pies', 'area of a 12 by 14 ft room'),
  twin('cuarto de 3,5 m x 4,2 m, area', 'room 3.5 m x 4.2 m, area'),
  twin('cuarto de 3.5 m por 4.2 m, cuantos metros cuadrados son', 'room 3.5 m by 4.2 m, how many square meters'),
  twin(
    'que area tiene un cuarto de 11 pies 6 pulgadas por 9 pies 4 pulgadas',
    'area of a room 11 ft 6 in by 9 ft 4 in',
  ),
  twin("área de 11'6 x 9'4", "area of 11'6 x 9'4"),
  twin('perímetro de una cocina de 10 x 12 pies', 'perimeter of a 10 x 12 ft kitchen'),
  twin('perimetro del baño 5 x 8 pies', 'perimeter of bathroom 5 x 8 ft'),
  twin('el cuarto mide 4 metros de largo por 3 de ancho, area', 'the room is 4 meters long by 3 wide, area'),
  twin('cocina 12x14 pies mas despensa 4x6 pies, area total', 'kitchen 12x14 ft plus pantry 4x6 ft, total area'),
  twin('cocina de 12x14 menos una isla de 3x5 pies, area', 'kitchen 12x14 less an island 3x5 ft, area'),
  twin('sala 15x20 pies menos chimenea 2x6 pies area', 'living room 15x20 ft less fireplace 2x6 ft area'),
  twin('dos baños de 5x8 pies, area', 'two baths 5x8 ft, area'),
  twin('tres recámaras de 10 x 12 pies cada una, area', 'three bedrooms at 10 x 12 ft each, area'),
  twin('area de diez por trece', 'area of ten by thirteen'),
  twin('area de un piso de doce por catorce pies', 'area of a twelve by fourteen ft floor'),
  twin('el piso mide 350 x 420 cm, area', 'the floor is 350 x 420 cm, area'),
  twin('pasillo de 4 x 22 pies, cuanto es el area', 'hallway 4 x 22 ft, how much is the area'),
  twin('lavandería de 2 metros y medio por 3 metros, area', 'laundry 2.5 m by 3 m, area'),
  twin('bodega 8 metros por 6 metros y medio, area', 'storeroom 8 m by 6.5 m, area'),
  twin('baño 5 pies y medio x 8 pies, area', 'bath 5 1/2 ft x 8 ft, area'),
  twin('sótano de 20 pies 6 pulgadas x 30 pies, área', 'basement 20 ft 6 in x 30 ft, area'),
]

export const TILES: readonly Twin[] = [
  twin('piso de 10x13, loseta 18x18, junta de 3/16', '10x13 floor, 18x18 tile, 3/16 joint'),
  twin('cuantas losetas de 18x18 para un cuarto de 10x13', 'how many 18x18 tiles for a 10x13 room'),
  twin(
    '¿Cuántas losetas de 18 x 18 pulgadas necesito para 130 pies cuadrados?',
    'how many 18 x 18 inch tiles do i need for 130 square feet',
  ),
  twin('cuántos azulejos de 30x60 cm para 22 m2', 'how many 30x60 cm tiles for 22 m2'),
  twin('piezas de 8x48 para una sala de 12x20 pies', 'pieces of 8x48 for a living room 12x20 ft'),
  twin('22 m2 de piso 30x60 cm cuantas cajas si traen 8', '22 m2 of 30x60 cm tile how many boxes if 8 per box'),
  twin(
    'cuantas cajas para 130 pies cuadrados, loseta 18x18, caja trae 6',
    'how many boxes for 130 sq ft, 18x18 tile, box holds 6',
  ),
  twin(
    'cajas de porcelanato 60x60 cm para 18 m2, 4 piezas por caja',
    'boxes of porcelain 60x60 cm for 18 m2, 4 pieces per box',
  ),
  twin(
    'la caja cubre 15.5 pies cuadrados, cuantas cajas para 200 pies cuadrados de 12x24',
    'box covers 15.5 sq ft, how many boxes for 200 sq ft of 12x24',
  ),
  twin('caja de 1,44 m2, cuantas cajas para 30 m2 de 60x60 cm', 'box of 1.44 m2, how many boxes for 30 m2 of 60x60 cm'),
  twin('loseta 18x18 en una cocina de 12x14 con 15% extra', '18x18 tile in a 12x14 kitchen with 15% extra'),
  twin(
    'cuantas losetas 12x24 para 10x12, 10 por ciento de desperdicio',
    'how many 12x24 tiles for 10x12, 10 percent waste',
  ),
  twin('loseta 12x24 en diagonal, cuarto 10x12 pies, cuantas', '12x24 tile diagonal, room 10x12 ft, how many'),
  twin(
    'duela de 8x48 trabada a un tercio, sala 12x15 pies, cuantas',
    '8x48 plank 1/3 offset, living room 12x15 ft, how many',
  ),
  twin('18x18 en espina de pescado, 10x12 pies, cuantas', '18x18 herringbone, 10x12 ft, how many'),
  twin('cuántas piezas de 3x6 para un salpicadero de 2x10 pies', 'how many 3x6 pieces for a 2x10 ft backsplash'),
  twin('cuarto 3,5 m x 4,2 m azulejo 30x60 cm cuantos', 'room 3.5 m x 4.2 m tile 30x60 cm how many'),
  twin(
    'cuantas losetas de treinta por sesenta centimetros para 20 metros cuadrados',
    'how many thirty by sixty centimeters tiles for 20 square meters',
  ),
  twin(
    'baldosas de 40x40 cm para una terraza de 5 x 6 metros con junta de 3 mm',
    '40x40 cm tiles for a patio of 5 x 6 meters with 3 mm joint',
  ),
  twin(
    'cuanta loseta necesito para 3 metros por 4 metros de 60x60 cm',
    'how much tile do i need for 3 meters by 4 meters of 60x60 cm',
  ),
  twin('ocupo piso de 18x18 para una cocina de 11x12 pies', 'i need 18x18 tile for an 11x12 ft kitchen'),
  twin('cerámica 12x12 para un baño de 5x8 pies, cuantas', 'ceramic 12x12 for a 5x8 ft bathroom, how many'),
  twin('junta de un octavo, loseta 18x18, piso 10x13', '1/8 joint, 18x18 tile, 10x13 floor'),
  twin('junta de un cuarto, loseta 18x18, piso 10x13', '1/4 joint, 18x18 tile, 10x13 floor'),
  twin('junta de tres dieciseisavos, loseta 18x18, piso 10x13', '3/16 joint, 18x18 tile, 10x13 floor'),
  twin('loseta 18x18 con junta de 1/8 de pulgada, 130 pies cuadrados', '18x18 tile with 1/8 inch joint, 130 sq ft'),
  twin('loseta 45x45 cm con sisa de 3 mm en 25 m2', '45x45 cm tile, 3 mm joint, 25 m2'),
  twin('cuantos mosaicos de 12x12 pulgadas para 60 pies cuadrados', 'how many 12x12 inch mosaics for 60 sq ft'),
  twin('azulejo de 4x12 pulgadas para 45 pies cuadrados de pared', '4x12 inch tile for 45 sq ft of wall'),
]

export const MORTARS: readonly Twin[] = [
  twin(
    'cuantos bultos de mezcla para 130 pies cuadrados, llana de 1/2',
    'how many bags of mortar for 130 sq ft, 1/2 trowel',
  ),
  twin(
    'bultos de mezcla para 22 m2, llana de 10 mm, bulto de 20 kg',
    'bags of mortar for 22 m2, 10 mm trowel, 20 kg bag',
  ),
  twin(
    'cuántos sacos de pegamento para 200 pies cuadrados de 12x24',
    'how many bags of thinset for 200 sq ft of 12x24',
  ),
  twin(
    'cuantas bolsas de pega para 18 m2 con loseta 60x60 cm',
    'how many bags of thinset for 18 m2 with 60x60 cm tile',
  ),
  twin(
    'cuantas fundas de mezcla para una sala de 12x20 pies, 18x18',
    'how many bags of mortar for a living room 12x20 ft, 18x18',
  ),
  twin(
    'quedan 2 bultos, faltan 60 pies cuadrados, llana de 1/2, alcanza?',
    '2 bags left, 60 sf to go, 1/2 notch, enough?',
  ),
  twin(
    'tengo 3 bultos de mezcla y faltan 120 pies cuadrados con llana de media pulgada, me alcanza',
    'i have 3 bags of mortar and 120 sq ft left with 1/2 inch trowel, enough',
  ),
  twin(
    'alcanzan 4 bultos de 50 libras para 150 pies cuadrados con llana de 1/2',
    'i have 4 bags of 50 lb, enough for 150 sq ft with 1/2 trowel',
  ),
  twin(
    'cuanto rinde un bulto de 50 libras con llana de 1/4 x 3/8',
    'how much does a 50 lb bag cover with 1/4 x 3/8 trowel',
  ),
  twin('cuánto cubre un saco con diente de 1/2', 'how much does a bag cover with 1/2 notch'),
  twin('rendimiento de un bulto con llana de un cuarto por tres octavos', 'coverage of a bag with 1/4 x 3/8 trowel'),
  twin(
    'cuantos bultos de mezcla de 50 lb para 200 pies cuadrados con diente de media pulgada',
    'how many 50 lb bags of mortar for 200 sq ft with a half inch notch',
  ),
  twin('cuanta mezcla para 12 m2 con llana de 12 mm', 'how much mortar for 12 m2 with 12 mm trowel'),
  twin(
    'cuantos bultos de mortero gran formato para 24x48 en 300 pies cuadrados',
    'how many bags of large format mortar for 24x48 in 300 sq ft',
  ),
  twin('adhesivo para 15 m2, llana de 8 mm, saco de 25 kg', 'thinset for 15 m2, 8 mm trowel, 25 kg bag'),
  twin(
    'mezcla para 100 pies cuadrados, llana de 3/8, sin embarrar',
    'mortar for 100 sq ft, 3/8 trowel, no back butter',
  ),
  twin(
    'bultos de thinset para 130 pies cuadrados, embarrando, llana 1/2',
    'bags of thinset for 130 sq ft, back buttered, 1/2 trowel',
  ),
  twin(
    'cuantos costales de mezcla pa 90 pies cuadrados, llana de 3/8',
    'how many bags of mortar for 90 sq ft, 3/8 trowel',
  ),
  twin(
    'me quedan 3 bultos y faltan 80 pies, alcanza con llana de 1/2?',
    '3 bags left and 80 sf to go, enough with 1/2 trowel?',
  ),
]

export const GROUTS: readonly Twin[] = [
  twin(
    'boquilla para 130 pies cuadrados de 8x48, junta 3/16, grueso 3/8',
    'grout for 130 sf of 8x48, 3/16 joint, 3/8 thick',
  ),
  twin(
    'cuanta boquilla para 22 m2 de 30x60 cm, junta de 3 mm, espesor 9 mm',
    'how much grout for 22 m2 of 30x60 cm, 3 mm joint, 9 mm thick',
  ),
  twin(
    'cuánta lechada necesito para 150 pies cuadrados de loseta 12x12 con junta de un cuarto',
    'how much grout do i need for 150 sq ft of 12x12 tile with a quarter joint',
  ),
  twin(
    'bultos de boquilla con arena para 200 pies cuadrados de 18x18 junta 1/4',
    'bags of sanded grout for 200 sq ft of 18x18 1/4 joint',
  ),
  twin(
    'boquilla sin arena para salpicadero de 30 pies cuadrados, 3x6, junta 1/16',
    'unsanded grout for backsplash of 30 sq ft, 3x6, 1/16 joint',
  ),
  twin('boquilla epóxica para 60 pies cuadrados de 12x24 junta 1/8', 'epoxy grout for 60 sq ft of 12x24 1/8 joint'),
  twin('con arena o sin arena para junta de 1/8', 'sanded or unsanded for 1/8 joint'),
  twin('¿boquilla con arena o sin arena para junta de 3 mm?', 'sanded or unsanded grout for 3 mm joint?'),
  twin('que boquilla uso para junta de 1/16 en marmol', 'which grout do i use for 1/16 joint in marble'),
  twin(
    'kilos de boquilla para 10 m2 de 45x45 cm junta 5 mm grueso 8 mm',
    'kilos of grout for 10 m2 of 45x45 cm 5 mm joint 8 mm thick',
  ),
  twin(
    'lechada para baño de 5x8 pies, loseta 12x12, junta de tres dieciseisavos',
    'grout for bathroom 5x8 ft, 12x12 tile, 3/16 joint',
  ),
  twin('cuanta fragua... digo boquilla para 12x14, 18x18, junta 1/8', 'how much grout for 12x14, 18x18, 1/8 joint'),
]

export const MIXES: readonly Twin[] = [
  twin('cuánta agua lleva un bulto de 50 libras de pegamento', 'how much water for a 50 lb bag of thinset'),
  twin('agua para medio bulto de mezcla', 'water for half a bag of mortar'),
  twin('agua para un bulto y medio de mezcla de 50 lb', 'water for 1 1/2 bags of mortar 50 lb'),
  twin('cuanta agua le pongo a un cuarto de bulto de thinset', 'how much water for a quarter bag of thinset'),
  twin('cuánta agua para dos bultos y medio de mezcla', 'how much water for two and a half bags of mortar'),
  twin('cuanta agua para 25 libras de boquilla con arena', 'how much water for 25 lb of sanded grout'),
  twin('cuanta agua lleva un saco de 20 kg de adhesivo', 'how much water for a 20 kg bag of thinset'),
  twin('cuanta agua para 10 kilos de mezcla', 'how much water for 10 kilos of mortar'),
  twin('cuanto tiempo dejo reposar la mezcla', 'how long do i let the mortar slake'),
  twin('cuanto dura la mezcla en la cubeta', 'pot life of mortar'),
  twin('vida util de la mezcla a 90 grados F', 'pot life of mortar at 90 degrees F'),
  twin('tiempo abierto del thinset', 'open time of thinset'),
  twin('agua pa la mitad de un bulto de 50 libras de mezcla', 'water for half a bag of mortar, 50 lb bag'),
]

export const WAITS: readonly Twin[] = [
  twin('pegamos a las 2 de la tarde, 58F, cuando emboquillamos', 'set at 2pm, 58F, when can we grout'),
  twin(
    'puse el piso ayer a las 3 de la tarde, 70 F, cuando puedo emboquillar',
    'set the floor yesterday at 3pm, 70F, when can i grout',
  ),
  twin(
    'terminamos de pegar a las 11 am, 65F, cuando se puede pisar',
    'finished setting at 11 am, 65F, when can we walk on it',
  ),
  twin('pegué hoy a las 9 de la mañana, 72F, ¿cuándo puedo emboquillar?', 'set today at 9am, 72F, when can i grout?'),
  twin('pegamos anoche a las 8, 60 F, ya se puede pisar?', 'set last night at 8pm, 60F, can we walk on it?'),
  twin(
    'colocamos el piso hace 5 horas, 70F, cuando se puede pisar',
    'set the floor 5 hours ago, 70F, when can we walk',
  ),
  twin('pegamos hace 1,5 horas a 70F, cuando emboquillamos', 'set 1.5 hours ago at 70F, when can we grout'),
  twin('cuanto tiempo antes de emboquillar a 55 F', 'how long before grouting at 55 F'),
  twin('cuánto hay que esperar para pisar a 15 grados centigrados', 'how long to wait to walk at 15 degrees celsius'),
  twin(
    'emboquillamos ayer a las 4 de la tarde, 70F, cuando lo puedo mojar',
    'grouted yesterday at 4pm, 70F, when can it get wet',
  ),
  twin('pegamos a las dos y media de la tarde, 62F, cuando emboquillamos', 'set at 2:30pm, 62F, when can we grout'),
  twin(
    'puse la loseta a las 10:30 am, 68F, cuando puedo emboquillar',
    'set the tile at 10:30 am, 68F, when can i grout',
  ),
  twin('pegamos a mediodía, 75F, cuándo emboquillo', 'set at noon, 75F, when can i grout'),
  twin(
    'pegamos con fraguado rapido a la 1 de la tarde, 70F, cuando emboquillamos',
    'set with rapid set at 1pm, 70F, when can we grout',
  ),
  twin('pegamos el lunes a las 9 am, 60F, cuando emboquillamos', 'set monday at 9 am, 60F, when can we grout'),
  twin('pegamos antier a las 3 de la tarde, 65F, ya puedo emboquillar?', 'set on sunday at 3pm, 65F, can i grout?'),
  twin(
    'pegamos a las 2pm, losa a 55F, minima 45F, cuando emboquillamos',
    'set at 2pm, slab 55F, low 45F, when can we grout',
  ),
]

export const UNITS: readonly Twin[] = [
  twin('22 m2 a pies cuadrados', '22 m2 to sq ft'),
  twin('cuantos pies cuadrados son 22 metros cuadrados', 'how many square feet is 22 square meters'),
  twin('27/64 en mm', '27/64 in mm'),
  twin('cuanto es 3/8 de pulgada en mm', 'how much is 3/8 inch in mm'),
  twin('cuantos litros son 6 galones', 'how many liters is 6 gallons'),
  twin('50 libras a kilos', '50 lb to kg'),
  twin('72 F en centigrados', '72 F in celsius'),
  twin('12 pies a metros', '12 feet to meters'),
  twin('30 cm a pulgadas', '30 cm to inches'),
  twin('cuantas pulgadas son 3 metros', 'how many inches is 3 meters'),
  twin('convierte 10 mm a pulgadas', 'convert 10 mm to inches'),
  twin('15 centigrados a fahrenheit', '15 celsius to fahrenheit'),
  twin('cuantas libras son 20 kilos', 'how many pounds is 20 kilos'),
  twin('2 pulgadas y media a mm', '2 1/2 inches to mm'),
]

export const AROUND: readonly Twin[] = [
  twin(
    'cuantas laminas de corcho de 2x3 pies para un cuarto de 10x13 pies',
    'how many cork sheets 2x3 ft for a 10x13 ft room',
  ),
  twin('cuantos tableros de cemento 3x5 pies para 120 pies cuadrados', 'how many cement boards 3x5 ft for 120 sq ft'),
  twin('cuantos clips de nivelacion para 18x18 en 10x13', 'how many leveling clips for 18x18 in 10x13'),
  twin('cuantas cunas y clips para 130 pies cuadrados de 24x24', 'how many wedges and clips for 130 sq ft of 24x24'),
  twin(
    'lista de materiales para piso 10x13, loseta 18x18, junta 3/16',
    'material list for 10x13 floor, 18x18 tile, 3/16 joint',
  ),
  twin('pendiente para plato de ducha de 3x5 pies', 'slope for shower pan 3x5 ft'),
  twin('cuanto pesa el piso: 10x13 pies, loseta 18x18', 'how much does it weigh: 10x13 ft, 18x18 tile'),
  twin('cuantos rollos de membrana para 200 pies cuadrados', 'how many rolls of membrane for 200 sq ft'),
]

export const MIXED: readonly Twin[] = [
  mixed('cuantas bolsas de thinset para 120 sf con 12x24', 'how many bags of thinset for 120 sf with 12x24', 'es'),
  mixed('how many cajas for 130 sf of 18x18, 6 por caja', 'how many boxes for 130 sf of 18x18, 6 per box', 'en'),
  mixed('necesito grout para 130 sq ft de 8x48 joint 3/16', 'grout for 130 sq ft of 8x48, 3/16 joint', 'es'),
  mixed(
    'I have 3 bultos left, 80 sf to go with a 1/2 trowel, enough?',
    'I have 3 bags left, 80 sf to go with a 1/2 trowel, enough?',
    'en',
  ),
  mixed('cuanto tile de 18x18 para el kitchen de 10x13', 'how much 18x18 tile for the kitchen of 10x13', 'es'),
  mixed('cuantos tiles de 12x12 para un bathroom de 5x8', 'how many 12x12 tiles for a bathroom of 5x8', 'es'),
  mixed('water for medio bulto of thinset', 'water for half a bag of thinset', 'en'),
  mixed('llana de 1/2, cuantos bags para 200 sf', '1/2 trowel, how many bags of mortar for 200 sf', 'es'),
  mixed(
    'the floor is 10x13 and the loseta is 18x18, how many',
    'the floor is 10x13 and the tile is 18x18, how many',
    'en',
  ),
  mixed('pusimos el tile a las 2pm, 58F, when can we grout', 'set the tile at 2pm, 58F, when can we grout', 'en'),
  mixed(
    'el backsplash es 2x10 pies con 3x6, cuantas piezas',
    'the backsplash is 2x10 ft with 3x6, how many pieces',
    'es',
  ),
  mixed(
    'boquilla unsanded para 40 sf de 3x6 con joint de 1/16',
    'unsanded grout for 40 sf of 3x6 with joint of 1/16',
    'es',
  ),
]

export const SLOPPY: readonly Twin[] = [
  twin('kuantas locetas 18x18 pa 10x13', 'how many tiles 18x18 for 10x13'),
  twin('cuantos vultos de mescla pa 130 pies2 llana 1/2', 'how many bags of mortar for 130 sf 1/2 trowel'),
  twin('CUANTAS CAJAS PARA 22 MTS2 DE 30X60 CM TRAE 8', 'how many boxes for 22 m2 of 30x60 cm holds 8'),
  twin('boquiya para 130 pies2 d 8x48 junta 3/16', 'grout for 130 sf of 8x48 3/16 joint'),
  twin('cuantas losetas  de 18 × 18 para 10 × 13 ', 'how many tiles 18 × 18 for 10 × 13'),
  twin(
    'ocupo saber cuantas losetas de 60x60 cm van en 4x5 metros',
    'need to know how many 60x60 cm tiles go in 4x5 meters',
  ),
  twin(
    'oye compa cuantos bultos llevo para 200 pies cuadrados con la llana de media',
    'hey how many bags of mortar for 200 sq ft with 1/2 trowel',
  ),
  twin('¿Cuánta agua le hecho a medio bulto de pega?', 'how much water for half a bag of thinset?'),
  twin('pies cuadrados de 12x14', 'square feet of 12x14'),
  twin('2 cuartos de 10x12 pies, area', '2 rooms 10x12 ft, area'),
  twin('cosina de 10x13, azulejo de 18x18, sisa de 3/16', 'kitchen of 10x13, 18x18 tile, 3/16 joint'),
  twin('cuantas piesas de 30x30 cm para 12 m2', 'how many pieces of 30x30 cm for 12 m2'),
  twin('loseta 18x18 para 10x13, ⅛ de junta', '18x18 tile for 10x13, 1/8 joint'),
]

/** Talks: the last message's figures must agree. */
export const TALKS: readonly { readonly es: readonly string[]; readonly en: readonly string[] }[] = [
  {
    es: ['piso 10x13, loseta 18x18, junta 1/8', 'hazla de 3/16'],
    en: ['10x13 floor, 18x18 tile, 1/8 joint', 'make it 3/16'],
  },
  {
    es: ['cocina 12x14, loseta 12x24, cuantas', 'no, es de 11x14'],
    en: ['kitchen 12x14, tile 12x24, how many', 'no its 11x14'],
  },
  {
    es: ['cocina 12x14, loseta 12x24, junta 1/8', 'y la boquilla?'],
    en: ['kitchen 12x14, tile 12x24, 1/8 joint', 'and grout?'],
  },
  {
    es: ['cocina 12x14, loseta 12x24, cuantas', '15% extra'],
    en: ['kitchen 12x14, tile 12x24, how many', '15% extra'],
  },
  {
    es: ['cuarto de 4 x 5 metros con loseta 60x60 cm', 'cuántas son', 'agrega el baño de 2 x 2 metros'],
    en: ['room of 4 x 5 meters with tile 60x60 cm', 'how many is it', 'add the bathroom of 2 x 2 meters'],
  },
  {
    es: ['cocina 12x14, loseta 12x24, cuantas', 'y en diagonal?'],
    en: ['kitchen 12x14, tile 12x24, how many', 'and diagonal?'],
  },
  {
    es: ['cocina 12x14, loseta 12x24, cuantas', 'cuanto es en m2'],
    en: ['kitchen 12x14, tile 12x24, how many', 'whats that in m2'],
  },
  {
    es: ['cocina 12x14, loseta 12x24, cuantas', 'cuantos bultos de mezcla?'],
    en: ['kitchen 12x14, tile 12x24, how many', 'how many bags of mortar?'],
  },
  {
    es: ['cocina 12x14, loseta 12x24, cuantas', 'muestra la cuenta'],
    en: ['kitchen 12x14, tile 12x24, how many', 'show the math'],
  },
  {
    es: ['cocina 12x14, loseta 12x24, cuantas', 'hazla de un cuarto'],
    en: ['kitchen 12x14, tile 12x24, how many', 'make it 1/4'],
  },
  {
    es: ['boquilla para 130 pies cuadrados de 8x48, junta 3/16', 'y si es de un cuarto'],
    en: ['grout for 130 sf of 8x48, 3/16 joint', 'what if 1/4'],
  },
]

export const TWINS: readonly Twin[] = [ROOMS, TILES, MORTARS, GROUTS, MIXES, WAITS, UNITS, AROUND, MIXED, SLOPPY].flat()
