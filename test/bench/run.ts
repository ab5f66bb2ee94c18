/** `npm run bench [-- NAME...]`: runs every file of this folder, or the named ones; each exports an async function as default. */
import { globSync } from 'node:fs'
import path from 'node:path'

const wanted = process.argv.slice(2)
const files = globSync('*.ts', { cwd: import.meta.dirname }).toSorted()
for (const file of files) {
  const name = path.basename(file, '.ts')
  if (name === 'run' || (wanted.length > 0 && !wanted.includes(name))) continue
  console.log(`\n${name}`)
  const { default: bench } = await import(path.join(import.meta.dirname, file))
  await bench()
}
