import { cleanup, configure } from '@testing-library/react'
import { afterEach } from 'vitest'

// Each test begins on an empty page; Testing Library does so by itself only where a test runner's names are global.
afterEach(cleanup)

// Without style sheets nothing is hidden from anybody, and looking for it at every element takes most of a test's time.
configure({ defaultHidden: true })
