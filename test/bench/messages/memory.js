/** Answers 100,000 messages as `npm start` would and tells what the process holds then: run by the bench, with the flags of `npm start`. */
import '../../../adapters/quick-load.js'

const { PLAIN, answer } = await import('./kinds.ts')
const COUNT = 100_000
const kinds = Object.values(PLAIN)
const rssMb = () => process.memoryUsage().rss / 1e6
const startMb = rssMb()
let halfMb = 0
for (let i = 0; i < COUNT; i++) {
  answer(kinds[i % kinds.length]())
  if (i === COUNT / 2) halfMb = rssMb()
}
console.log(JSON.stringify({ startMb, halfMb, endMb: rssMb() }))
