import type { Reporter, TestModule, Vitest } from 'vitest/node'

/** A change that keeps a file from loading fails none of its tests, and Stryker would call it missed: here it becomes an error. */
export class LoadErrors implements Reporter {
  private vitest: Vitest | undefined

  onInit(vitest: Vitest): void {
    this.vitest = vitest
  }

  onTestModuleEnd(module: TestModule): void {
    for (const error of module.errors()) this.vitest?.state.catchError(error, 'Load Error')
  }
}
