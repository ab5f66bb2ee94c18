/** `npm run ask`: messages in by argument or line, answers out, for people and for tests. Plain JavaScript, because what runs before
 *  the compile cache is on would load the whole TypeScript stripper: a third of the time to the first answer. */
import { enableCompileCache } from 'node:module'

enableCompileCache()
const { main } = await import('./ask-main.ts')
process.exitCode = await main(process.argv.slice(2))
