/** Keys of the contract that a log fills. */
import { type Job, logged } from '../../jobs/job.ts'
import type { Values } from '../job/quantities.ts'

export function logValues(job: Job): Values {
  const [mortar, grout, tiles] = [logged(job, 'mortar'), logged(job, 'grout'), logged(job, 'tile')]
  const open = mortar.bagsHigh > mortar.bagsLow
  const contact = job.readings.findLast((r) => r.what === 'contact')?.value
  return {
    ...(mortar.any ? { mortar_bags_used: mortar.bags } : {}),
    ...(open ? { mortar_bags_used_low: mortar.bagsLow, mortar_bags_used_high: mortar.bagsHigh } : {}),
    ...(mortar.m2 > 0 ? { mortar_area_done_m2: mortar.m2 } : {}),
    ...(grout.any ? { grout_bags_used: grout.bags } : {}),
    ...(grout.m2 > 0 ? { grout_area_done_m2: grout.m2 } : {}),
    ...(tiles.tiles > 0 ? { tiles_set: tiles.tiles } : {}),
    ...(contact === undefined ? {} : { contact_pct: contact }),
  }
}
