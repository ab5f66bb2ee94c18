/** What a layout says beside its lines. */
export const layoutExtras = {
  'layout.offset-stair': 'Cada hilada se corre {step} ({share}) siempre al mismo lado: en escalera.',
  'layout.offset-back': 'Cada hilada se corre {step} ({share}) de ida y vuelta: una sí y una no quedan iguales.',
  'layout.random': 'Duelas salteadas: sin juntas cerca una de otra ni escalera; siempre igual cada vez que preguntes.',
  'layout.mismatch-long': 'El lado largo mide {mismatch} más que los cortos con sus juntas: lo absorben las juntas.',
  'layout.mismatch-short': 'El lado largo mide {mismatch} menos que los cortos con sus juntas: lo absorben las juntas.',
  'layout.angle': 'Girado {angle} grados: tira las líneas por esa esquina a ese ángulo.',
  'layout.measured-size': '{width} x {length}',
  'layout.measured-across': '{across}',
  'layout.nominal':
    'La loseta de {nominal} suele medir como {tile}: entonces son {cells} lugares (no {before}) y el corte más angosto {cut}. Mide una y dime: “la loseta mide …”.',
  'layout.nominal-rooms':
    'La loseta de {nominal} suele medir como {tile}: {rooms}. Mide una y dime: “la loseta mide …”.',
  'layout.nominal-in': 'en {room} entonces {cells} lugares (no {before}), corte más angosto {cut}',
  'layout.nominal-in-same': 'en {room} siguen {cells} lugares, pero con otras líneas, corte más angosto {cut}',
  'layout.hexagon': 'Hexágonos: dos lados van de abajo a arriba, cada hilera media pieza corrida.',
  'layout.two-sizes': '{large} grandes y {small} chicas de {side}, con cortes: cada chica en la esquina de una grande.',
  'ask.small-size': '¿De qué medida es la chica? Por ejemplo 6x6.',
  'layout.way-square': 'Loseta cuadrada: da igual para qué lado.',
  'layout.way-across': 'Corre el lado largo de izquierda a derecha: quedan mejores cortes.',
  'layout.way-up': 'Corre el lado largo de abajo hacia arriba: quedan mejores cortes.',
  'layout.sliver-x': 'Con junta de {joint}, {tiles} losetas enteras llenan los {span} a lo ancho, sin corte.',
  'layout.sliver-y': 'Con junta de {joint}, {tiles} losetas enteras llenan los {span} a lo largo, sin corte.',
  'layout.no-sliver-joint': 'Ninguna junta permitida llena el cuarto con losetas enteras; los cortes se quedan.',
  'pole.answer':
    'Regla para {length}: {whole} {whole|loseta entera|losetas enteras} desde cero, el último corte {left} (paso de {side} y {joint}).',
  'pole.all-whole':
    'Regla para {length}: {whole} {whole|loseta entera|losetas enteras} desde cero, sin corte (paso de {side} y {joint}).',
  'pole.marks': 'Marcas desde cero, orilla lejana de cada loseta: {marks}.',
  'pole.shared': 'Ese último corte es angosto: empezando con corte quedan {whole} enteras y {cut} en las dos puntas.',
  'pole.assumed-zero': 'cero es la orilla de la primera loseta, sin separación en las puntas',
  'pole.assumed-side': 'el lado de {side} va a lo largo de la regla',
  'pole.work':
    'La marca n es n x {side} + (n - 1) x {joint}, cada una desde cero; {whole} de ellas y una junta dejan {left} de {length}.',
  'cut-rules.answer':
    'Cortes de {tile}: {trade} {trade|loseta|losetas} como se acostumbra, {any} usando cualquier recorte, {fresh} con pieza nueva por corte.',
  'cut-rules.more':
    'Como se acostumbra cuesta {more} {more|loseta|losetas} más que con cualquier recorte y ahorra {saved} contra pieza nueva.',
  'cut-rules.alike': 'Las tres llevan lo mismo aquí: ningún recorte alcanza para otro corte.',
  'cut-rules.same':
    'Usar cualquier recorte aquí no ahorra nada sobre lo acostumbrado; pieza nueva por corte lleva {saved} más.',
  'cut-rules.buy': 'Con {whole} enteras y el sobrante son {buyTrade}, {buyAny} y {buyFresh} por comprar.',
  'cut-rules.meaning':
    'Lo acostumbrado pone orilla de fábrica hacia la vecina; con cualquier recorte puede verse ahí una orilla cortada.',
  'layout.pole-x': 'Regla desde la pared izquierda, orilla de cada loseta: {marks}.',
  'layout.pole-y': 'Regla desde la pared de abajo, orilla de cada loseta: {marks}.',
  'layout.no-pole': 'Para un trazo girado o tejido no hay regla: usa las líneas.',
  'word.pole-x': 'desde la pared izquierda',
  'word.pole-y': 'desde la pared de abajo',
  'table.direction': 'rumbo',
  'table.mark': 'marca',
  'table.distance': 'distancia',
  'layout.cut-row': '{count} x {length} x {width}',
  'layout.cut-row-shaped': '{count} x {length} x {width}, con forma',
  'layout.cut-rest': '{rest} medidas más en cut-list.csv.',
  'layout.left': 'Sobra: {pieces}.',
  'layout.left-row': '{count} x {length} x {width}',
  'layout.left-none': 'No sobra nada de más de 2 pulg.',
  'layout.directional': 'Cara con sentido: ninguna pieza se gira.',
  'layout.assumed-door': 'puerta en la pared {side}',
  'layout.slab-joints': '{lines} {lines|sigue una junta|siguen juntas} de la losa.',
  'layout.ask-exposure':
    '¿Le da sol, agua o calefacción? Dímelo: entonces cada {low} a {high}, de {few} a {many} líneas adentro.',
  'layout.movement-close': 'Si van cada {low}: {lines} adentro ({inside}), {tubes} {tubes|tubo|tubos} en total.',
  'ask.hide-wall': '¿En qué pared está: izquierda, derecha, arriba o abajo?',
  'picture.door': 'puerta',
  'layout.nominal-same':
    'La loseta de {nominal} suele medir como {tile}: siguen siendo {cells} lugares, pero cambian las líneas y el corte más angosto es de {cut}. Mide una y dime: “la loseta mide …”.',
  'niche.rough': 'Arma el hueco del nicho de {width} de ancho x {height} de alto.',
  'niche.clear': 'Terminado {width} x {height}: {across} de ancho y {up} de alto de {tile}, con las orillas en juntas.',
  'niche.framed':
    'Ese armado deja {width} x {height} por dentro de la loseta; las enteras más cercanas piden el armado de arriba.',
  'niche.place': 'Pon su base y un lado en juntas de la pared; revisa refuerzos, tubos y cables antes de cortar.',
  'niche.lining':
    'forrado con tablero de {board}, membrana, mezcla de {bed} y la loseta por cada lado; loseta acostada',
  'niche.work': '{tiles} x ({side} + {joint}) + {joint} + 2 x {lining} = {rough}',
  'ask.niche':
    '¿De qué medida es el nicho? Por ejemplo “nicho de 2 losetas de ancho 3 de alto”, o “nicho 12x24 pulgadas”.',
  'ledger.height': 'El canto de la regla de arranque va a {height} del punto más bajo del piso.',
  'ledger.cut': 'El piso sube {rise}: la primera hilada va entera en lo bajo y cortada hasta {cut} en lo alto.',
  'ledger.level': 'Primero busca el punto más bajo con el nivel; dime cuánto sube el piso (“desnivel de 1/2 pulgada”).',
  'ledger.lies': 'primera hilada de {course} de alto, {gap} de espacio abajo',
  'ledger.work': '{gap} de espacio + {course} de hilada + {joint} de junta',
  'word.fact-fullAt': 'dónde van enteras',
  'word.fact-hideAt': 'dónde se esconden los cortes',
  'word.fact-doorAt': 'la puerta',
  'word.fact-reuse': 'la regla de sobrantes',
  'word.fact-directional': 'cara con sentido',
  'word.fact-measuredMm': 'la loseta medida',
  'word.fact-slabJoints': 'las juntas de la losa',
  'layout.not-full': 'Losetas enteras en la pared {side} dejarían una tirita en otro lado: no se hizo.',
  'layout.first-and-bottom':
    'Primera línea: {one}; pon sobre ella una esquina de loseta a {bottom} de la pared de abajo.',
  'layout.first-and-left':
    'Primera línea: {one}; deja una esquina de loseta a {left} de la pared izquierda, medido a {bottom} de abajo.',
  'ask.small-tile':
    'Loseta tan chica o hexagonal viene en malla: la cuento por área. Para el trazo manda la malla como loseta, por ejemplo “mallas de 12x12”.',
}
