/** Property tests run from one seed, so that a run can be repeated; FC_SEED looks elsewhere. */
import fc from 'fast-check'

fc.configureGlobal({ seed: Number(process.env['FC_SEED'] ?? 20261124) })
