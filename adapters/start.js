/** `npm start`: the bot, with the real answers. */
import './quick-load.js'

const { main } = await import('./start.ts')
const { loadBacking } = await import('./backing.ts')
await main({ load: loadBacking })
