/** Cautions: in full, and as the tag that follows later. */
export const cautions = {
  'caution.silica':
    'Dry powder, cutting, grinding and raking grout make silica dust, and it scars lungs for good: water on the blade, or a shroud with a collector of 25 cfm for each inch of wheel, 99 % filter; indoors and long, a respirator as well.',
  'caution.silica.tag': 'Silica dust.',
  'caution.cement':
    'Wet mortar and grout are caustic and the burn may not hurt until later: gloves, long sleeves, boots, kneepads; wash at once, change soaked clothes.',
  'caution.cement.tag': 'Wet cement burns.',
  'caution.lifting':
    'A full bag off the floor is about twice what the lifting guide allows for one person: two people, half bags or a cart.',
  'caution.lifting.tag': 'Lift in pairs.',
  'caution.cutting':
    'Guard on, eyes and ears covered, gloves off near a turning blade, tile held flat; blunt discs and wheels made for wood have no place on a grinder.',
  'caution.cutting.tag': 'Guard, eyes, ears.',
  'caution.gfci': 'A wet saw on a temporary outlet runs on a GFCI, cord and plug up out of the water.',
  'caution.gfci.tag': 'Saw on a GFCI.',
  'caution.hearing': 'Saws, grinders and mixers are loud and throw chips: ear and eye protection for everybody near.',
  'caution.hearing.tag': 'Ears and eyes.',
  'caution.asbestos':
    'Asbestos first: old resilient tile and sheet, its felt backing, black adhesive and old patch may hold it. Age, size or looks never clear a floor, only a laboratory does. Do not sand, grind, scrape or break it before the result; where it is positive, a licensed firm and local law decide.',
  'caution.asbestos.tag': 'Asbestos.',
  'caution.lead':
    'Old paint and old glazed tile may hold lead: no dry sanding, grinding or breaking before a test; keep children away; certified workers and local law where it is positive.',
  'caution.lead.tag': 'Lead.',
  'caution.epoxy':
    'Epoxy and hardeners can make you allergic for life: nitrile gloves, sleeves, eyes covered, fresh air; wash with soap, never with solvent; the safety data sheet rules.',
  'caution.epoxy.tag': 'Epoxy sensitises.',
  'caution.solvent':
    'Solvent vapour creeps along the floor to a flame: pilot lights, heaters and switches off, air through the room, rags in a closed metal can.',
  'caution.solvent.tag': 'Solvents burn.',
  'caution.acid':
    'Acid burns eyes and lungs: pour acid into water, goggles and gloves, air through the room, rinse well. Never acid with bleach or with another cleaner: the gas kills.',
  'caution.acid.tag': 'Acid.',
  'caution.post-tension':
    'A post-tension slab has cables under great tension: no drilling, cutting, coring or shooting pins before a licensed firm has located them.',
  'caution.post-tension.tag': 'Post-tension slab.',
  'caution.structure':
    "Whether a floor carries is for a licensed designer and local code: what is said here is arithmetic on what you measured. Don't cut, notch or load framing on its word.",
  'caution.structure.tag': 'Structure.',
  'caution.gas':
    'Gas appliances are taken off and put back by a licensed gas fitter. Smell gas: out, and call from outside.',
  'caution.gas.tag': 'Gas.',
  'caution.electric':
    'Fixed wiring, heating cables and hard-wired appliances are for a licensed electrician, ground-fault protection included; power off and proved off before anyone touches it.',
  'caution.electric.tag': 'Electricity.',
} as const
