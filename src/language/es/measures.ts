/** Spanish words of what is measured on a floor. How they are used: language/rule-measures.ts. */
import type { MeasureWords } from '../measure-words.ts'

export const measures: MeasureWords = {
  joist: 'vigas|viga|viguetas|vigueta|joists|joist',
  onCentre:
    'entre centros|a centros|centros|vigas cada|vigas a|viguetas a|viguetas cada|de centro a centro|de separacion|on center|oc|o\\.?c',
  psf: 'psf|libras por pie cuadrado|lb por pie cuadrado|lb/pie2',
  live: 'viva',
  dead: 'muerta',
  species: {
    spf: 'spf|s p f|abeto pino|abeto',
    dfl: 'abeto douglas|douglas fir|doug fir|dfl|df l|df-l|df|douglas',
    other: 'pino amarillo|pino del sur|southern pine|syp|hem fir|hem-fir|hf|secuoya|cedro|pino|encino|alerce',
  },
  grades: {
    '1': '#1|no\\.? ?1|numero 1|numero uno|grado 1',
    '2': '#2|no\\.? ?2|numero 2|numero dos|grado 2|#2\\+?btr',
    other: '#3|no\\.? ?3|numero 3|numero tres|grado 3|select structural',
  },
  gaps: 'huecos|hueco|lecturas|lectura|debajo de la regla|bajo la regla|bajos|medi|medidas|marca',
  heights: 'alturas|altura|elevaciones|elevacion|cuadricula|laser|lecturas|niveles',
  spacing: 'cada|separadas|separacion|cuadricula de|cuadricula',
  sixteenths: 'dieciseisavos|16avos|en dieciseisavos|1/16s',
  eighths: 'octavos|8avos|1/8s',
  diagonals: 'diagonales|diagonal|de esquina a esquina|cruzadas',
  marks: '3-4-5|3 4 5|6-8-10|6 8 10|9-12-15|9 12 15',
  voids: 'huecos|hueco|vacios|vacio|bolsas de aire',
  vary: 'varian|varia|variacion|se pasan por|diferencia|difieren',
  calipers: 'calibrador|vernier|medi|midieron|miden|medidas',
  warp: 'pandeo|pandeada|pandeadas|alabeo|alabeada|panza|curva|torcida',
  lifted: 'levante|levantamos|levantadas|saque|sacamos|despegue|despegamos',
  holes: 'agujeros|agujero|hoyos|hoyo|sondas|sonda',
  thick: 'de espesor|espesor|de grueso|gruesa|grueso|losa|hondo|firme|anhidrita|sulfato de calcio|yeso',
  sheathing: 'triplay|contrachapado|plywood|ply|osb|subpiso',
  range: 'cambio|rango|al ano|de verano a invierno|entre',
  tube: 'tubos|tubo|salchichas|salchicha|cartuchos|cartucho',
  to: 'a|-',
}
