/** Heavy libraries reach the core through loaders that the shell hands in: loaded when a message needs them, never at start. */

/** What we use of mathjs: conversion between unit names we pass it, exact fractions. Crew text never reaches it. */
export type MathLibrary = {
  readonly unit: (value: number, name: string) => { toNumber(name: string): number }
  readonly fraction: (text: string | number) => MathFraction
}
export type MathFraction = {
  add(other: MathFraction): MathFraction
  sub(other: MathFraction): MathFraction
  mul(other: MathFraction): MathFraction
  div(other: MathFraction): MathFraction
  valueOf(): number
}

/** What we use of chrono-node: the components of the first time found in a text. */
export type TimeFound = {
  readonly text: string
  readonly index: number
  isCertain(component: string): boolean
  get(component: string): number | null
}
export type TimeLibrary = {
  find(text: string, reference: { readonly instant: Date; readonly timezone: number }): readonly TimeFound[]
}

export type Libraries = { readonly math: () => MathLibrary; readonly times: (language: string) => TimeLibrary }
