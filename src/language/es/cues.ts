/** Spanish words that point to a rule, to its conditions, to trouble, and to what kind of answer is wanted.
 *  How a cue is written: language/cues.ts. The names are the subjects of config/rules.json. */
import type { CueTable } from '../cues.ts'

export const subjects: CueTable = {
  acid: ['^acido|muriatico|vinagre + velo|limpiar|limpio|boquilla|quitar|usar|mezcla + !cloro|amoniaco|mezclar'],
  'epoxy-skin': ['^epoxi|epoxy|endurecedor + toxic|piel|guantes|alergi|ronchas|peligros|vapores|malo|manos'],
  lead: ['plomo + pintura|prueba|esmalte|vieja|viejo|polvo|loseta|lijar + !a plomo|aplomo|desplomo'],
  'over-concrete': [
    'directo|derecho + sobre concreto|al concreto|sobre la losa|sobre losa|a la losa|sobre el firme|al firme + !pintad|sellad|grieta|humed|plano',
  ],
  'shower-board': ['^tablaroca|panel verde|panel de yeso|yeso|sheetrock|triplay + regadera|ducha|tina|mojad + !cuant'],
  waterproof: [
    '^impermeab + boquilla|tablero|necesit|hace falta|ocupo|regadera|ducha|sin|tengo que|detras|atras + !cuanto|cuanta|cuantas|manos de|bulto|galon|pegamento|thinset|modificad',
  ],
  'seal-grout': [
    'sellar|sellador|sello + boquilla|lechada + necesit|tengo que|debo|hace falta|cuando|ocupo|epoxi|obligatorio + !silicon|esquina',
  ],
  contact: [
    'cobertura|contacto + !bulto|saco|costal|rinde|rendimiento|pies cuadrados|m2|cubeta|cuantas losetas|numero de',
    'cobertura|contacto + necesit|minim|basta|alcanza|debe|pide|requier|lleva|suficiente|%|por ciento|porciento',
    '%|por ciento|porciento + esta bien|alcanza|basta|suficiente|se vale|pasa|permit|acept|poco|sirve|necesit|norma + regadera|ducha|mojad|humed|cama|piso|pared|patio|afuera|exterior|alberca|bano|seco|pasillo|entrada|cocina|piedra|marmol|cobertura|contacto|mezcla|pega|thinset|porche|balcon|sala|panel + !hr$|humedad|traba|desfas|traslap|cuatrap|desperdicio|sobrante|extra|pendiente|caida|losa',
    'mezcla|pega|pegamento|adhesivo|thinset + %|por ciento|porciento|cuanta|cuanto + detras|debajo|reverso|atras|transfer + !bulto|grues|galon',
    'cobertura completa|cama llena|cama completa|bien asentad',
    '% |por ciento + en una|en la|en el|en un|para una|para la|para un + regadera|ducha|vapor|alberca|patio|balcon',
  ],
  'contact-check': [
    'cuantas|cuantos + loseta|azulejo|pieza + levant|sac|revis|despeg',
    'levant|sac|despeg + loseta|azulejo|pieza + revis|cobertura|contacto|cada cuanto|cuantas',
    'revis|prueb|verific|checar|checo + cobertura|contacto|pegado + cada cuanto|cuantas|cuando|como',
    'una loseta|una pieza|una sola + basta|revis|levant',
  ],
  voids: [
    'hueco|hueca|vacio|bolsa de aire|sin mezcla + esquina|orilla|canto|borde|medida|grande|pulgada|esta bien|permit|cobertura',
    'esquina|orilla|canto + hueca|hueco|sin apoyo|vacia|sin mezcla',
  ],
  'spot-bonding': [
    'a punitos|punitos|a puntos|cinco puntos|5 puntos|pegotes|plastas|bolas de|donas|a pegotes|montoncitos',
    'puntos + mezcla|pega|thinset|adhesivo|loseta|azulejo|pared',
  ],
  'back-butter': [
    'embarr|untar atras|untar por detras|untar el reverso|doble encolado|doble untado|doble pegado|quemar atras|quemar el reverso|back butter|backbutter',
    'unt|embarr + loseta|reverso|atras|detras',
  ],
  ridges: [
    'remolino|direccion de los surcos|surcos|estrias',
    'surco|peinar|peine|peinado|rayas|lineas de la llana|estria + direccion|sentido|rectos|paralel|aplast|circulo',
    'llana + remolino|circulo|direccion|en que sentido|abanico',
  ],
  bed: [
    '1/16|1/8|3/32|1/4|3/8|1/2|3/16|5/16|mm + de cama|cama de|de mezcla|de thinset|de pega|de pegamento|debajo de la loseta + !cuantos|bulto|llana|diente|junta|boquilla',
    'grues|espesor|delgad|subir|levantar|cama + thinset|mezcla|mortero|pega|pegamento|gran formato + !loseta de|grueso de loseta|boquilla|charola|tablero|cuantos|bulto|sobre',
    'grues|subir|llegar|ir$ + thinset|mezcla|mortero|pega + max|limite|demasiado|puede|que tan',
    'minim|max + cama|mezcla|thinset|mortero + grues|espesor|debajo',
  ],
  'notch-size': [
    'que$|cual|correcta|medida + llana|diente + !bulto|rinde|cuantos|m2|pies cuadrados|membrana|corcho',
    'llana|diente + suficiente|muy chic|demasiado chic|alcanza|sirve|buena para|esta bien para|correcta + !bulto|quedan|pies cuadrados|m2',
  ],
  flatness: [
    'plano|plana|planicidad|planitud|desplome|fuera de plano|parejo|pareja + !boquilla|tarifa|plano de|junta|dibuja|grieta',
    'que tan plan|suficientemente plan|planicidad',
    "bajo$|bajos$|hoyo|lomo|panza|joroba|alto|hueco|variacion|ondulad|onda|desnivel|chipote|diferencia|desvio|bajada + en 10|en diez|10 pies|10 pie|diez pies|10'|en 2|2 pies|2 metros|3 metros|3 m$|2 m$|bajo la regla|debajo de la regla|con regla|regla de|en 6 pies|en 8 pies",
    'regla de 10|regla de 6|regla de 3|regla de 2|codal',
    'bajo|hoyo|lomo|panza|joroba + piso|losa|subpiso|pared|firme + plan|en |regla|pies|esta bien',
    'piso|losa|subpiso|pared|firme|concreto + tolerancia|ondulad|disparej|desparej|fuera de plano',
    "1/8|1/4|3/16|1/16|3/8|5/16 + en 10|en 2 pies|en diez|en 10'|en 3 m",
  ],
  'flat-level': [
    'a nivel|nivelad|el nivel + plan|tiene que|debe|necesit|hay que|hace falta|perfectamente + piso|loseta|losa + !autonivel|nivelador|compuesto',
    'fuera de nivel|desnivelad|no esta a nivel|sin nivel',
  ],
  'panel-edges': [
    'union|orilla|hoja|panel|triplay|plywood|osb|tablero + mas alt|escalon|ceja|diferencia|desnivel|salid|disparej + subpiso|triplay|plywood|osb|tablero|hoja|panel',
  ],
  'slab-ff': [
    '^losa|concreto|piso|plan + ff 2|ff 3|ff 5|ff 4|ff2|ff3|ff4|ff5|ff/fl',
    'ff$|numero f|ff20|ff25|ff30|ff35|ff50|fl$|ff/fl',
  ],
  'fill-with-mortar': [
    'thinset|mezcla|mortero|pega|embarr + nivel|empareja|emparej|rellen|llenar|levantar|subir|bajo$|bajos|hoyo|hundid|arreglar el piso + !autonivel|nivelante|nivelador|3/8|1/2|1/4|mucho mas de',
  ],
  'least-joint': [
    'rectificad|en linea|junta corrida + 1/16|1/8|3/16|1/32|3/32|2mm|3mm|2 mm|3 mm|1.5mm|mm + esta bien|alcanza|basta|se vale|puedo|permit|chic|angost + !ceja|plan|bajo|pared|traba|llana|diente',
    'minim|menor|mas chica|mas angosta + junta de pared|junta de piso|junta|sisa|separacion|cruceta',
    'chic|angost|apretad|minim|delgad|que tan|que medida|de cuanto|tamano + junta|sisa|linea de boquilla|separacion|espacio entre|cruceta|separador + !movimiento|expansion|control|pared sin|perimetro|max|ancha puede|silicon|sellador|tubo',
    'junta|sisa|cruceta|separador + esta bien|basta|alcanza|muy chic|muy angost|demasiado angost|demasiado chic|minim|permit|sirve|norma|necesit|puedo|podemos|debe + !con arena|sin arena|ceja|expansion|movimiento|control|bulto|frio|grieta|perimetro|losa',
    '1/16|1/8|3/16|1/32|3/32|2 mm|2mm|3mm|3 mm + junta|sisa|cruceta|separador + esta bien|basta|alcanza|muy|demasiado|permit|puedo|rectificad|sirve|norma + !ceja|con arena|sin arena|pared|perimetro|movimiento|expansion|varia|cuanta|bulto',
    'varia|variacion|diferente medida|distinta medida|calibrador|vernier + loseta|azulejo|junta|medida',
    'rectificad + junta|sisa|apretad|espacio + !ceja',
  ],
  'butt-joint': [
    '^a hueso|al hueso|a tope|sin junta|sin boquilla|sin sisa|sin separacion|sin espacio entre|junta cero|cero junta + loseta|rectificad|juntas|puedo|podemos|esta bien|duela|boquilla|se puede + !pared|muro|movimiento|expansion',
    'pegaditas|pegadas una con otra|tocandose|se toquen|sin crucetas|sin separadores + loseta|azulejo|rectificad|duela',
  ],
  'widest-joint': [
    'ancha|anchas|maxim|max$|mas grande|mas ancha + junta|sisa|boquilla + !movimiento|expansion|pared|perimetro|chic|minim|silicon|control|ancho de',
  ],
  lippage: [
    '^ceja|cejas|lippage|filo entre|filos',
    '^una loseta|orilla|orillas|canto + mas alta|mas arriba|diferencia de altura|mas baja|salida + otra|vecina|de al lado|que la|siguiente',
    'ceja|lippage|filo$|filos|tropez|escaloncito',
    'orilla|una loseta|canto + mas alta|salida|levantada + que la|otra|vecina|1/32|1/16|mm|cuanto',
  ],
  offset: [
    'traba$|trabad|desfas|cuatrap|traslap|tipo ladrillo|a media|matajunta|mata junta|intercalad|desplaz + !agujero|inodoro|coladera|brida|pared de ladrillo|membrana|rollo',
    'mitad|50$|tercio|1/2$|33$|1/3$|cuarto + traba|desfas|cuatrap|traslap|ladrillo|patron|intercal',
    'media junta|a media junta|media pieza',
    'a la mitad|50 %|50 por ciento|50/50|mitad + duela|8x48|6x36|12x24|6x24|9x48|tipo madera|8x36|6x48',
  ],
  'perimeter-gap': [
    '^que tan cerca|que tan pegad + pared|muro|gabinete|tina',
    '^perimetr + junta|espacio|holgura',
    '^espacio|holgura|junta|separacion|luz + en la pared|en el muro|en las paredes|contra la pared|junto a la pared|con la pared|y la pared|al muro|en el perimetro|alrededor del cuarto|en los gabinetes|en la tina|en el poste|orillas del cuarto + !esquina|plan|sin espacio|sol|ventanal',
    'espacio|holgura|separacion|junta + pared|muro|perimetro|orilla del cuarto|gabinete|zoclo|poste|columna|tina + cuant|dej|grande|puede|debe|ancho|requier|minim|que tan + !movimiento|sol|plan|sin espacio|minima de pared|minimo de pared|ceja|juntas de',
  ],
  'tight-to-wall': [
    '^pegad|pegar|apretad|a tope|topar|topad|tocar|boquilla|sin espacio|hasta + contra la pared|a la pared|hasta la pared|contra el muro|al muro|contra los gabinetes|al zoclo + !regadera|plan|cuanto espacio|resbal|azulejo de|como pego',
  ],
  movement: [
    'tramo|tramos|pano|panos + calefac|radiante|piso|medida|que tan grande|firme',
    'junta de movimiento|juntas de movimiento|junta de expansion|juntas de expansion|junta suave|juntas suaves|junta de dilatacion|juntas de dilatacion|ej171 + cada cuanto|cada|que tan lejos|separacion|necesit|donde|cuantas|lleva|requier|pies|metros|afuera|adentro|patio|sol|losa|radiante|inglaterra|australia|hace falta|hay que|van$ + !ancho|ancha|que tan ancha|esquina|sobre una|encima|grieta',
    'expansion|dilatacion|movimiento + junta + !ancho|ancha|sobre una|encima',
    'sin + juntas de expansion|junta de expansion|movimiento|dilatacion + piso|cuarto|loseta|corrido',
    'cada + pies|metros + junta|expansion|movimiento|dilatacion',
  ],
  'movement-width': [
    'ancho|ancha|que tan ancha|de que ancho|medida|grueso + junta de movimiento|junta de expansion|junta suave|dilatacion|expansion|movimiento + !perimetro|en la pared',
  ],
  'change-of-plane': [
    '^boquilla|silicon|sellador|calafate + se juntan|se junta con|cambio de plano|encuentro|la esquina|las esquinas|rincon|rincones|y la tina',
    'boquilla|silicon|sellador|calafate + esquina|cambio de plano|plano|rincon|tina|piso con pared|pared con pared|nicho|sardinel + !bulto|espacio',
    'cambio de plano|cambios de plano|esquina interior',
  ],
  'slab-joints': [
    '^subir|subo|respet|continuar|seguir|pasar + junta de control|junta de la losa|juntas de la losa|corte de sierra|junta de expansion|junta fria',
    'sobre|encima|atraves|cubrir|ignorar|rellenar|saltar|pasar + junta de control|junta de expansion|corte de sierra|junta de la losa|junta fria|junta de construccion|junta de contraccion',
    'junta de control|corte de sierra|junta fria + losa|concreto|loseta|respet|sobre|debajo + !cada cuanto|separacion',
  ],
  'grout-type': [
    'con arena|sin arena|arenada + !bulto|bultos|cuanta|cuanto|libras|kilos|agua|silicon',
    'con arena|sin arena|arenada + junta|en|para|o|esta bien|puedo|sirve|uso',
    'boquilla + vidrio|pulid|marmol|raya + arena|que$|cual|tipo',
    'que$|cual|que tipo|que clase + boquilla + junta|para + !cuanta|agua|temperatura|cuanto tiempo|bulto|frio|esquina|cuando|minim|ceja|ancha puede|kilos|max',
  ],
  'grout-depth': [
    'boquilla + hond|profund|mezcla en|sobre mezcla|sobre thinset|dos tercios|2/3|limpiar|raspar + junta',
    'mezcla|thinset|pega + llena de mezcla|en las juntas|en la junta|entre las losetas|se salio|se subio|en mis juntas + !velo|varia',
  ],
  'grout-temperature': [
    'emboquill|boquilla|lechad + 35f|38f|40f|42f|45f|48f|50f|52f|55f|95f|100f|45 f|50 f|55 f|40 f|frio|calor|caliente|temperatura|grados|f$|a 50|a 45|a 40|a 95|a 100 + !pegamos|cuando|cuanto tiempo|espero|bulto|agua|cuanta|ayer|pusimos|am$|pm$|noche',
  ],
  'grout-wait': [
    'emboquill|boquilla|lechad + esta noche|hoy|ahorita|ya$|mismo dia|esta tarde|manana|luego luego|que tan pronto|temprano|demasiado pronto|al otro dia|despues de comer + puedo|podemos|esta bien|se puede|debo|demasiado|seguro|cuando + !quit|velo|emboquillamos ayer',
  ],
  retemper: [
    'empezo a fraguar|ya fraguo|esta fraguando|se puso dura|ya esta dura + agua|mezcla|mortero|boquilla|thinset|pega',
    'agua + echar|echarle|echo$|agreg|ponerle|mas agua|aguadar|aflojar|rebajar|revivir|un chorrito|salpic + mezcla|boquilla|thinset|pega|cubeta|dura|tanda + !cuanta|cuanto|por bulto|epox|galon|litros|medio bulto|para un',
    'revivir|rebatir|remezclar|aflojarla|resucitar + mezcla|boquilla|thinset|dura|pega',
  ],
  slake: [
    'dej|repos|descans + mezcla|thinset|boquilla|mortero|cubeta|pega|dejarla + hay que|tengo que|de veras|necesit|antes|hace falta|cuanto + !pegar|loseta|charola|pisar|frio|curar|secar',
    'repos|segunda batida|dejarla descansar + !charola|cuantos|losa',
  ],
  'mix-speed': [
    'rpm|revoluciones|velocidad del taladro|velocidad de la batidora',
    'velocidad|rapido|que tan rapido + bat|mezcl|taladro|propela + !fragu|seca|secado',
  ],
  'epoxy-water': ['epox + agua|rebaj|medio|medio kit|partir|parcial|menos endurecedor|mitad|media'],
  'membrane-mortar': [
    'modificad|sin modificar|polimero + membrana|desacople|manta|impermeab|debajo|sobre|arriba|espuma|antifractura|liquida',
    'que$|cual + thinset|mezcla|pegamento|mortero + membrana|desacople|espuma|antifractura + !cuantos|bulto|llana|diente',
  ],
  mastic: [
    'mastique|mastic|premezclad|pegamento de cubeta|adhesivo de cubeta|pasta lista|adhesivo organico|pegamento listo|ya preparado + !negro|viejo|quitar|raspar|desbast|asbesto|llana para',
  ],
  'min-temperature': [
    'frio|helada|hela$|congel|temperatura|grados|minima|40 f|35 f|45 f|38 f|menos de 40 + peg|loseta|instal|poner|coloc|thinset|mezcla|afuera|losa|trabaj + !boquilla|emboquill|cuando|cuanto tiempo|vida util|pisar|agua|calefac|dejo|bulto',
  ],
  'keep-warm': [
    'manten|dej|prendid|conserv + calefac|calor|caliente|calenton|temperatura + despues|cuanto tiempo|noche|dias|horas + !piso radiante|radiante|cable|malla calef',
  ],
  'slab-age': [
    'colad|colaron + dias|dia|semanas|semana|mes|hace|ayer',
    'vieja|edad|semanas|semana|dias|meses|mes|curar|nueva|nuevo|fresc|colada|espero|esperar + losa|concreto|firme|cimiento + piso|loseta|list|espero|esta bien|puedo|podemos|antes|pegar|poner|cuando|cuanto + !hr$|humedad|libras|lectura|grieta|vinil|adhesivo|pintura|sulfato|anhidrita|yeso|radiante|postensad|junta',
  ],
  'screed-sulfate': ['anhidrita|sulfato de calcio|firme de yeso'],
  'slab-humidity': [
    'hr$|rh$|humedad relativa|humedad|f2170|sonda + losa|concreto|firme|marca|lectura|limite|max|esta bien|loseta|piso|que$|cuanta|alta|demasiad|permit|%|por ciento + !agujero|hoyo|cuantos|anhidrita|sulfato|profund|cloruro|libras|cada cuanto',
  ],
  'slab-emission': [
    'cloruro de calcio|emision de vapor|mver|f1869|emision|prueba de vapor|libras por 1000|libras por mil|lb por 1000',
  ],
  'slab-holes': ['cuantos|que tan hondo|profund|hondo|donde + agujero|hoyo|sonda|f2170|prueba de humedad'],
  deflection: [
    'deflexion|l/360|l360|l/720|l720|l/480|l/240|flexion del piso',
    'viga|vigas|vigueta|2x10|2x8|2x12|2x6|claro + loseta|piedra|esta bien|alcanza|aguant|marmol|soport|carg|entre centros|oc$ + !viga i|vigas i|armadura|muesca|taladr|volad|reforz',
  ],
  'dead-load': [
    'carga muerta|peso muerto|psf muerta',
    'psf|libras por pie + loseta|muerta|carga del piso|bastan|alcanzan + carga|muerta',
  ],
  'engineered-joists': [
    'viga i$|vigas i$|i joist|tji|armadura|truss|lvl|viga de ingenieria|volad|viga con muesca',
    'viga|vigueta + muesca|taladr|agujero|cort|rajada|reforz|podrid|partida',
  ],
  'over-vinyl': [
    'vinil|vinilo|linoleo|linoleum|resiliente|vct|piso vinilico + sobre|encima|arriba|dejar|quedar + !clic|1970|1965|1985|asbesto|desbast|raspar|lijar|quitar|arrancar',
  ],
  'over-tile': [
    'sobre|encima|arriba + loseta vieja|piso viejo|azulejo viejo|loseta existente|piso existente|azulejo existente|ceramica vieja|mosaico viejo|terrazo|piso de ceramica|otra loseta',
  ],
  'over-cutback': [
    '^sobre|encima + adhesivo negro|pegamento negro|mastique negro|chapopote|brea|residuo negro + !desbast|lijar|raspar|quitar|asbesto',
    'adhesivo negro|pegamento negro|mastique negro|chapopote|adhesivo asfaltico + !desbast|lijar|raspar|quitar|asbesto',
  ],
  'bond-breaker': [
    'pintura|pintad|sellador|sellad|curador|cera|brisa de pintura|barniz|aceite|grasa|poliuretano|tinte + sobre|encima|concreto|losa|esta bien|puedo|loseta|peg|agarr|quitar|pared + !boquilla|sellar la|despues|esquina|silicon',
  ],
  'slab-crack': [
    'grieta|grietas|agriet|rajad|fisura + losa|concreto|firme|en el piso|de pelo|contrapiso + !loseta quebrada|boquilla|junta de control|corte de sierra|hilera',
  ],
  asbestos: [
    'asbesto + !lij|desbast|raspar|quitar|arrancar|romper|taladr|cort',
    'asbesto',
    '9x9|9 x 9 + viej|vinil|loseta|piso|segur',
  ],
  'asbestos-age': [
    '^construid|casa|edificio|ano|mas nuevo|de 19|de 20|19|20 + asbesto + entonces no|no tiene|no hay|libre|sin asbesto|seguro|verdad|nueva|despues',
    '^asbesto + sin asbesto|libre de|no puede tener|muy nueva',
  ],
  'asbestos-sand': [
    'lij|desbast|raspar|raspo|quitar|quito|arrancar|arranco|romper|rompo|demoler|despegar + adhesivo negro|pegamento negro|mastique negro|vinil viejo|vinil|asbesto|linoleo|9x9|fieltro|resiliente|piso viejo de vinil|vct|adhesivo viejo + !con arena|boquilla',
  ],
  'mortar-choice': [
    '^thinset normal|thinset comun|thinset corriente|mezcla normal|pegamento normal|thinset barato|thinset regular + debajo|en|para|con|uso|esta bien|loseta|24 + !grues|subir|max|membrana|que tan',
    '^que|cual|tipo + thinset|mezcla|pegamento|mortero + para + 2|loseta|grande|porcelanato|duela + !membrana|bulto|cuantos|m2|pies cuadrados|llana|diente|grues|tablero|desacople',
  ],
  'need-membrane': [
    '^necesit|hay que|tengo que|debo|hace falta|requier + membrana|desacople|antifractura|desacoplante + !thinset|mezcla|modificad|cuantos|rollos|laminas|cuanta|grieta|regadera|ducha|impermeab|m2|pies cuadrados',
  ],
  bouncy: [
    '^brinca|rebota|se mueve el piso|se siente flojo|se hunde al pisar|flojo|cede + piso|loseta|subpiso|puedo|se puede|esta bien + !deflexion|l/360|l/720',
  ],
  subfloor: [
    '^triplay|plywood|osb|subpiso|contrachapado + grues|espesor|alcanza|basta|que tan grues|1/2|5/8|3/4|entre centros|una capa|dos capas|segunda capa|doble + !loseta sobre|sobre osb|sobre triplay|union|plan|desnivel|tornillo|mas alt|vinil|en 10',
  ],
  'heat-wait': [
    'radiante|calefac|calefactor|piso calef|cable calef + prend|encend|espero|esperar|cuando|cuanto tiempo|usar|cure|curar|secar|rapido + !frio|calenton|resistencia|ohm|prueb|atornill|clav|taladr|movimiento|tramo|despues de pegar|revis',
  ],
  'heat-resistance': [
    '^revis|prueb|med|checo|checar|ohm|resistencia|megger + cable calef|malla calef|cable|calefac|radiante',
    'resistencia|ohm|ohms|megger|continuidad + !resbal|dcof|derrap',
  ],
  'heat-fastener': [
    'atornill|tornillo|clav|grapa|taladr|cortar|anclar|inodoro|tope de puerta|umbral + calefac|radiante|cable calef|malla calef|piso caliente',
  ],
  'shower-slope': [
    'pendiente|caida|inclinacion|desnivel + regadera|ducha|charola|coladera|drenaje|sardinel|banca|nicho|membrana|por pie|cuanta|cuanto|alcanza|basta',
  ],
  'over-wood': [
    'sobre|encima|directo + osb|triplay|plywood|madera|aglomerado|piso de madera|subpiso|tablas|tarima + !bulto|plan|bajo|union|deflexion|viga|tornillo|que tan grues|tipo madera|espesor|nivel|vinil|en 10|transicion|cuantas',
  ],
  primer: [
    'primer$|imprimad|imprimante|primario|sellador + autonivel|nivelante|nivelador|losa|necesit|saltar|hace falta|antes|espero|concreto|sin + !pintura',
  ],
  hot: [
    'calor|caliente|100 grados|95 grados|en el sol|sol directo|rayo de sol|solazo|a 100 + peg|loseta|poner|demasiado|thinset|mezcla|instal|trabaj|esta bien + !boquilla|emboquill|radiante|movimiento|expansion|agua|cubeta|junta|vida util',
  ],
  dcof: [
    'dcof|cof$|resbal|antiderrap|derrap|friccion|coeficiente|traccion|0.42|.42 + !boquilla|se resbala el azulejo|azulejo de la pared|hacia abajo',
  ],
  'flood-test': [
    'prueba de agua|prueba de inundacion|prueba de fugas|inundar|prueba de estanqueidad + regadera|ducha|charola|membrana|cuanto|necesit|saltar|hace falta|24|dura',
  ],
  'weep-holes': ['lloradero|lloraderos|weep|agujeros de la coladera|hoyos de la coladera'],
  'half-tile': [
    'corte$|cortes|pedazo + medida|que tan chico|minim|pulgada|muy chic|demasiado chic|esta bien + !boquilla|junta|clip|disco|ceja|vinil|tablero|seco|esmeril|cuantos|cable',
    'tirita|tirilla|tiritas|corte chico|corte angosto|corte delgado|media loseta|menos de la mitad|menos de media|pedacito|corte de 2 pulgadas|corte de 1 pulgada + !rodill|junta|boquilla|vinil|hueco|nivel',
  ],
  spares: [
    'cuanto|cuanta|que porcentaje|por ciento|% + extra|desperdicio|sobrante|merma|de mas + compr|pid|loseta|debo|necesit|diagonal|espina|recto|normal|alcanza + !bulto|m2|pies cuadrados',
  ],
  'dry-cutting': [
    'cortar en seco|corte en seco|corto en seco|en seco|sin agua|sierra en seco|esmeril|grinder|pulidora + cort|desbast|adentro|loseta|porcelanato|concreto|mezcla|boquilla|raspar|polvo',
    'silice|polvo + desbast|cort|mascarilla|respirador|aspiradora|limite|raspar|como|necesit',
  ],
  'acid-bleach': [
    'cloro|acido|muriatico|vinagre|amoniaco + mezcl|junt|con|y + cloro|acido|muriatico|vinagre|amoniaco|limpiador',
    'cloro|acido|muriatico + boquilla|velo|loseta|usar|limpi|puedo|esta bien',
  ],
  'post-tension': ['postensad|postension|post tensad|pos tensad|cables tensados'],
  'gas-electric': [
    'gas$|electric|cableado|220|240 v|conexion fija + estufa|horno|secadora|linea|conect|desconect|aparato|reconect|contacto|mover',
  ],
  gfci: ['gfci|gfi|falla a tierra'],
  'bag-lift': [
    'cargar|cargo|levantar|levanto|carga|duele la espalda|que tan pesad + bulto|bultos|saco|sacos|costal|50 libras|tarima|solo|un hombre|una persona|panel',
  ],
  respirator: [
    '^respirador|mascarilla|cubrebocas|n95|apf + raspar|desbast|cort|mezcl|bat|polvo|necesit|boquilla|uso|barrer|demol + !en seco|esmeril adentro|mezcl|bat',
  ],
  'mixing-dust': ['^respirador|mascarilla|cubrebocas|n95|apf + mezcl|bat'],
  'niche-depth': ['^nicho + hond|profund|fondo + !ancho'],
  'modified-mortar': [
    '^modificado o|modificado vs|modificado contra|sin modificar o|con o sin polimero + !cuantos bultos|membrana',
    '^modificad|sin modificar + porcelanato|loseta densa + necesit|cual|diferencia|mejor|lleva|debo + !cuantos bultos|membrana',
  ],
  'cement-skin': [
    'quema|quemad|piel|guantes|manos|rodillas|rodilla|ojos|ojo|sarpullido|sin guantes + thinset|mezcla|cemento|boquilla|concreto|mojad|pega + !quemar atras|m2|rinde',
  ],
}

/** What the message says of the place, the tile and the work, by condition and value. */
export const conditions: Readonly<Record<string, CueTable>> = {
  hands: {
    two: [
      'entre dos|entre 2|entre los dos|somos dos|somos 2|dos personas|2 personas|dos hombres|2 hombres|con mi ayudante|con mi companero|con mi compa|con ayuda',
    ],
  },
  place: {
    wet: [
      'regadera|ducha|tina|vapor|alberca|piscina|jacuzzi|area humeda|zona humeda|area mojada|lugar mojado|lugar humedo|fuente|mojad + !cortadora|cemento mojado|mezcla mojada|dcof en mojado',
      'sumergid|sauna|lavadero',
    ],
    exterior: [
      'afuera|exterior|patio|porche|balcon|entrada de carros|terraza|fachada|corredor de afuera|andador|intemperie|banqueta',
    ],
    dry: [
      'seco|seca + !en seco|se seca|secar|secado|mezcla seca|ya seco|cortar',
      'recamara|sala|pasillo|closet|comedor|cocina|salpicader|entrada|recibidor|oficina|tienda|corredor|sotano|chimenea|piso interior|interior seco|lobby|escalera|panaderia|lavanderia|pared interior|adentro|dormitorio|bodega',
    ],
  },
  surface: {
    wall: [
      'pared|paredes|muro|muros|salpicader|vertical|fachada + !en la pared|contra la pared|a la pared|con la pared|junto a la pared|hasta la pared|de la pared|espacio',
      'detras + panel|loseta|azulejo',
      'en pared|en la pared la|paredes de|de pared|la pared para|pared para|pared plana|plana la pared',
    ],
    floor: ['piso|losa|subpiso|patio|pasillo|entrada|suelo'],
  },
  material: {
    stone: [
      'piedra|marmol|granito|travertino|pizarra|onix|cantera|caliza|basalto|laja + !tipo piedra|tipo marmol|imitacion',
    ],
    panel: ['panel|paneles|porcelanato delgado|lamina de porcelanato|lastra + !tablero de cemento|panel de cemento'],
  },
  bond: {
    running: [
      'trab|desfas|cuatrap|traslap|ladrillo|tercio|a la mitad|50/50|intercalad|matajunta|1/3$|33$ + !pared de ladrillo|sin traba|media pulgada|medio bulto|la mitad de un',
    ],
    stacked: ['en linea|junta corrida|cuadricula|sin traba|a hilo|apilad|junta recta'],
  },
  facing: {
    rectified: ['rectificad + !no rectificad|sin rectificar'],
    calibrated: ['calibrad|orilla prensada|prensad|no rectificad|sin rectificar|orilla redonda'],
  },
  exposure: {
    exterior: ['afuera|exterior|patio|porche|balcon|terraza|entrada de carros|andador|intemperie'],
    sun: ['sol$|sol |asolead|ventanal|ventanales|pared de vidrio|tragaluz|domo|vidriera|aparador|puerta corrediza'],
    wet: ['regadera|mojad|alberca|humedad|vapor|cocina comercial|ducha + !cemento mojado'],
    heated: ['calefac|radiante|piso caliente|cable calef|malla calef'],
    suspended: ['entrepiso|segundo piso|planta alta|losa elevada|losa en el aire|tercer piso|de arriba'],
    interior: ['interior|adentro|sala|cocina|pasillo|tienda|lobby|recamara|sotano|oficina|local|bodega|corredor'],
  },
  grout: {
    unsanded: ['sin arena|no arenada'],
    sanded: ['con arena|arenada + !no arenada'],
  },
  face: {
    soft: ['pulid|vidrio|marmol|esmalte suave|onix|espejo|metal|se raya + !fibra de vidrio|pared de vidrio'],
  },
  mortar: {
    large: ['gran formato|lft|lht|pieza grande|grande y pesad|formato grande'],
    thin: ['thinset normal|thinset comun|capa delgada|mezcla normal|thinset + !gran formato|pieza grande|lft'],
  },
  bound: {
    least: [
      'minim|menos|que tan delgad|muy delgad|alcanza|por lo menos|al menos|debe|tiene que + !max|demasiado grues|subir|puede ir',
    ],
    most: [
      'max|cuando mucho|demasiado grues|que tan grues|subir|hasta|limite|puedo|podemos|puede ir|mas grues + !minim|demasiado delgad|al menos|por lo menos|debe|tiene que',
    ],
  },
  crack: {
    step: ['escalon|diferencia de altura|mas alt|ceja|un lado|vertical|disparej + grieta|grietas|fisura|rajad'],
    moving: ['se mueve|crece|creciendo|se abre|abriendo'],
  },
  base: { screed: ['firme|firmes'], slab: ['concreto|losa|hormigon'] },
}

/** Sizes by a word, where no figure was said. */
export const sizes: CueTable = {
  large: [
    'gran formato|loseta grande|piezas grandes|pieza grande|porcelanato grande|azulejo grande|duela|tipo madera|formato grande|losetas grandes + !mortero gran formato|mezcla gran formato|mezcla de gran formato|thinset gran formato',
  ],
  small: ['mosaico|subway|loseta chica|azulejo chico|formato chico|hexagono chico|losetas chicas'],
}

/** How it is asked: may it be so, must it, may it be left out, is it wrong; or nothing of the kind. */
export const stances: CueTable = {
  skip: [
    'saltar|me puedo saltar|nos saltamos|sin necesidad|evitar|no hace falta|no necesito|omitir|ahorrar',
    'puedo|podemos|esta bien|se puede + saltar|omitir|dejar de|sin primer|sin imprimad|sin membrana|sin reposar|sin embarrar|sin prueba',
  ],
  need: [
    'necesito|necesita|necesitamos|tengo que|tenemos que|tiene que|hay que|debo|debe|debemos|requier|obligatori|es necesario|hace falta|es forzoso|a fuerza|de veras|o no + !demasiado|que tan|como|cual|cuando|alcanza|donde|cuanto|cuanta|cuantos|cuantas',
  ],
  may: [
    'esta bien|estan bien|ta bien|puedo|podemos|se puede|puede |pueden|se vale|permit|legal|acept|pasa|pasan|alcanza|basta|bastan|suficiente|segur|sirve|sirven|funciona|posible|dentro de norma|cumple|es correcto|correcto|hay problema si|la libra|verdad|jala + !cuanto|cuanta|cuantos|cuantas|cuando|que llana|cual|no alcanza|demasiado|que tan|cada cuanto|donde',
    'puedo|podemos|se puede|esta bien + como + !cuanto|cuanta|que tan|cada cuanto',
  ],
  'too-much': [
    'demasiado|demasiada|muy|mucho|mucha + grande|alt|ancho|ancha|grues|calor|caliente|larg|viej|disparej|inclinad|lejos|much|separad',
    'excesiv|fuera de norma|pasa del limite|se pasa|fuera de tolerancia',
  ],
  'too-little': [
    'demasiado|demasiada|muy|mucho + baj|chic|delgad|apretad|frio|fria|pronto|temprano|angost|poc|nuev|fresc|cort|cerca|plan|mojad',
    'no alcanza|no basta|no es suficiente|no sera suficiente|muy poco',
  ],
  wrong: [
    'es malo|esta mal|mal hecho|problema|rechaz|falla|contra norma|contra codigo|ilegal|defect|inaceptable|hay que arreglar|tengo que arreglar|hay que rehacer|hay que desbastar|tengo que desbastar|hay que emparejar|me preocupo',
  ],
  ask: [
    'quien|quienes',
    'o$ + !o no|o menos|o mas|o algo',
    'donde + !donde la|donde esta',
    'cuanto|cuanta|cuantos|cuantas|que tan|cada cuanto|cual|cuales|que tan|que medida|que tipo|que cobertura|que junta|que espacio|que llana|que diente|que deflexion|que dcof|que edad|que porcentaje|a que|de que|cuando|dime|minim|maxim|tolerancia|limite|norma de|de cuanto',
  ],
}

/** Trouble in mid-job: the names are the entries of config/trouble.json. */
export const troubles: CueTable = {
  'stiff-mortar': [
    'se esta poniendo dur|se puso dur|se pone dur|endurec|espesando|fraguando|se esta pasando|tiesa|ya esta dura|se me hace dura|dura rapido + cubeta|mezcla|mortero|thinset|pega|rapido|bote|boquilla|ya + !echar agua|echarle agua|puedo|agua a la',
  ],
  skinned: [
    'hizo piel|hace piel|haciendo piel|con piel|formo piel|piel encima|se reseco|costra|seca por encima|ya no pega|ya no mancha',
  ],
  'hollow-sound': [
    'suena hueco|suena hueca|suenan huecas|suenan huecos|sonido hueco|hueca|huecas|suena vaci|al golpear + !esquina hueca|esta bien|hueco de',
  ],
  'ridges-showing': [
    'surcos|surco|rayas|estrias|marcas de la llana + se ven|todavia|siguen|parados|no se aplast|reverso|levante|sin aplastar',
  ],
  lippage: [
    'ceja|cejas|lippage|filos|orillas salidas + saliendo|me sale|tengo|hay|veo|mucha|siempre|por que|por todos lados|como arreglo|duela|loseta|que hago',
    'loseta|esquina|orilla|duela + salida|mas alta que|levantada',
  ],
  sliding: [
    'resbala|resbalan|resbalando|escurr|se baja|se bajan|se cae|se caen|se desliz|se va para abajo|se cuelga + pared|loseta|azulejo|abajo|regadera|mosaico|hilera + !resbalos|piso|pisar',
  ],
  'blotchy-grout': [
    'manchad|manchas|dispareja de color|disparejo de color|otro tono|tonos|sombread|color dispar|distinto color|clara y oscura|decolor + boquilla|junta|seco|color|lechada',
  ],
  'powdery-grout': [
    'polvo|polvosa|se hace polvo|se desmorona|desmoron|se deshace|gis|blanda|arenosa|se sale|se despega|se talla + boquilla|junta|juntas|lechada + !blanco|blanca|polvo de silice|mascarilla|respirador',
  ],
  'cracked-grout': [
    'agriet|grieta|grietas|cuarte|se abre|se separa|se encog|fisura + boquilla|junta|juntas|esquina|lechada + !loseta quebrada|losa|control|puedo',
  ],
  'white-bloom': [
    'blanco|blanca|salitre|eflorescencia|sal$|sales|gis + polvo|velo|sale|saliendo|boquilla|mancha|pelicula|costra|encima + !boquilla blanca|loseta blanca|cuantos|bulto',
    'eflorescencia|salitre',
  ],
  'cracked-tile': [
    'loseta|losetas|azulejo|porcelanato|duela|piso + quebr|se quebro|rota|rotas|se rompio|se partio|partida|rajada|se rajo|estrellad + !sierra|cortadora|losa|boquilla|caja|llego|sobre una grieta|cuando corto|junta de control|concreto',
  ],
  'slab-crack-row': [
    'grieta|rajada|fisura + losa|concreto|firme + hilera|fila|debajo|siguiente|halle|encontre|hay una|se mueve|abre|escalon|salio',
  ],
  froze: [
    'helo|congelo|se helo|congelad|helada|bajo de cero|se congelo + anoche|noche|loseta|mezcla|thinset|pega|peg|cubeta|boquilla',
  ],
  'rained-on': [
    'llovi|lluvia|llovio|aguacero|se mojo|tormenta|chubasco + loseta|patio|peg|fresc|boquilla|encima|mezcla|afuera|anoche|piso',
  ],
  'mastic-large-tile': [
    'mastique|mastic|premezclad|pegamento de cubeta|adhesivo de cubeta|adhesivo organico + usaron|debajo|ya|sigue blando|anterior|ayudante|halle|pusieron|alguien + !puedo|podemos|se puede|esta bien|negro',
  ],
  'slippery-floor': [
    'resbalos|resbala|derrap|lisa + loseta|piso|bano|regadera|esta|muy|mojad|entrada + !pared|hacia abajo|azulejo',
  ],
  'loose-tile': [
    'suelta|sueltas|floja|flojas|se despeg|se solto|se levanto|se desprend|se cayo|se cae|despegad|se mueve al pisar|bailan|baila + loseta|losetas|azulejo|piso|pared|regadera|pieza + !clip|cuna|cuantas|carpa|boquilla se|puedo',
  ],
  'soft-mortar': [
    'thinset|mezcla|mortero|adhesivo|cama|pega + blanda|blando|no fragua|no ha fraguado|no endurec|sigue mojad|sigue fresc|chicloso|chiclosa|no seca|no ha secado|no cura + !cobertura|area',
  ],
  haze: [
    'velo|pelicula|empanad|opac|nata + boquilla|loseta|quitar|porcelanato|limpiar|quedo|sale|despues + !cloro|polvo blanco|acido y|muriatico',
  ],
  tenting: [
    'carpa|se levanta el piso|levantando como|pandeando|se boto|se botaron|botado|abombad|se infl|se levanta en medio|se alzo|levantado en el centro',
  ],
}

/** Words that ask for the cause or the cure, not for a verdict. */
export const whys: CueTable = {
  why: [
    'por que|que paso|que hago|que hacemos|que le hago|ahora que|causa|como arreglo|como lo arreglo|como se arregla|de que es|a que se debe|sigue|siempre',
  ],
}

/** Words that go with what was measured. */
export const measuring: CueTable = {
  humidity: ['hr$|rh$|humedad|lectura|lecturas + losa|concreto|firme|hr$|rh$'],
  tubes: ['^tubo|tubos|cartucho|cartuchos|salchicha + silicon|sellador|junta|boquilla'],
  width: ['expansion|dilatacion|movimiento + ancho|ancha|que tan + afuera|exterior|patio|terraza'],
  joists: [
    '2x6|2x8|2x10|2x12|2 x 8|2 x 10|2 x 12|2 x 6|2 por 10|2 por 8|2 por 12 + viga|vigas|vigueta|entre centros|centros|claro|spf|abeto|deflexion|hasta cuanto|16|24|12|19.2',
  ],
  sheathing: ['triplay|contrachapado|plywood|ply$|osb|subpiso + viga|vigas|vigueta|centros|oc$'],
  gaps: ['hueco|huecos|lectura|lecturas|medi + regla|nivel|debajo'],
  heights: ['alturas|elevaciones|laser|cuadricula|lecturas + cada|separacion|separadas|dieciseisavos|mm'],
  square: ['diagonal|diagonales|de esquina a esquina|3 4 5|3-4-5|6-8-10|6 8 10|9-12-15'],
  voids: ['hueco|huecos|vacio|vacios|bolsa de aire + 1x|2x|3x|4x|x|por'],
  contacts: ['levante|levantamos|saque|sacamos|losetas|cobertura|contacto + %|por ciento|porciento|cobertura|contacto'],
  joint: [
    'pandeo|pandead|alabeo|alabead|panza + minima|minimo|menor + junta|boquilla',
    'calibrador|vernier|varia|varian|variacion|se pasan + loseta|losetas|azulejo|junta|medida|mm|pulg',
  ],
  lippage: ['ceja|lippage + pandeo|pandead|alabe|panza|curva|torcid'],
  holes: ['agujero|agujeros|hoyo|hoyos|sonda|f2170 + losa|pies|m2|hr$|hond|cuantos|espesor'],
  screed: ['anhidrita|sulfato de calcio|firme de yeso + mm|pulg|cm|grues|espesor'],
  bed: [
    'llana|diente + cama|litros por|l/m2|que hondo|deja|espesor|grueso + !bulto|bultos|rinde|puedo|alcanza|maximo|loseta',
  ],
  expansion: [
    'mueve|mueven|dilata|expande|crece|encoge|termic + porcelanato|ceramic|loseta|piso|tramo + !que ancho|ancho de junta',
  ],
  airflow: ['cfm|flujo de aire|caudal + esmeril|disco|amoladora|pulidora|aspiradora|pulg|mm'],
  ends: [
    'tirita|sobrante|corte de orilla|cortes de orilla|cortes en las orillas|cortes de los extremos|balance|centrar|balanceo + loseta|losetas|pared|muro|queda|deja|hilada + !junta debe|puedo',
  ],
  sag: ['flecha|pandea|deflexion|flexion|cede + cuanto|cuanta|permit|maxim|limite + claro|viga|pies|metros + !2x'],
  'floor-number': ['ff$|ff |ff2|ff3|ff5|ff4|fl$|fl + plano|local|minimo|que|cuanto|10 pies|significa'],
  notch: [
    'llana|diente + alcanza|esta bien|sirve|que$|cual|suficiente|correct|medida|muy chic|para + !bulto|rinde|m2|pies cuadrados|bultos|cuantos|membrana|corcho|quedan|mezcla para|cuanta|subir|hond',
  ],
}

/** Words that mean a sum is wanted, not a rule. */
export const sums: CueTable = {
  sum: [
    'cuantos|cuantas|cajas|piezas|costo|precio|lista de|total|comprar|todo lo que|que llevo|pedido|dibujo|dibuja|muestra la cuenta + !cuantos por ciento|cuantas capas',
    'bultos + !todo el dia|entre dos|cargar',
    'cuanta boquilla|cuanta lechada|cuanta pastina|cuanto grout|cuanta fragua|cuanta mezcla|cuanto thinset|cuanto pegamento|cuanta pega|cuanto adhesivo + !contacto|cobertura|debajo|detras|reverso|atras',
    'cuanta agua|litros|galones|cuanto necesito',
  ],
}

/** The trade's longer words, to mend slips by. */
export const trade: readonly string[] = [
  'cobertura',
  'contacto',
  'thinset',
  'mezcla',
  'mortero',
  'pegamento',
  'adhesivo',
  'rectificado',
  'rectificada',
  'calibrado',
  'cuatrapeado',
  'trabado',
  'membrana',
  'expansion',
  'movimiento',
  'perimetro',
  'deflexion',
  'asbesto',
  'mastique',
  'boquilla',
  'porcelanato',
  'ceramica',
  'travertino',
  'planicidad',
  'concreto',
  'humedad',
  'nivelador',
  'regadera',
  'exterior',
  'interior',
  'cocina',
  'pasillo',
  'minimo',
  'maximo',
  'tolerancia',
  'desperdicio',
  'pendiente',
]
