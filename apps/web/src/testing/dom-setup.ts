import { cleanup } from '@testing-library/react'
import { afterEach } from 'vitest'

// Each test begins on an empty page; Testing Library does so by itself only where a test runner's names are global.
afterEach(cleanup)
