import { cleanup, configure } from '@testing-library/react'
import { afterEach } from 'vitest'
import { assertAllAnswered } from './answer-api.ts'

// Each test begins on an empty page; Testing Library does so by itself only where a test runner's names are global.
afterEach(() => {
  cleanup()
  assertAllAnswered()
})

// Without style sheets nothing is hidden from anybody, and looking for it at every element takes most of a test's time.
// What is waited for comes at once; a busy machine that loads a piece of a page for longer must not fail its test.
configure({ defaultHidden: true, asyncUtilTimeout: 30_000 })
