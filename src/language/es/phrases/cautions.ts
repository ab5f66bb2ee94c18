/** Cautions: in full, and as the tag that follows later. */
export const cautions = {
  'caution.silica':
    'El polvo seco, cortar, desbastar y raspar boquilla sueltan polvo de sílice, que marca los pulmones para siempre: agua al disco, o campana con aspiradora de 25 cfm por cada pulgada de disco y filtro de 99 %; adentro y mucho rato, además respirador.',
  'caution.silica.tag': 'Polvo de sílice.',
  'caution.cement':
    'La mezcla y la boquilla mojadas son cáusticas y la quemada puede doler hasta después: guantes, manga larga, botas, rodilleras; lávate luego luego, cámbiate la ropa mojada.',
  'caution.cement.tag': 'El cemento mojado quema.',
  'caution.lifting':
    'Un bulto lleno desde el piso es como el doble de lo que la guía permite a una persona: entre dos, medios bultos o diablito.',
  'caution.lifting.tag': 'Carga entre dos.',
  'caution.cutting':
    'Guarda puesta, ojos y oídos cubiertos, sin guantes cerca del disco girando, loseta plana; discos gastados y discos de madera no van en el esmeril.',
  'caution.cutting.tag': 'Guarda, ojos, oídos.',
  'caution.gfci': 'La cortadora de agua en contacto provisional va con GFCI, cable y clavija en alto, fuera del agua.',
  'caution.gfci.tag': 'Cortadora con GFCI.',
  'caution.hearing':
    'Cortadoras, esmeriles y batidoras son ruidosas y avientan esquirlas: oídos y ojos cubiertos para todos los de cerca.',
  'caution.hearing.tag': 'Oídos y ojos.',
  'caution.asbestos':
    'Primero el asbesto: la loseta y el rollo resilientes viejos, su fieltro, el adhesivo negro y el parche viejo pueden traerlo. Ni la edad ni la medida ni el aspecto liberan un piso, solo un laboratorio. No lijes, desbastes, raspes ni quiebres antes del resultado; si da positivo, deciden una empresa con licencia y la ley local.',
  'caution.asbestos.tag': 'Asbesto.',
  'caution.lead':
    'La pintura vieja y el azulejo esmaltado viejo pueden traer plomo: nada de lijar, desbastar o quebrar en seco antes de una prueba; niños lejos; si da positivo, gente certificada y la ley local.',
  'caution.lead.tag': 'Plomo.',
  'caution.epoxy':
    'La epóxica y sus endurecedores te pueden volver alérgico de por vida: guantes de nitrilo, mangas, ojos cubiertos, aire; lávate con jabón, nunca con solvente; manda la hoja de seguridad.',
  'caution.epoxy.tag': 'La epóxica da alergia.',
  'caution.solvent':
    'El vapor del solvente corre por el piso hasta una flama: pilotos, calentadores y apagadores apagados, aire en el cuarto, trapos en bote de metal cerrado.',
  'caution.solvent.tag': 'El solvente prende.',
  'caution.acid':
    'El ácido quema ojos y pulmones: el ácido al agua, lentes y guantes, aire en el cuarto, enjuaga bien. Nunca ácido con cloro ni con otro limpiador: el gas mata.',
  'caution.acid.tag': 'Ácido.',
  'caution.post-tension':
    'Una losa postensada trae cables muy tensados: nada de taladrar, cortar, extraer núcleos ni clavar antes de que una empresa con licencia los localice.',
  'caution.post-tension.tag': 'Losa postensada.',
  'caution.structure':
    'Si el piso aguanta lo dicen un proyectista con licencia y el código local: lo de aquí es la cuenta de lo que mediste. No cortes, muesques ni cargues la estructura por ella.',
  'caution.structure.tag': 'Estructura.',
  'caution.gas':
    'Los aparatos de gas los quita y los pone un gasista con licencia. Si huele a gas: sal y llama desde afuera.',
  'caution.gas.tag': 'Gas.',
  'caution.electric':
    'La instalación fija, los cables calefactores y los aparatos conectados directo son de un electricista con licencia, con protección de falla a tierra; corriente cortada y comprobada antes de tocar.',
  'caution.electric.tag': 'Electricidad.',
} as const
