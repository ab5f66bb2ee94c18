/** What the program says around the answers. */
export const shell = {
  'shell.units-imperial': 'pies y pulgadas',
  'shell.units-metric': 'métrico',
  'shell.late': 'Va tarde, estuve apagado:',
  'shell.hint': 'Pregunta como lo dirías. Por ejemplo:',
  'shell.hint-leave': 'Con Ctrl-D sales.',
  'shell.example-1': 'piso de 10x13 menos un mostrador de 3x4, loseta 18x18, junta 3/16',
  'shell.example-2': 'pegamos a las 2pm, 58F, ¿cuándo emboquillamos?',
  'shell.example-3': 'agua para medio bulto',
  'shell.saved': 'Guardado: {path}',
  'shell.not-saved': 'No se pudo guardar la imagen ({why}).',
  'shell.interrupted': 'Con Ctrl-D (u otra vez Ctrl-C) sales.',
  'shell.next': 'Y después:',
}
