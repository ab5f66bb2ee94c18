/** `npm run ask`: messages in by argument or line, answers out, for people and for tests. */
import '../quick-load.js'

const { main } = await import('./ask-main.ts')
process.exitCode = await main(process.argv.slice(2))
