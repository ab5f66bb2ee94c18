import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    setupFiles: ['test/support/seed.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    // Real servers, sockets and killed processes: on a busy build machine one may be late once.
    retry: process.env['CI'] ? 1 : 0,
  },
})
