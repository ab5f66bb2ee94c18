/** Faults of a disk that bind root too, each by the first means this machine allows, and each proved to bite. */
import { execFileSync } from 'node:child_process'
import { chmodSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'

const run = (command: string, ...args: string[]): boolean => {
  try {
    execFileSync(command, args, { stdio: 'pipe' })
    return true
  } catch {
    return false
  }
}

export type Folder = { readonly dir: string; readonly end: () => void }

export function plainFolder(): Folder {
  const dir = mkdtempSync(path.join(tmpdir(), 'kneepad-'))
  return { dir, end: () => rmSync(dir, { recursive: true, force: true }) }
}

export type SmallDisk = Folder & { readonly grow: () => void }

/** A file system of `kib`, or null where this machine lets nobody mount one. */
export function smallDisk(kib: number): SmallDisk | null {
  const { dir, end } = plainFolder()
  if (!run('mount', '-t', 'tmpfs', '-o', `size=${kib}k,mode=700`, 'kneepad-test', dir)) {
    end()
    return null
  }
  return {
    dir,
    grow: () => execFileSync('mount', ['-o', 'remount,size=64m', dir]),
    end: () => {
      run('umount', '-l', dir)
      end()
    },
  }
}

/** Makes a folder and the files in it unwritable; throws where no means bites. Returns what makes it writable again. */
export function makeReadOnly(dir: string): () => void {
  const files = readdirSync(dir).map((name) => path.join(dir, name))
  const means: { set: () => boolean; undo: () => void }[] = [
    {
      set: () => run('mount', '--bind', dir, dir) && run('mount', '-o', 'remount,bind,ro', dir),
      undo: () => run('umount', '-l', dir),
    },
    { set: () => run('chattr', '+i', ...files, dir), undo: () => run('chattr', '-i', ...files, dir) },
    {
      set: () => {
        for (const file of files) chmodSync(file, 0o400)
        chmodSync(dir, 0o500)
        return true
      },
      undo: () => {
        chmodSync(dir, 0o700)
        for (const file of files) chmodSync(file, 0o600)
      },
    },
  ]
  for (const { set, undo } of means) {
    if (set() && !writable(dir)) return undo
    undo()
  }
  throw new Error(`nothing on this machine makes ${dir} read-only`)
}

function writable(dir: string): boolean {
  try {
    writeFileSync(path.join(dir, 'probe'), 'x')
    rmSync(path.join(dir, 'probe'))
    return true
  } catch {
    return false
  }
}
