/** One shard with an answerer that echoes. */
import { runShard } from '../../adapters/discord/shard.ts'
import { testBacking } from './backing.ts'

await runShard(async () => testBacking())
