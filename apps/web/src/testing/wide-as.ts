import { beforeEach, vi } from 'vitest'

/** A DOM without a screen measures everything as 0 px wide: here every box that asks is this wide. */
export function beAsWideAs(width: number): void {
  beforeEach(() => {
    vi.stubGlobal(
      'ResizeObserver',
      class {
        readonly #tell: ResizeObserverCallback
        constructor(tell: ResizeObserverCallback) {
          this.#tell = tell
        }
        observe() {
          const entry = { contentRect: { width, height: 0, x: 0, y: 0, top: 0, left: 0, right: width, bottom: 0 } }
          this.#tell([entry as ResizeObserverEntry], this)
        }
        unobserve() {}
        disconnect() {}
      },
    )
  })
}
