/** The modules that walls meet, each with its walls: a table by whole numbers, grown as needed. */
export class MetModules {
  count = 0
  readonly family: number[] = []
  readonly i: number[] = []
  readonly j: number[] = []
  /** First link of a module's chain of walls; then `next`, to -1. */
  head: number[] = []
  wallAt: Int32Array
  next: Int32Array

  private links = 0
  private slots: Int32Array
  private mask: number

  /** @param links walls met by modules, about: the first size of the table */
  constructor(links: number) {
    const size = 2 ** Math.ceil(Math.log2(Math.max(64, links * 2)))
    this.slots = new Int32Array(size).fill(-1)
    this.mask = size - 1
    this.wallAt = new Int32Array(Math.max(64, links))
    this.next = new Int32Array(Math.max(64, links))
  }

  /** Notes that a wall meets a module. */
  add(wall: number, family: number, i: number, j: number): void {
    let at = this.slotOf(family, i, j)
    for (;;) {
      const found = this.slots[at]!
      if (found < 0) break
      if (this.i[found] === i && this.j[found] === j && this.family[found] === family) {
        if (this.wallAt[this.head[found]!] !== wall) this.link(found, wall)
        return
      }
      at = (at + 1) & this.mask
    }
    const module = this.count++
    this.slots[at] = module
    this.family[module] = family
    this.i[module] = i
    this.j[module] = j
    this.head[module] = -1
    this.link(module, wall)
    if (this.count * 2 > this.mask) this.grow()
  }

  has(family: number, i: number, j: number): boolean {
    let at = this.slotOf(family, i, j)
    for (;;) {
      const found = this.slots[at]!
      if (found < 0) return false
      if (this.i[found] === i && this.j[found] === j && this.family[found] === family) return true
      at = (at + 1) & this.mask
    }
  }

  private slotOf(family: number, i: number, j: number): number {
    const at = (Math.imul(i, 0x9e3779b1) ^ Math.imul(j, 0x85ebca6b) ^ (family * 0x27d4eb2f)) >>> 0
    return (at ^ (at >>> 15)) & this.mask
  }

  private link(module: number, wall: number): void {
    if (this.links === this.next.length) {
      this.wallAt = doubled(this.wallAt)
      this.next = doubled(this.next)
    }
    this.wallAt[this.links] = wall
    this.next[this.links] = this.head[module]!
    this.head[module] = this.links++
  }

  private grow(): void {
    const size = (this.mask + 1) * 2
    this.slots = new Int32Array(size).fill(-1)
    this.mask = size - 1
    for (let module = 0; module < this.count; module++) {
      const [i, j, family] = [this.i[module]!, this.j[module]!, this.family[module]!]
      let at = this.slotOf(family, i, j)
      while (this.slots[at]! >= 0) at = (at + 1) & this.mask
      this.slots[at] = module
    }
  }
}

function doubled(array: Int32Array): Int32Array {
  const larger = new Int32Array(array.length * 2)
  larger.set(array)
  return larger
}
