import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    watch: false,
    // Some tests start whole programs, on machines with two cores.
    testTimeout: 60_000,
    hookTimeout: 60_000
  }
})
