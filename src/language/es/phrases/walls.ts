/** Walls: courses round corners, openings on joints, the first course. */
export const walls = {
  'courses.answer':
    '{tiles} losetas de {tile}, con repuesto: {walls} paredes, hiladas a nivel en {corners} {corners|esquina|esquinas}.',
  'courses.wall':
    'Pared {n}, {length}: primera junta a {joint} de su orilla izquierda; piezas de {first} a la izquierda y {last} a la derecha.',
  'courses.wall-rows': 'Pared {n}, {length}, primera junta desde su orilla izquierda: {rows}; luego se repite.',
  'courses.row': 'hilada {row} a {joint} (piezas de {first} a la izquierda y {last} a la derecha)',
  'courses.bent':
    '{bent} {bent|loseta cortada|losetas cortadas} en {corners|la esquina|las esquinas}: lo que sobra sigue a la vuelta en la misma hilada.',
  'courses.on-joints': 'Las juntas caen en las esquinas: ahí no se corta nada.',
  'courses.meets':
    'Paredes todo alrededor: en la última esquina el patrón queda {off} fuera. Empieza y termina en la esquina que menos se vea.',
  'courses.one-course': 'Una hilada, cortada a {top}.',
  'courses.all-whole': '{courses} hiladas enteras de {bottom}.',
  'courses.shared': '{courses} hiladas: {bottom} abajo y arriba, enteras en medio.',
  'courses.courses': '{courses} hiladas: {bottom} abajo, {top} arriba.',
  'courses.places': '{area}: {cells} lugares, {whole} enteras, {cut} cortadas.',
  'courses.caulk': 'En las esquinas va sellador, no boquilla: {joint} abiertos.',
  'courses.lies': 'loseta acostada, lado largo a nivel',
  'courses.stands': 'loseta parada en su lado corto',
  'courses.faces':
    'largos de cara a cara de loseta, de izquierda a derecha viéndolas de frente, orillas libres hasta el borde; {gap} abiertos al piso y arriba',
  'courses.full-at': 'las enteras empiezan en la orilla {side}',
  'courses.balanced': 'cortes iguales en las dos puntas de la pared {n}',
  'courses.widest': 'arranque escogido para que la pieza más angosta de las esquinas sea la más ancha posible',
  'courses.sliver':
    'La pieza más angosta en una esquina queda de {mm} con cualquier arranque: ayuda otra junta u otra loseta.',
  'ask.walls-in-run': '¿Qué paredes y de qué alto? Por ejemplo: “paredes 3 pies, 5 pies, 3 pies, 8 pies de alto”.',
  'ask.level-pattern': 'Para eso van juntas a nivel: hiladas rectas o cuatrapeadas. ¿Cuál de las dos?',
  'ask.opening-wall': '¿De qué tamaño es la pared? Por ejemplo: “pared de 5 x 8 pies”.',
  'ask.opening-size': '¿De qué tamaño es el hueco? Por ejemplo: “30 x 40 pulgadas”.',
  'ask.opening-place': '¿Más o menos dónde va? Por ejemplo: “24 pulgadas de la izquierda, 40 del piso”.',
  'why.opening-does-not-fit': 'En esa pared no hay un lugar en juntas donde quepa. Revisa las medidas.',
  'opening.frame-niche':
    'Arma el hueco del nicho de {width} de ancho x {height} de alto, a {left} de la izquierda y {up} del piso.',
  'opening.frame-window':
    'Arma el vano de la ventana de {width} de ancho x {height} de alto, a {left} de la izquierda y {up} del piso.',
  'opening.finished':
    'Terminado {width} x {height}, {across} de ancho y {high} de alto de {tile}: orilla izquierda a {left}, base a {up} del piso, las cuatro orillas en juntas.',
  'opening.window':
    'Terminado {width} x {height}: orilla izquierda a {left}, base a {up} del piso; un lado y la base o el dintel en juntas.',
  'opening.moved': 'Se mueve {moves}.',
  'opening.left': '{mm} a la izquierda',
  'opening.right': '{mm} a la derecha',
  'opening.up': '{mm} hacia arriba',
  'opening.down': '{mm} hacia abajo',
  'opening.stays': 'Queda donde lo tenías.',
  'opening.lines':
    'Por las líneas de esta pared: las primeras enteras empiezan a {left} de la izquierda y a {up} del piso.',
  'opening.offset': 'Las hiladas van cuatrapeadas: sus lados dan en junta en cada hilada puesta como la de su base.',
  'opening.offset-valve': 'Las hiladas van cuatrapeadas: el cruce está solo en esa hilada.',
  'opening.check': 'Revisa refuerzos, tubos y cables antes de cortar.',
  'opening.shift':
    'Si no se puede mover, mueve las líneas: primeras enteras a {left} de la izquierda y a {up} del piso.',
  'opening.outlet': 'Pon la caja con su lado izquierdo a {left} de la izquierda y su base a {up} del piso.',
  'opening.notch':
    'Así un lado y su base o su parte de arriba dan en juntas: un recorte en escuadra, sin hoyo en la loseta.',
  'opening.power':
    'Corta la luz y compruébalo primero; mover una caja es trabajo de electricista donde el código lo pida.',
  'opening.plumber': 'Tubos y válvulas se mueven solo con el plomero.',
  'opening.box': 'una caja sencilla, {width} x {height}',
  'opening.centred': 'centrado entre izquierda y derecha',
  'opening.usual-height': 'base a unos {up} del piso',
  'opening.wall': 'pared de {length} x {height}, puesta desde su mejor arranque',
  'ledger.taper': 'En {over} son unos {each} más de corte por loseta hacia el lado alto.',
  'ledger.lost':
    '{rise} también se pueden perder en la junta del piso: losetas enteras y la junta un poco más ancha en el lado bajo.',
  'word.fact-roundCorners': 'hiladas a la vuelta de las esquinas',
  'word.fact-tileStands': 'loseta parada',
  'opening.valve-upright':
    'Centra la válvula a {left} de la izquierda: sobre una junta vertical, a {up} del piso como está.',
  'opening.valve-level':
    'Centra la válvula a {up} del piso: sobre una junta a nivel, a {left} de la izquierda como está.',
  'opening.nipped': 'Así se muerden dos losetas, sin hoyo con broca.',
  'opening.crossing': 'Donde se juntan cuatro losetas: a {left} de la izquierda y {up} del piso.',
  'why.drain-in-column':
    'La coladera no puede estar donde está la columna. Di dónde va, por ejemplo “coladera a 12 pulg de la pared izquierda”.',
  'opening.kept':
    'Si se queda en {width} x {height}: orilla izquierda a {left}, base a {up} del piso, un lado y la base o arriba en juntas; arma {framed} x {high}.',
  'shower.edge-column':
    'La columna tapa parte del piso, así que la orilla no va a nivel. Marcas pared por pared: {marks}.',
  'courses.sliver-full':
    'Enteras en esa orilla dejan {mm} en una esquina; con el mejor arranque la más angosta es de {best}.',
}
