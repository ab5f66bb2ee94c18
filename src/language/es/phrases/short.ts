/** Cuando no alcanza la loseta: lo que lleva lo que falta, hasta dónde llega y las salidas. */
export const shortPhrases = {
  'log.use-rows': '{rows} {rows|hilera puesta|hileras puestas}',
  'log.rows': '{rows} {rows|hilera puesta|hileras puestas} hasta ahora.',
  'log.rest-short':
    '{short|Falta|Faltan} {short} {short|loseta|losetas}: {rows|la|las} {rows} {rows|hilera|hileras} por poner {rows|lleva|llevan} {need}, tienes {have}.',
  'log.rest-enough':
    'Sí alcanza: {rows|la|las} {rows} {rows|hilera|hileras} por poner {rows|lleva|llevan} {need} {need|loseta|losetas}, tienes {have}; sobran {spare}.',
  'log.rest-takes':
    '{rows|La|Las} {rows} {rows|hilera|hileras} por poner {rows|lleva|llevan} {need} {need|loseta|losetas}. ¿Cuántas quedan? Por ejemplo: quedan 9 cajas.',
  'log.rest-short-places':
    '{short|Falta|Faltan} {short} {short|loseta|losetas}: lo que no está puesto lleva {need}, tienes {have}.',
  'log.rest-enough-places':
    'Sí alcanza: lo que no está puesto lleva {need} {need|loseta|losetas}, tienes {have}; sobran {spare}.',
  'log.rest-takes-places':
    'Lo que no está puesto lleva {need} {need|loseta|losetas}. ¿Cuántas quedan? Por ejemplo: quedan 9 cajas.',
  'log.rest-just':
    'Justo: {rows|la|las} {rows} {rows|hilera|hileras} por poner {rows|lleva|llevan} {need} {need|loseta|losetas}, tienes {have}. Ni una para romper.',
  'log.rest-just-places':
    'Justo: lo que no está puesto lleva {need} {need|loseta|losetas}, tienes {have}. Ni una para romper.',
  'log.all-set':
    'Según lo anotado ya no falta ninguna de las {of} hileras. ¿No? Di cuántas: llevamos 9 hileras en total.',
  'log.area-short':
    '{short|Falta|Faltan} {short} {short|loseta|losetas}: {rest} por poner llevan unas {need}, tienes {have}.',
  'log.area-enough': 'Sí alcanza: {rest} por poner llevan unas {need} {need|loseta|losetas}, tienes {have}.',
  'log.area-takes':
    '{rest} por poner llevan unas {need} {need|loseta|losetas}. ¿Cuántas quedan? Por ejemplo: quedan 9 cajas.',
  'log.reach': 'Llegas a la hilera {row} de {of}.',
  'log.reach-none': 'No sale ni una hilera completa más.',
  'log.rows-beyond':
    'Con esta traza el piso tiene {of} {of|hilera|hileras} en total: revisa las hileras o hacia dónde corren.',
  'log.no-rows': 'este patrón no tiene hileras: contado loseta por loseta desde la pared {side}',
  'log.assumed-room': 'en {room}',
  'log.assumed-first-row': 'hilera 1 en la pared {side}',
  'log.assumed-large': 'contando solo la loseta grande',
  'log.assumed-slanted': 'hileras al sesgo del patrón, de esquina a esquina',
  'log.assumed-none-set': 'nada puesto todavía',
  'log.assumed-offcuts': 'sin contar los recortes que anden por ahí',
  'log.assumed-bought': '{n} losetas compradas, como se calculó',
  'log.assumed-by-area': 'por área, {spare} de sobra, sin hileras: dame los lados del cuarto para contar por hileras',
  'log.missing': '{short|Falta|Faltan} {short} {short|loseta|losetas} y no hay más del lote. En este orden:',
  'log.way-number': '{n}.',
  'log.saves': 'ahorra {saves}',
  'log.saves-all': 'ahorra {saves}, alcanza',
  'log.before-row': 'antes de la hilera {row}',
  'log.before-left': 'mientras falten {n} {n|loseta|losetas} por poner',
  'log.way-kept': '{n} Recortes guardados de lo ya puesto: {saving} si bien va.',
  'log.way-any-offcut': '{n} Recortes más libres, un filo cortado y lijado contra la junta: {saving}. Empieza {until}.',
  'log.way-factory-edge': '{n} Usa los recortes, filo de fábrica a la junta: {saving}. Empieza {until}.',
  'log.way-start':
    '{n} Otra línea de inicio, primeras losetas enteras a {x} de la pared izquierda y a {y} de la de abajo: {saving}. Solo antes de la hilera 1.',
  'log.way-start-turned': '{n} Otra línea de inicio: {saving}. Solo antes de la primera loseta.',
  'log.way-hidden':
    '{n} Otro lote en la pared {side} donde queda tapado, {pieces} {pieces|pieza|piezas}: {saving}. Decide {until}.',
  'log.way-hidden-end':
    '{n} Otro lote en {pieces|la|las} {pieces} {pieces|pieza|piezas} de la pared {side}, si las tapa el horno, el refri o un gabinete: {saving}. Decide {until}.',
  'log.no-way': 'Sin ganancia: {list}.',
  'log.no-way-loose': 'recortes más libres',
  'log.no-way-start': 'otra línea de inicio',
  'log.no-way-start-held': 'la línea de inicio (la fijan las hileras puestas)',
  'log.no-way-hidden': 'otro lote en la pared {side}',
  'log.no-way-hidden-late': 'otro lote en la pared {side} (ya está puesta)',
  'log.way-yard': '{n} Pregunta por el número de lote: puede haber cajas en otra sucursal.',
  'log.ways-enough': 'Recortes más libres y el otro lote juntos: alcanza.',
  'log.ways-short': 'Recortes más libres y el otro lote juntos: todavía faltan {short}.',
  'log.way-offcuts': '{n} Revisa los recortes: un filo cortado puede ir a la pared o bajo el zoclo.',
  'log.way-start-any': '{n} Otra línea de inicio, donde no haya nada puesto.',
  'log.way-hidden-any':
    '{n} Otro lote donde nadie mira: bajo el horno, en el clóset, detrás de la puerta. Mezcla las cajas primero.',
}
