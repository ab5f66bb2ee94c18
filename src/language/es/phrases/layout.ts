/** The layout and its picture. */
export const layout = {
  'layout.area': '{area}.',
  'layout.perimeter': 'Muros por fuera: {perimeter}.',
  'layout.rooms': '{rooms}.',
  'layout.work': 'Área {area} m²: largo x ancho de cada parte, menos los recortes',
  'layout.first-two': 'Primeras líneas: {one}, {two}.',
  'layout.first-one': 'Primera línea: {one}.',
  'layout.from-left': 'a {mm} de la pared izquierda',
  'layout.from-bottom': 'a {mm} de la pared de abajo',
  'layout.middle': 'Arranca con una esquina de loseta a {left} de la pared izquierda y {bottom} de la de abajo.',
  'layout.anywhere': 'Arranca donde quieras: ninguna pared lleva corte.',
  'layout.counts': '{tile}: {cells} lugares, {whole} enteras, {cut} cortadas.',
  'layout.worst': 'El corte más angosto, {cut}.',
  'layout.room-lines': '{room}: {lines}',
  'layout.rule-factory-edge':
    'Cortes como se acostumbra (orilla de fábrica hacia la vecina): {stock} losetas, {reused} {reused|corte|cortes} de sobrantes.',
  'layout.rule-factory-edge-fewest':
    'Cortes como se acostumbra (orilla de fábrica hacia la vecina): {stock} losetas, las menos posibles, {reused} {reused|corte|cortes} de sobrantes.',
  'layout.rule-any-offcut-fewest':
    'Cualquier sobrante en cualquier lado: {stock} losetas para cortes, las menos posibles, {reused} {reused|corte|cortes} de sobrantes.',
  'layout.rule-any-offcut':
    'Cualquier sobrante en cualquier lado: {stock} losetas para cortes, {reused} {reused|corte|cortes} de sobrantes.',
  'layout.rule-fresh-tile': 'Loseta nueva para cada corte: {stock} losetas.',
  'layout.measure-x': 'Mide otra vez el cuarto a lo ancho: con {margin} de diferencia cambian los cortes.',
  'layout.measure-y': 'Mide otra vez el cuarto a lo largo: con {margin} de diferencia cambian los cortes.',
  'layout.margin-x':
    'De lado a lado, el cuarto puede ser {less} más corto o {more} más largo antes de que cambien los cortes.',
  'layout.margin-y':
    'A lo largo, el cuarto puede ser {less} más corto o {more} más largo antes de que cambien los cortes.',
  'layout.soft-perimeter':
    'Deja junta suave de 1/4 pulg en cada pared: {perimeter} de cordón de respaldo, {tubes} {tubes|tubo|tubos} de sellador.',
  'movement.alone': '{few} {few|junta blanda|juntas blandas} por dentro, sin pasar de {high}; y todo alrededor.',
  'movement.alone-range':
    'De {few} a {many} juntas blandas por dentro, cada {low} a {high} en los dos sentidos; y todo alrededor.',
  'movement.alone-walls':
    'Con sol, agua o calor van más juntas, cada 2.4 a 3.7 m; las juntas de la losa se respetan. Dime la loseta y las pongo en junta.',
  'movement.from-left': 'Juntas por dentro desde la pared izquierda: {places}; {how}.',
  'movement.from-bottom': 'Juntas por dentro desde la pared de abajo: {places}; {how}.',
  'word.soft-on-joints': 'sobre juntas de boquilla',
  'word.soft-cut': 'se corta la loseta a lo largo',
  'movement.none-inside': 'No hace falta junta blanda por dentro; una en cada pared.',
  'layout.movement':
    '{lines} {lines|junta|juntas} de movimiento adentro ({inside}), y 1/4 pulg en cada pared ({perimeter}): {rod} de cordón de respaldo, {tubes} {tubes|tubo|tubos} de sellador. Las fuentes dicen cada {low} a {high}; aquí a {high}.',
  'layout.assumed-gap': '1/4 pulg de espacio en las paredes',
  'layout.work-room': '{room}: {cells} lugares = {whole} enteras + {cut} cortadas, {joints} de junta',
  'layout.work-axis': '{span} de lado a lado con loseta {tile}: peor corte {worst}',
  'word.piece-rectangle': 'recto',
  'word.piece-shaped': 'con forma',
  'table.room': 'cuarto',
  'table.length': 'largo',
  'table.width': 'ancho',
  'table.shape': 'forma',
  'table.count': 'piezas',
  'ask.room': '¿Qué forma tiene el piso? Dame sus lados, por ejemplo 10x13, o en L 12x14 menos 4x6.',
  'picture.wall': 'Pared {n}, {room}',
  'picture.title': '{room}',
  'picture.alt': 'Trazo de {room}: {cells} lugares, {cut} cortadas.',
  'picture.length': '{length}',
  'picture.distance': '{mm}',
  'picture.whole': 'loseta entera',
  'picture.cut': 'loseta cortada',
  'picture.start': 'línea de reventón',
  'picture.movement': 'junta de movimiento',
  'picture.hidden': 'aquí se esconden los cortes',
  'picture.hole': 'aquí no va loseta',
}
