/** Readings of the floor: joists, gaps, grids, squareness, contact, joints, moisture. */
export const readings = {
  'note.walk-closed': 'a las paredes les faltan {gap} para cerrar; cerradas',
  'sheathing.yes': 'Sí: {thick} sobre vigas cada {spacing} no es menos que lo común, {common} hasta {row}.',
  'sheathing.thin': 'No: sobre vigas cada {spacing} lo común es {common}; {thick} es más delgado.',
  'sheathing.bends-too-much':
    'No: {thick} se flexiona demasiado sobre vigas cada {spacing}; lo común es {common} hasta {row}.',
  'sheathing.need': '{common} por lo menos sobre vigas cada {spacing}, como es común hasta {row}.',
  'sheathing.far': 'No tengo cifra para vigas cada {spacing}: un proyectista con licencia, o vigas más juntas.',
  'sheathing.bends':
    'Entre vigas se flexiona L/{ratio} con {live} repartidos; el límite es L/{limit}. Patas y ruedas lo doblan más.',
  'sheathing.method':
    'La última palabra la tienen el método y la hoja de la membrana o del tablero, y piden una capa entre madera y loseta.',
  'sheathing.live': 'carga viva de {live}',
  'sheathing.work': '0.0069 w L⁴ / (E I), tres claros de {spacing}: {sag}',
  'joists.yes':
    'Sí en las dos cuentas, por los números: L/{ratio} contra L/{limit} en deflexión, {bending} de la flexión permitida.',
  'joists.no-deflection':
    'No: se dobla demasiado. L/{ratio} con carga viva, y {kind} pide L/{limit}; {bending} de la flexión permitida.',
  'joists.no-bending': 'No: falla a flexión, {bending} de lo permitido, aunque L/{ratio} cumple L/{limit}.',
  'joists.no-both': 'No en las dos cuentas: L/{ratio} contra L/{limit}, y {bending} de la flexión permitida.',
  'joists.depends-if':
    'Depende de la especie y el grado; lee el sello. Como {lumber}: L/{ratio} contra L/{limit}, {bending} de la flexión permitida.',
  'joists.depends-unconfirmed':
    'Depende: sus valores de diseño aquí son de memoria. Con ellos: L/{ratio} contra L/{limit}, {bending} de la flexión permitida; revisa las tablas de claros impresas.',
  'joists.ask-someone':
    'Depende: no tengo valores confirmados de esa especie y grado. Pregunta a un proyectista con licencia, o lee las tablas de claros de tu código.',
  'joists.spacing': '{spacing} pulg',
  'joists.span': '{size} a {spacing} salva {span} a lo más, libres entre apoyos; manda la {governs}.',
  'joists.span-if':
    'Como {lumber}, {size} a {spacing} salva {span} a lo más; manda la {governs}. Lee el sello: otra especie o grado salva más o menos.',
  'joists.span-unconfirmed':
    '{size} a {spacing} salva como {span} si es {lumber}; aquí esos valores son de memoria: revisa las tablas impresas.',
  'joists.longest':
    '{size} cada {spacing} salva {span} cuando mucho con esas cargas; manda la {governs}. Preguntaste: {asked}.',
  'joists.loads': 'cargas de {live} viva y {dead} muerta',
  'joists.kind-tile': 'la loseta',
  'joists.kind-stone': 'la piedra',
  'joists.lumber': '{species} No. {grade}',
  'joists.deflection': 'deflexión',
  'joists.bending': 'flexión',
  'joists.not-here':
    'De vigas I, armaduras, muescas, agujeros o voladizos no doy veredicto: su fabricante o un proyectista con licencia.',
  'joists.work-deflection': '5 w L⁴ / (384 E I): {sag} solo con carga viva',
  'joists.work-bending': 'w L² / 8 / S: {stress} MPa contra {allowed} MPa',
  'word.species-spf': 'abeto-pino (SPF)',
  'word.species-dfl': 'abeto Douglas-alerce',
  'ask.joist-span':
    '¿Qué claro salvan las vigas entre apoyos, y a qué separación van? Por ejemplo: vigas 2x10 a 16 entre centros, claro de 14 pies, SPF No. 2.',
  'gaps.yes': 'Sí. El hueco mayor es de {gap} y se permiten {limit} en {edge}.',
  'gaps.no': 'No. El hueco mayor es de {gap} y se permiten {limit} en {edge}.',
  'gaps.depends':
    'Depende: el hueco mayor es de {gap}, pero el límite de {limit} es en {edge}, y la regla no era tan larga.',
  'gaps.over': 'Pasan del límite: {n} de {all} lecturas.',
  'pour.bags': '{bags} {bags|bulto|bultos} de autonivelante ({pack}) para {area} a {depth}.',
  'pour.patch': 'De {low} a {bags} bultos de autonivelante ({pack}) para {area} con un bajo de {depth}.',
  'pour.patch-one': '{bags} {bags|bulto|bultos} de autonivelante ({pack}) para {area} con un bajo de {depth}.',
  'pour.volume': 'Unos {fill}, {yield} por bulto.',
  'pour.once':
    'Primero el primario, tapa las orillas y cuélalo de una vez con un bulto de más a la mano: la siguiente mezcla debe topar con orilla fresca.',
  'pour.own': 'tu propia cifra, {yield} por bulto',
  'pour.too-deep': 'Más hondo que los {most} usuales por colada: en dos capas, o con piedra como diga su hoja.',
  'pour.too-thin': 'Más delgado que los {least} usuales: solo si su hoja permite llegar a cero.',
  'pour.work': '{area} x {depth} = {fill}; un bulto rinde {yield}',
  'pour.depths': 'De {least} a {most} por colada, según la hoja usual.',
  'pour.tile-at': 'Loseta: {at}, de {low} a {high} después de colar.',
  'pour.tile-after': 'Loseta de {low} a {high} después de colar.',
  'pour.walk-after': 'Pisarlo: de {walk} a {walkHigh}.',
  'pour.deep-waits': 'Más hondo, más frío o más húmedo tarda más; manda la hoja, también en humedad y membrana.',
  'gaps.fill': 'Para parchar, de {low} a {high} más o menos en {area}, por el hueco más hondo.',
  'grid.yes': 'Sí, está suficientemente plano: el hueco mayor debajo de {edge} es de {gap}, se permiten {limit}.',
  'grid.no': 'No: {gap} debajo de {edge}, se permiten {limit}, a {x} a lo largo y {y} hacia adentro.',
  'grid.no-short':
    'No: {gap} debajo de {edge}, se permiten {limit}, a {x} a lo largo y {y} hacia adentro; la regla larga marca {long}.',
  'grid.shape-dip': 'Es un bajo.',
  'grid.shape-hump': 'Es un lomo.',
  'grid.fill':
    'Para entrar al límite: {into}, {bags} {bags|bulto|bultos}. Para dejarlo a nivel con lo más alto: {level}.',
  'grid.no-fill': 'Para plano no hay que rellenar; para dejarlo a nivel se llevaría {level}.',
  'grid.grind': 'Más barato: desbasta {area} hasta {depth}, y luego rellena {fill}.',
  'grid.primer': 'Primero imprimador, como diga la hoja del autonivelante.',
  'grid.short-floor': 'regla no más larga que la cuadrícula, {edge}',
  'grid.assumed-yield': 'autonivelante, {yield} por bulto de {bag}',
  'grid.work':
    '{rows} x {columns} lecturas cada {step}; una regla pasada por ellas en ocho sentidos, apoyada en los puntos altos',
  'flat.assumed-large': 'una orilla de loseta de {edge} o más',
  'ask.pour-depth': '¿De qué hondo va la colada? Por ejemplo: nivelador 12 m2 a 5 mm.',
  'ask.grid-step':
    '¿Qué tan separadas van las lecturas? Por ejemplo: alturas en dieciseisavos cada 2 pies, y luego las filas.',
  'square.square': 'A escuadra dentro de {off} grados: {taper} en {run}.',
  'square.off': 'Fuera de escuadra por {off} grados: una hilera a escuadra de una pared se abre {taper} en {run}.',
  'square.marks': 'A escuadra, esas marcas medirían {across}.',
  'square.opposite': 'paredes opuestas tomadas como iguales',
  'ask.square-sides': "¿Cuáles son los dos lados del cuarto? Por ejemplo: diagonales 16'4 y 16'6 1/2, cuarto 12x11.",
  'contact.yes': 'Sí. {n} losetas promedian {average} de contacto y el mínimo es {needed}.',
  'contact.no': 'No. {n} losetas promedian {average} de contacto y el mínimo es {needed}.',
  'contact.not-yet-good':
    'Todavía no es revisión: {n} de {least} losetas, con promedio de {average} donde el mínimo es {needed}. Levanta más.',
  'contact.not-yet-bad':
    'No, y para: {average} en {n|la primera loseta|las primeras losetas} donde el mínimo es {needed}.',
  'contact.lowest': 'La peor trae {lowest}.',
  'contact.how':
    'Mira también esquinas y orillas, y levanta una cada que cambie el colocador, la llana, la tanda o la tarima.',
  'voids.good': '{contact} de contacto, y ningún hueco demasiado grande.',
  'voids.bad':
    'Pasa o falla dos veces: {contact} de contacto por número, pero {n} {n|hueco pasa|huecos pasan} de 2 pulg² (13 cm²), y la buena práctica no los deja.',
  'voids.needs': 'El mínimo para un lugar {place} es {needed}.',
  'voids.place-dry': 'seco',
  'voids.place-wet': 'mojado',
  'voids.place-exterior': 'de afuera',
  'joint.least': 'Junta de {joint} por lo menos: {why}.',
  'joint.why-variation': 'tres veces la variación de {variation}',
  'joint.why-floor': 'el mínimo para esta loseta y patrón, mayor que tres veces la variación de {variation}',
  'joint.yes': 'Sí. Con {said} basta: el mínimo es {joint}, {why}.',
  'joint.no': 'No. {said} es muy poco: el mínimo es {joint}, {why}.',
  'joint.calibrated': 'loseta no rectificada',
  'lippage.warped': 'Hasta {limit}: {base} por esa junta más {warp} de pandeo.',
  'holes.answer': '{holes} agujeros de prueba para {area}{depth}.',
  'holes.depth': ', a {one} de hondo si la losa seca por una cara, a {both} si por las dos',
  'holes.depth-only': 'Agujeros a {one} de hondo si la losa seca por una cara, a {both} si por las dos.',
  'screed.days':
    'Unos {days} días para {thick}: uno por milímetro hasta 40 mm, luego dos. Decide una lectura de {limit} HR o menos.',
  'notch.answer': 'Empieza con llana de {trowel} para una orilla de {edge}{butter}. Levanta la primera loseta y mira.',
  'notch.butter': ', embarrada por detrás para el contacto',
  'notch.enough':
    'Sí, lo más seguro: deja de {low} a {high}, y piso y loseta piden {needs}. Levanta la primera loseta y mira.',
  'notch.tight': 'Depende de qué tan parada la lleves: deja de {low} a {high}, y piso y loseta piden {needs}.',
  'notch.short': 'No: deja de {low} a {high}, y piso y loseta piden {needs}.',
  'notch.small':
    'No, es chica para empezar: deja de {low} a {high}, y para una orilla de {edge} lo normal es {trowel}.',
  'holes.enough': 'Sí, {set} bastan: {rule}',
  'holes.too-few': 'No, {set} no {set|basta|bastan}: {rule}',
  'humidity.pass': 'Sí. La lectura más húmeda es {worst}, y por lo común se permite hasta {low}.',
  'humidity.fail': 'No. La lectura más húmeda es {worst}, arriba del {high} donde suelen parar las hojas técnicas.',
  'humidity.sheet':
    'Depende de la hoja de tu mezcla o membrana: la lectura más húmeda es {worst}, entre {low} y {high}.',
  'humidity.few-holes': 'Una losa de ese tamaño pide {holes} agujeros de prueba.',
  'width.answer': '{width} de ancho para juntas a cada {spacing} afuera.',
  'width.assumed-range': 'un rango anual de no más de 56 K (100 F) en la superficie',
  'tubes.fills': 'Un tubo rinde como {fills} de junta, {width} de ancho y {depth} de fondo.',
  'bed.answer': 'Como {usual} de cama con {notch}, ya aplastada: de {low} a {high} según la inclinación de la llana.',
  'bed.at-angle': '{usual} de cama con {notch} a {angle} grados, ya aplastada.',
  'bed.litres': 'Son {litres} litros por metro cuadrado, sin contar el reverso ni los bajos.',
  'bed.thin': 'Menos que los {least} de cama que deben quedar: un diente más grande, más parado.',
  'bed.work': 'área del diente / (diente + espacio) x seno del ángulo',
  'airflow.answer': '{cfm} cfm por lo menos para un disco de {wheel}: 25 cfm por pulgada.',
  'airflow.metric': '{litres} l/s por lo menos ({cfm} cfm) para un disco de {wheel}: 25 cfm por pulgada.',
  'airflow.filter':
    'Con guarda y un filtro de 99 % o más que se limpie solo; bajo techo por más de 4 horas, también respirador.',
  'end-cut.sliver': '{cut} en cada extremo: quita una loseta de {tile} y repártela con los {sliver}.',
  'end-cut.work-sliver': '({tile} + {sliver}) / 2 = {cut}',
  'end-cut.answer':
    '{whole} {whole|loseta entera|losetas enteras} y {cut} en cada extremo en {wall}, junta de {joint}.',
  'end-cut.none': '{whole} losetas enteras llenan {wall}: sin cortes.',
  'end-cut.left': 'Si empiezas con entera en un extremo, quedan {left} en el otro.',
  'sag.answer': '{sag} a lo más en {span}: L/{limit} con carga viva.',
  'sag.in': '{n} pulg (en la cinta, {near})',
  'sag.mm': '{n} mm',
  'sag.also': 'Las vigas también deben aguantar a flexión: dime medida, separación y claro y reviso las dos.',
  'expansion.answer': '{run} de loseta se mueven como {move} ({mm} mm) en {fahrenheit} °F.',
  'expansion.metric': '{run} de loseta se mueven como {mm} mm en {kelvin} °C.',
  'expansion.also':
    'Cada loseta es distinta, y la losa, la humedad y el sol suman lo suyo: las juntas suaves lo toman; que no les caiga mezcla.',
  'expansion.work': '6.0e-6 por K x {run} x {kelvin} K = {mm} mm',
  'ff.answer': 'FF {ff} es como {gap} en 3 m (10 pies).',
  'ff.local-ff': 'Mínimo local para FF {n}: {least}.',
  'ff.local-fl': 'Mínimo local para FL {n}: {least}.',
  'ff.straightedge': 'Esos números son de la losa como se coló; la loseta va por la regla.',
  'ask.wheel': '¿De qué medida es el disco? Por ejemplo: cfm para esmeril de 5 pulgadas.',
  'tubes.answer':
    '{tubes} {tubes|tubo|tubos} para {length} de junta, {width} de ancho y {depth} de fondo: uno rinde {fills}.',
}
