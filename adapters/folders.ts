/** Where the job memory lies. */
import { mkdirSync } from 'node:fs'
import { homedir } from 'node:os'
import path from 'node:path'

type Env = Readonly<Record<string, string | undefined>>

/** KNEEPAD_DATA, else the user's own data folder as each system has it. */
export function dataFolder(env: Env, platform: string = process.platform, home: string = homedir()): string {
  if (env['KNEEPAD_DATA']) return path.resolve(env['KNEEPAD_DATA'])
  if (platform === 'win32') return path.join(env['LOCALAPPDATA'] || path.join(home, 'AppData', 'Local'), 'kneepad')
  if (platform === 'darwin') return path.join(home, 'Library', 'Application Support', 'kneepad')
  const shared = env['XDG_DATA_HOME']
  // The XDG base directory specification: a relative path there is to be ignored.
  return path.join(shared && path.isAbsolute(shared) ? shared : path.join(home, '.local', 'share'), 'kneepad')
}

/** Makes the folder where it is missing, readable by its owner only.
 *  @throws the file system's error */
export function makeFolder(folder: string): string {
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  return folder
}
